"""The ledger's entries in templates: a change with its sign."""

from django import template

from inventory.templatetags.look import shop_system
from inventory.units import show

register = template.Library()


@register.filter
def change(base: int, dimension: str) -> str:
    """Return a change with its sign, "+30 ml" or "−9 ml"."""
    return f"{'+' if base >= 0 else '−'}{show(abs(base), dimension, shop_system.get())}"
