"""What products do to a surface, as the shop keeps it: rows in, the trade's values out."""

from collections.abc import Iterable
from dataclasses import fields
from typing import Any

from inventory.models import Product, Profile
from inventory.trade import profile as trade

from .substances import substances

LISTS = frozenset({"leaves", "lifts", "needs_absent", "never", "asks", "touches", "traits"})


def profiles(products: Iterable[Product]) -> dict[int, trade.Profile]:
    """Return the profiles of products by the product's id, in three queries.

    What an owner typed comes before the kind's default; groups that nobody confirmed count as proposed.
    """
    asked = {product.pk: product for product in products}
    rows = {row.product_id: row for row in Profile.objects.filter(product__in=asked)}
    holds = substances(asked.values())
    return {
        product.pk: trade.profile(product.kind, holds[product.code].groups, edits_of(rows.get(product.pk)))
        for product in asked.values()
    }


def does(product: Product) -> trade.Profile:
    """Return what one product does, of its row alone (loaded with `profile`): no composition is read."""
    row: Profile | None = getattr(product, "profile", None)
    groups = frozenset(row.groups) if row else frozenset()
    return trade.profile(product.kind, groups, edits_of(row))


def edits_of(row: Profile | None) -> trade.Edits:
    """Return what a shop typed about a product; without a row everything follows the product's kind."""
    if row is None:
        return trade.Edits()
    typed: dict[str, Any] = {each.name: getattr(row, each.name) for each in fields(trade.Edits)}
    listed = {name: _tuple(value) for name, value in typed.items() if name in LISTS}
    return trade.Edits(**(typed | listed))


def _tuple(value: list[str] | None) -> tuple[str, ...] | None:
    return None if value is None else tuple(value)
