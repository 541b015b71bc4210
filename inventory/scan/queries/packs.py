"""Packs and the orders that await them, as the conversation sees them."""

from collections.abc import Iterable

from django.db.models import Q

from inventory.models import Order, OrderLine, Pack, Shop
from inventory.stock.conversation import Said, State
from inventory.stock.conversation.facts import OpenLine, PackFacts
from inventory.stock.receiving import awaiting

from .bottles import product_of


def packs_for(shop: Shop, state: State, said: Said) -> dict[str, tuple[PackFacts, ...]]:
    """Return packs by the number or product code that named them, with the orders that await them."""
    keys = {
        str(state.slots.get("of", "")),
        str(state.delivery.get("of", "")),
        *(each.gtin or "" for each in said.packs),
    }
    keys = (keys | ({said.code} if said.kind == "product" else set())) - {""}
    if not keys:
        return {}
    rows = Pack.objects.filter(product__shop=shop, product__archived=False)
    rows = rows.filter(Q(gtin__in=keys) | Q(product__code__in=keys)).order_by("-usual", "id")
    packs = list(rows.select_related("product").prefetch_related("parts__product"))
    lines: dict[int, list[OrderLine]] = {}
    for line in awaiting(shop, [pack.id for pack in packs]):
        lines.setdefault(line.pack_id, []).append(line)
    return {
        key: tuple(_pack(row, lines.get(row.id, [])) for row in packs if key in (row.gtin, row.product.code))
        for key in keys
    }


def _pack(row: Pack, lines: Iterable[OrderLine]) -> PackFacts:
    open_lines = tuple(
        OpenLine(line.id, line.order.code, line.order.supplier.name, line.packs, line.received)
        for line in lines
        if not line.closed_short
    )
    parts = tuple((product_of(part.product), part.amount) for part in row.parts.all())
    return PackFacts(row.id, row.gtin, product_of(row.product), row.amount, row.per_case, parts, open_lines)


def orders_for(shop: Shop, said: Said) -> dict[str, str]:
    if said.kind != "order":
        return {}
    rows = Order.objects.filter(shop=shop, code=said.code, state=Order.State.PLACED)
    return dict(rows.values_list("code", "supplier__name"))
