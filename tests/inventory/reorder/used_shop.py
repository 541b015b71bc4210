"""A shop that used two products for four weeks and has little left; and one line of its facts or report."""

from datetime import date, timedelta

from inventory.models import Container, Order, OrderLine, Pack, Product
from inventory.reorder import queries
from inventory.reorder.rules import Line, ProductFacts
from inventory.stock.rules.acts import Act
from tests.world import LITRE, ML, NOON, TODAY, World, bottle, hollin, larkmoor, pack, record, tidewall


def used_shop() -> World:
    """Open the shop: 100 ml of panel wipe and 2 ml of coating (sold in sixes) a day, 300 ml and 5 ml left."""
    world = larkmoor()
    wipe, coating = hollin(world), tidewall(world)
    pack(wipe, LITRE, price_minor=1_450)
    pack(coating, 30 * ML, price_minor=5_500, multiple=6)
    for of, taken, left in ((wipe, 100 * ML, 300 * ML), (coating, 2 * ML, 5 * ML)):
        kept = bottle(world, of, 28 * taken + left, at=NOON - timedelta(days=40))
        days = [NOON - timedelta(days=ago) for ago in range(28, 0, -1)]
        record(world, *(Act("use", at, source=kept.code, amount=taken) for at in days))
    return world


def used_a_millilitre_a_day(world: World, of: Product) -> Container:
    """Use 365 ml of a litre, all of it 364 days ago: 365 days since the first use, 1 ml a day."""
    kept = bottle(world, of, LITRE, at=NOON - timedelta(days=370))
    record(world, Act("use", NOON - timedelta(days=364), source=kept.code, amount=365 * ML))
    return kept


def pack_of(name: str) -> Pack:
    """Return the one pack of a product by its name."""
    return Pack.objects.get(product__name=name)


def facts(world: World, code: str, on: date = TODAY) -> ProductFacts:
    """Return what the rules are told of one product."""
    return next(each for each in queries.products_of(world.shop, on) if each.code == code)


def line(world: World, code: str) -> Line:
    """Return one product's line of November's report."""
    report = queries.report(world.shop, TODAY, TODAY)
    every = [each for order in report.orders for each in (*order.lines, *order.enough)]
    return next(each for each in every if each.product.code == code)


def ordered(world: World, of: Product, packs: int, state: str = "placed", **facts: object) -> OrderLine:
    """Order packs (of a litre if there is none) two days ago, due on 29 November."""
    placed = Order.objects.create(
        shop=world.shop,
        supplier=world.orlo,
        state=state,
        placed_on=TODAY - timedelta(days=2),
        due_on=date(2026, 11, 29),
    )
    return OrderLine.objects.create(
        order=placed, pack=of.packs.first() or pack(of, LITRE), packs=packs, **facts
    )
