"""Orders as receipts see them: the lines that await a pack, and what came of them."""

from collections.abc import Iterable

from django.db.models import F

from inventory.models import Order, OrderLine, Shop
from inventory.stock.rules.receipts import allocate, is_complete

__all__ = ["allocate", "awaiting", "count_on_line"]


def awaiting(shop: Shop, packs: Iterable[int]) -> list[OrderLine]:
    """Return the placed orders' lines of some packs, the oldest order first, their order and supplier loaded.

    A line stays listed while its order is open, so that damaged and wrong packs can still be written on it.
    """
    rows = OrderLine.objects.filter(order__shop=shop, order__state=Order.State.PLACED, pack__in=list(packs))
    return list(rows.select_related("order__supplier").order_by("order__placed_on", "order_id"))


def count_on_line(
    shop: Shop,
    line: int,
    *,
    received: int = 0,
    damaged: int = 0,
    wrong: int = 0,
    closed_short: bool | None = None,
) -> None:
    """Add to a line (negative numbers take back); its order is received once nothing more is awaited."""
    row = OrderLine.objects.select_related("order").get(order__shop=shop, id=line)
    more = {
        "received": F("received") + received,
        "damaged": F("damaged") + damaged,
        "wrong": F("wrong") + wrong,
    }
    short = row.closed_short if closed_short is None else closed_short
    OrderLine.objects.filter(id=line).update(**more, closed_short=short)
    lines = row.order.lines.values_list("packs", "received", "closed_short")
    done = all(is_complete(*each) for each in lines)
    row.order.state = Order.State.RECEIVED if done else Order.State.PLACED
    row.order.save(update_fields=["state"])
