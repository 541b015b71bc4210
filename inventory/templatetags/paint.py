"""A car's paint in templates."""

from django import template

from inventory.trade.residues import words_of

register = template.Library()


@register.filter
def residue(key: str) -> str:
    """Return what lies on a surface in words, or that nothing does."""
    return words_of(key)


@register.filter
def unlocalised(number: float) -> str:
    """Return a number as drawings want it, with a point whatever the page's language."""
    return f"{number:g}"
