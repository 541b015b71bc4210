"""Orders as they stand: on their way, late, what came of each line."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from inventory.models import Order, OrderLine, Pack, Shop, Supplier

LAST_ENDED = 10


@dataclass(frozen=True)
class Row:
    """An order in the list: how much of it is still to come, and by how many days it is late."""

    order: Order
    products: str
    packs: int
    to_come: int
    late_days: int


def order_rows(shop: Shop, on: date) -> tuple[list[Row], list[Row]]:
    """Return the orders that are open, first due first, and those that ended last; two queries."""
    rows = Order.objects.filter(shop=shop).select_related("supplier").prefetch_related("lines__pack__product")
    open_states = [Order.State.PLACED, Order.State.DRAFT]
    still_open = rows.filter(state__in=open_states).order_by("-state", "due_on", "id")
    ended = rows.exclude(state__in=open_states).order_by("-placed_on", "-id")[:LAST_ENDED]
    return [_row(order, on) for order in still_open], [_row(order, on) for order in ended]


def _row(order: Order, on: date) -> Row:
    lines = sorted(order.lines.all(), key=lambda line: line.pack.product.name)
    names = list(dict.fromkeys(line.pack.product.name for line in lines))
    more = f" and {len(names) - 3} more" if len(names) > 3 else ""
    late = order.state == Order.State.PLACED and order.due_on and (on - order.due_on).days
    return Row(
        order=order,
        products=", ".join(names[:3]) + more,
        packs=sum(line.packs for line in lines),
        to_come=sum(to_come(line) for line in lines),
        late_days=max(0, late or 0),
    )


def to_come(line: OrderLine) -> int:
    """Return how many packs of a line are still awaited; damaged and wrong ones are still owed."""
    return 0 if line.closed_short else max(0, line.packs - line.received)


def order_called(shop: Shop, code: str) -> Order | None:
    """Return an order of the shop by its code, supplier and person loaded."""
    rows = Order.objects.filter(shop=shop, code=code.upper())
    return rows.select_related("supplier", "placed_by", "shop").first()


def lines_of(order: Order) -> list[tuple[OrderLine, int]]:
    """Return an order's lines by product name, each with how many packs are still to come."""
    rows = order.lines.select_related("pack__product").order_by("pack__product__name", "pack__amount", "id")
    return [(line, to_come(line)) for line in rows]


def supplier_rows(shop: Shop) -> dict[str, Supplier]:
    """Return the shop's suppliers by name."""
    return {row.name: row for row in Supplier.objects.filter(shop=shop)}


def packs_called(supplier: Supplier, ids: Iterable[int]) -> list[Pack]:
    """Return packs of products that come from this supplier, by id."""
    rows = Pack.objects.filter(id__in=list(ids), product__supplier=supplier, product__archived=False)
    return list(rows.select_related("product__supplier").order_by("product__name", "amount"))
