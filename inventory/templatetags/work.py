"""What a step does to the car, in templates."""

from django import template

from inventory.models import ServiceStep, Step

register = template.Library()
FLAGS = (
    ("strips_coating", "takes a coating off"),
    ("rinses", "rinses to a clear drain"),
    ("spot", "spots only, with water"),
    ("sprayed", "sprays a mist"),
)


@register.filter
def does(step: Step | ServiceStep) -> str:
    """Return what a step does to the car, "two steps, 3 passes · sprays a mist"; "" where nothing."""
    said = [_cut(step)] if step.cut else []
    said += [words for name, words in FLAGS if getattr(step, name)]
    if step.respirator != step.Respirator.NONE:
        said.append(step.get_respirator_display())
    if step.touches is not None:
        said.append(f"touches {', '.join(step.touches)}")
    return " · ".join(said)


def _cut(step: Step | ServiceStep) -> str:
    passes = "" if step.passes == 1 else f", {step.passes} passes"
    return f"{step.get_cut_display()}{passes}"
