"""The bottles that die soon, with what booked cars take of them before that."""

from collections import defaultdict
from dataclasses import replace
from datetime import datetime, timedelta

from inventory.models import Container, Shop
from inventory.precheck import queries as precheck
from inventory.shelf.queries import bottle
from inventory.shelf.rules import Bottle
from inventory.stock.queries import containers, on_shelf
from inventory.stock.rules.lines import NEAT
from inventory.stock.rules.mixes import gross
from inventory.stock.rules.reserve import Need, reserve, serves
from inventory.today.rules import SOON_DAYS, Dying, fate, worth


def dying(shop: Shop, at: datetime) -> list[tuple[Bottle, str]]:
    """Return the bottles that die within a fortnight, each with what becomes of it."""
    rows = list(containers(shop.pk).filter(content__gt=0, held="").order_by("use_by_at", "code"))
    soon = at + timedelta(days=SOON_DAYS)
    doomed = [row for row in rows if row.use_by_at and at < row.use_by_at <= soon]
    if not doomed:
        return []
    needs = precheck.open_needs(shop)
    wanted, cars_of = _wanted(shop, rows, needs)
    on = at.astimezone(shop.zone).date()
    dying = [_dying(row, wanted[row.code], len(cars_of[row.code]), _unlike(row, needs)) for row in doomed]
    return [
        (bottle(shop, row, at), fate(one, on, shop.currency, shop.system))
        for row, one in zip(doomed, dying, strict=True)
    ]


def _wanted(
    shop: Shop, rows: list[Container], needs: list[Need]
) -> tuple[dict[str, int], dict[str, set[str]]]:
    """Return by bottle what booked cars take of it, water and all, and which cars."""
    job_of = {need.id: need.job for need in needs}
    shelf = {row.code: on_shelf(row) for row in rows}
    amounts: dict[str, int] = defaultdict(int)
    jobs: dict[str, set[str]] = defaultdict(set)
    for taken in reserve(needs, shelf.values(), shop.zone).taken:
        amounts[taken.container] += gross(taken.amount, shelf[taken.container].parts)
        jobs[taken.container].add(job_of[taken.need])
    return amounts, jobs


def _unlike(row: Container, needs: list[Need]) -> int:
    """Return how many cars want what a mixed bottle holds before it dies, but in another mix."""
    one = on_shelf(row)
    return len({
        need.job for need in needs
        if one.parts not in (NEAT, need.parts) and need.amount and not serves(need, one)
        and row.use_by_at and need.ends_at <= row.use_by_at
        and serves(need, replace(one, parts=need.parts, content=gross(one.concentrate, need.parts)))
    })  # fmt: skip


def _dying(row: Container, wanted: int, cars: int, unlike: int) -> Dying:
    assert row.product is not None
    assert row.use_by_on is not None
    price = row.pack.price_minor if row.pack else None
    return Dying(
        code=row.code,
        product=row.product.name,
        pack="",
        dimension=row.product.dimension,
        content=row.content,
        use_by_on=row.use_by_on,
        wanted=wanted,
        cars=cars,
        worth_minor=worth(row.content, row.full, price),
        guards=row.product.guards_people,
        unlike=unlike,
        mix=f"{row.parts_product}:{row.parts_water}",
    )
