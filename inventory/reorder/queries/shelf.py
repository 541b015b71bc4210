"""What stands on the shelf, for the order rules: usable content by product, as concentrate."""

from collections import defaultdict
from collections.abc import Collection
from datetime import date, datetime, time

from django.db.models import Q, QuerySet

from inventory.models import Container, Lot, Place, Shop
from inventory.reorder.rules import Stock
from inventory.stock import queries as stock
from inventory.stock.rules.mixes import share
from inventory.stock.rules.reserve import OnShelf
from inventory.stock.rules.use_by import over


def unheld(shop: Shop) -> "QuerySet[Container]":
    """Return what has content, is not on its way out, and is not held, neither itself nor by its lot."""
    rows = Container.objects.filter(
        shop=shop, state__in=[Container.State.SEALED, Container.State.OPEN], content__gt=0, held=""
    )
    here = rows.exclude(place__kind=Place.Kind.WASTE)
    return here.exclude(lots__in=Lot.objects.filter(product__shop=shop).exclude(held=""))


def stock_of(shop: Shop, on: date) -> dict[int, list[Stock]]:
    """Return content by product as it stands on a day; what is past a term that asks says which.

    A mixed bottle in date is no stock for every need: see `bottles_of`.
    """
    columns = (
        "id", "product_id", "content", "parts_product", "parts_water", "use_by_on", "state", "use_by_firm",
    )  # fmt: skip
    rows = list(unheld(shop).values_list(*columns))
    doubtful = any(last_on and last_on < on and not firm for *_, last_on, _, firm in rows)
    asking = _asking(shop, on) if doubtful else {}
    found: dict[int, list[Stock]] = defaultdict(list)
    for number, product, content, parts, water, last_on, state, _ in rows:
        if water and not (last_on and last_on < on):
            continue
        sealed = state == Container.State.SEALED
        held = Stock(share(content, (parts, water)), last_on, sealed, asking.get(number, ""))
        found[product].append(held)
    return found


def bottles_of(shop: Shop, on: date, kinds: Collection[str]) -> list[OnShelf]:
    """Return the mixed bottles and all of some kinds: of products in use, in date on a day, not held."""
    asked = Q(parts_water__gt=0) | Q(product__kind__in=kinds)
    rows = stock.containers(shop.id).filter(asked, content__gt=0, product__archived=False)
    in_date = rows.exclude(use_by_on__lt=on).exclude(place__kind=Place.Kind.WASTE)
    return [bottle for bottle in map(stock.on_shelf, in_date) if not bottle.held]


def _asking(shop: Shop, on: date) -> dict[int, str]:
    """Return the term that asks, by container, where one is over and none that is over stops."""
    morning = datetime.combine(on, time(), shop.zone)
    rows = stock.containers(shop.id).filter(content__gt=0, use_by_firm=False, use_by_on__lt=on)
    ended = {row.id: over(stock.dates_of_container(row), shop.zone, morning) for row in rows}
    return {number: term.name for number, term in ended.items() if term and not term.firm}
