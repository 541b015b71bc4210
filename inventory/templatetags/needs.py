"""What a step takes, in templates."""

from django import template

from inventory.models import ServiceNeed, StepNeed

register = template.Library()


@register.filter
def takes(need: StepNeed | ServiceNeed, taking: object) -> str:
    """Return what a need takes in words; `taking` knows the shop's units and dimensions (`says`)."""
    return str(taking.says(need))  # type: ignore[attr-defined]
