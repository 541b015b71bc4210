"""A car's paint in templates."""

from django import template

from inventory.trade.residues import residues

register = template.Library()


@register.filter
def residue(key: str) -> str:
    """Return what lies on a surface in words; a key that the table lost is shown as it is."""
    known = residues().get(key)
    return known.words if known else key


@register.filter
def unlocalised(number: float) -> str:
    """Return a number as drawings want it, with a point whatever the page's language."""
    return f"{number:g}"
