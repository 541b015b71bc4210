"""What a step does to the car, in templates."""

from collections.abc import Iterable

from django import template

from inventory.models import ServiceStep, Step, Work
from inventory.trade.naming import row
from inventory.trade.surfaces import materials
from inventory.units import Dimension, show

register = template.Library()
FLAGS = (
    ("strips_coating", "takes a coating off"),
    ("rinses", "rinses to a clear drain"),
    ("spot", "spots only, with water"),
    ("sprayed", "sprays a mist"),
    ("local_exhaust", "local exhaust"),
)
TOOLS = dict(Work.Tool.choices)
MG = 1000


@register.filter
def does(step: Step | ServiceStep) -> str:
    """Return what a step does to the car, "two steps, 3 passes · sprays a mist"; "" where nothing."""
    said = [_cut(step)] if step.cut else []
    said += [words for name, words in FLAGS if getattr(step, name)]
    said += [_tool(step, tool) for tool in step.tools]
    if step.respirator != step.Respirator.NONE:
        said.append(step.get_respirator_display())
    if step.touches is not None:
        said.append(f"touches {', '.join(step.touches)}")
    return " · ".join(said)


@register.filter
def surfaces(said: Iterable[str]) -> str:
    """Return what is special about a car, "matte vinyl wrap, leather"; words of no table as they stand."""
    known = materials()
    return ", ".join(known[one].name if one in known else f"“{one}”" for one in said)


def _cut(step: Step | ServiceStep) -> str:
    passes = "" if step.passes == 1 else f", {step.passes} passes"
    panels = [panel.name for panel in step.panels.all()] if isinstance(step, Step) and step.pk else []
    only = f", on {row(panels)} only" if panels else ""
    return f"{step.get_cut_display()}{passes}{only}"


def _tool(step: Step | ServiceStep, tool: str) -> str:
    named = TOOLS.get(tool, tool)
    grams = step.dry_ice_g if tool == Work.Tool.DRY_ICE else None
    return f"{named}, {show(grams * MG, Dimension.MASS)}" if grams else named
