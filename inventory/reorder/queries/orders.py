"""Orders as they stand: on their way, late, what came of each line."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from inventory.models import Order, OrderLine, Pack, Shop, Supplier
from inventory.reorder import rules
from inventory.reorder.queries.facts import pack_of
from inventory.reorder.rules.standing import Progress, Standing, standing

LAST_ENDED = 10
NAMES_SHOWN = 3


@dataclass(frozen=True)
class Row:
    """An order in the list: what is on it and how it stands."""

    order: Order
    products: str
    standing: Standing


def order_rows(shop: Shop, on: date) -> tuple[list[Row], list[Row]]:
    """Return the orders that are open, first due first, and those that ended last; four queries."""
    rows = Order.objects.filter(shop=shop).select_related("supplier").prefetch_related("lines__pack__product")
    open_states = [Order.State.PLACED, Order.State.DRAFT]
    still_open = rows.filter(state__in=open_states).order_by("state", "due_on", "id")
    ended = rows.exclude(state__in=open_states).order_by("-placed_on", "-id")[:LAST_ENDED]
    return [_row(order, on) for order in still_open], [_row(order, on) for order in ended]


def _row(order: Order, on: date) -> Row:
    lines = sorted(order.lines.all(), key=lambda line: line.pack.product.name)
    names = list(dict.fromkeys(line.pack.product.name for line in lines))
    more = f" and {len(names) - NAMES_SHOWN} more" if len(names) > NAMES_SHOWN else ""
    return Row(order, ", ".join(names[:NAMES_SHOWN]) + more, standing_of(order, lines, on))


def standing_of(order: Order, lines: Iterable[OrderLine], on: date) -> Standing:
    """Return how an order, its supplier loaded, stands on a day."""
    rows = list(lines)
    progress = Progress(
        ordered=sum(line.packs for line in rows),
        received=sum(line.received for line in rows),
        to_come=sum(map(to_come, rows)),
        due_on=order.due_on,
    )
    return standing(order.state, order.supplier.name, progress, on)


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


def packs_of_report(shop: Shop, report: rules.Report) -> dict[tuple[str, rules.Pack], Pack]:
    """Return the row of each pack that a report orders, by product code and what the rules know of it."""
    codes = [line.product.code for line in report.lines]
    rows = Pack.objects.filter(product__shop=shop, product__code__in=codes, usual=True)
    return {
        (row.product.code, pack_of(row, row.product.noun)): row
        for row in rows.select_related("product__supplier").order_by("-id")
    }


def supplier_rows(shop: Shop) -> dict[str, Supplier]:
    """Return the shop's suppliers by name."""
    return {row.name: row for row in Supplier.objects.filter(shop=shop)}


def packs_called(supplier: Supplier, ids: Iterable[int]) -> list[Pack]:
    """Return packs of products that come from this supplier, by id."""
    rows = Pack.objects.filter(id__in=list(ids), product__supplier=supplier, product__archived=False)
    return list(rows.select_related("product__supplier").order_by("product__name", "amount"))
