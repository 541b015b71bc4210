"""What a step takes, in templates."""

from django import template

from inventory.models import ServiceNeed, StepNeed

register = template.Library()


@register.filter
def takes(need: StepNeed | ServiceNeed, taking: object) -> str:
    """Return what a need takes in words; `taking` knows the shop's units and dimensions (`says`)."""
    return str(taking.says(need))  # type: ignore[attr-defined]


@register.filter
def hours(minutes: int) -> str:
    """Return minutes as "30 min", "2 h 30", "24 h"."""
    whole, rest = divmod(minutes, 60)
    if not whole:
        return f"{rest} min"
    return f"{whole} h {rest:02}" if rest else f"{whole} h"
