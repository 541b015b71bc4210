"""The facts of every product of a shop, in a constant number of queries."""

from collections import Counter, defaultdict
from dataclasses import dataclass
from datetime import date, timedelta

from django.db.models import F

from inventory.models import LifeUnit, Order, OrderLine, Pack, Product, Shop
from inventory.precheck.queries import open_needs
from inventory.reorder import rules
from inventory.reorder.queries import history
from inventory.reorder.queries.shelf import bottles_of, stock_of
from inventory.stock.rules.lines import NEAT
from inventory.stock.rules.use_by import add_months
from inventory.units import Dimension

NO_SUPPLIER = rules.Supplier("No supplier yet")


def products_of(shop: Shop, on: date) -> list[rules.ProductFacts]:
    """Return what the rules ask about each product that is not archived, as the shop stands on a day."""
    rows = list(
        Product.objects.filter(shop=shop, archived=False)
        .select_related("supplier")
        .prefetch_related("packs")
        .order_by("name")
    )
    seen = Seen(
        uses=history.used(shop, on),
        bookings=history.bookings(shop, on),
        stock=stock_of(shop, on),
        on_order=on_order(shop),
        mixed=Counter(),
    )
    needs = open_needs(shop)
    bottles = bottles_of(shop, on, {need.kind for need in needs if need.product is None})
    for bottle in bottles:
        if bottle.parts != NEAT:
            seen.mixed[bottle.product] += bottle.concentrate
    demand = rules.demand_of(needs, bottles, history.usual_of_kind(rows, seen.uses), shop.zone)
    return [facts_of(shop, row, on, seen, demand) for row in rows]


@dataclass(frozen=True)
class Seen:
    """What was read for all products at once, by a product's id; `mixed` by its code."""

    uses: dict[int, history.Used]
    bookings: history.Bookings
    stock: dict[int, list[rules.Stock]]
    on_order: dict[int, list[rules.OnOrder]]
    mixed: Counter[str]


def facts_of(shop: Shop, row: Product, on: date, seen: Seen, demand: rules.Demand) -> rules.ProductFacts:
    """Return one product's facts; its supplier and packs must be loaded."""
    used = seen.uses.get(row.id, history.Used())
    mean, spread = rules.use_per_day(used.by_day.items(), on)
    supplier, lead = row.supplier, lead_days(row)
    return rules.ProductFacts(
        code=row.code,
        name=row.name,
        supplier=rules.Supplier(supplier.name, supplier.minimum_order_minor) if supplier else NO_SUPPLIER,
        dimension=Dimension(row.dimension),
        mean_per_day=mean,
        spread_per_day=spread,
        lead_days=lead,
        packs=tuple(pack_of(pack, row.noun) for pack in row.packs.all() if pack.usual),
        stock=tuple(seen.stock.get(row.id, ())),
        on_order=tuple(seen.on_order.get(row.id, ())),
        booked=demand.booked.get(row.code, ()),
        sealed_life_days=sealed_life_days(row, on + timedelta(days=lead)),
        spread_per_booking=used.spread_per_job,
        cancelled=seen.bookings.cancelled,
        bookings_seen=seen.bookings.seen,
        days_booked_ahead=seen.bookings.days_ahead,
        system=shop.system,
        mixed=seen.mixed[row.code],
        elsewhere=demand.elsewhere.get(row.code, ()),
    )


def lead_days(row: Product) -> int:
    """Return the product's own lead time, else its supplier's, else 0."""
    if row.lead_days is not None:
        return row.lead_days
    return row.supplier.lead_days if row.supplier else 0


def sealed_life_days(row: Product, arrives_on: date) -> int | None:
    """Return how many days a pack that comes on a day may be used; None where it does not die sealed."""
    if row.sealed_life is None:
        return None
    if row.sealed_life_unit == LifeUnit.MONTH:
        return (add_months(arrives_on, row.sealed_life) - arrives_on).days
    return row.sealed_life if row.sealed_life_unit == LifeUnit.DAY else 0


def pack_of(row: Pack, noun: str) -> rules.Pack:
    """Return a pack as it is ordered: a case counts as the bottles in it."""
    return rules.Pack(
        code=row.gtin or row.name,
        amount=row.amount * row.per_case,
        price_minor=row.price_minor,
        multiple=row.multiple,
        noun="case" if row.per_case > 1 else noun,
    )


def on_order(shop: Shop) -> dict[int, list[rules.OnOrder]]:
    """Return what placed orders still bring, by product; damaged and wrong packs are still owed.

    A kit brings what its parts hold as well.
    """
    rows = (
        OrderLine.objects.filter(order__shop=shop, order__state=Order.State.PLACED, closed_short=False)
        .filter(packs__gt=F("received"))
        .select_related("order", "pack")
        .prefetch_related("pack__parts")
    )
    found: dict[int, list[rules.OnOrder]] = defaultdict(list)
    for line in rows:
        missing, pack = (line.packs - line.received) * line.pack.per_case, line.pack
        held = [
            (pack.product_id, pack.amount),
            *((part.product_id, part.amount) for part in pack.parts.all()),
        ]
        for product, amount in held:
            found[product].append(rules.OnOrder(missing * amount, line.order.due_on))
    return found
