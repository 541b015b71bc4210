"""Does a further layer come inside the re-coat window of the layer below?"""

from datetime import datetime, tzinfo

from .acts import Act, Found
from .running import length
from .saying import moment, span
from .standing import Layer, Standing, began, ended

LATE = "Ask the maker how a late layer holds: often a fine polish and a wipe come first."
CODE = "wait.recoat"


def recoat(standing: Standing, act: Act, zone: tzinfo) -> list[Found]:
    """Return the layer that comes too early, too late, or on a coating of unknown day."""
    if not act.has("coats") or not standing.layers:
        return []
    below = standing.layers[-1]
    window = _window(below)
    if not window:
        return []
    if below.at is None:
        says = f"{act.step_name}: {act.name} would go over {below.name} {{where}}, and its day is unknown."
        return [_found(below, says, f"Its re-coat window is {window}.", LATE)]
    if below.step == act.step:
        return _within_one_step(below, act, window)
    return _between_steps(below, below.at, act, window, zone)


def _window(below: Layer) -> str:
    low, high = below.profile.waits.recoat_from_min, below.profile.waits.recoat_to_min
    if low is not None and high is not None:
        return f"{low} to {high} min"
    return f"at least {low} min" if low is not None else f"at most {high} min" if high is not None else ""


def _within_one_step(below: Layer, act: Act, window: str) -> list[Found]:
    """Two layers in one step: nobody knows when the second starts, only whether the step can hold both."""
    low, lasts = below.profile.waits.recoat_from_min, ended(act) - began(act)
    if low is None or lasts >= length("recoat_from_min", low):
        return []
    says = (
        f"{act.step_name}: two layers go on within {span(lasts)} {{where}}; the re-coat window is {window}."
    )
    because = f"{below.name} must stand {low} min before the next layer."
    return [_found(below, says, because, f"Give the step more than {low} min, or each layer its own step.")]


def _between_steps(below: Layer, since: datetime, act: Act, window: str, zone: tzinfo) -> list[Found]:
    low, high = below.profile.waits.recoat_from_min, below.profile.waits.recoat_to_min
    gap = began(act) - since
    early = low is not None and gap < length("recoat_from_min", low)
    if not early and (high is None or gap <= length("recoat_to_min", high)):
        return []
    opens = since + length("recoat_from_min", low or 0)
    says = (
        f"{act.step_name}: {act.name} would go on {span(gap)} after {below.name} {{where}}; "
        f"the re-coat window is {window}."
    )
    because = f"{below.name} was put on until {moment(since, zone)}."
    return [
        _found(
            below, says, because, f"Wait until {moment(opens, zone)}." if early else LATE, gap.total_seconds()
        )
    ]


def _found(below: Layer, says: str, because: str, do: str, weight: float = 0.0) -> Found:
    source = below.profile.source("recoat_from_min") or below.profile.source("recoat_to_min")
    return Found(CODE, "ask", says, because, "", do, source, weight)
