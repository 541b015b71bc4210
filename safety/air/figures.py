"""The air flows that are needed, or why none may be named.

Trap: where one contaminant forbids a figure there is none for the sum; an air flow is "for the room average"
unless N4 gave it.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from safety.air.contaminants import Contaminant
from safety.air.limits import LISTS, anywhere, lowest
from safety.air.needed import dilution_m3_h, needed_for_breathing_zone, needed_for_room
from safety.air.no_figure import why_no_figure
from safety.air.values import EIGHT_HOURS, Task


@dataclass(frozen=True)
class Figures:
    """m³/h for the room and the breathing zone. `forbidden` names what allows none, with why.

    `not_enough`: a figure was allowed, and no air flow keeps the breathing zone below the limit.
    """

    room_m3_h: float | None
    breathing_zone_m3_h: float | None
    forbidden: tuple[tuple[str, str], ...] = ()
    not_enough: bool = False


def figures(task: Task, all_of_them: Iterable[Contaminant], on: date) -> Figures:
    """Return the needed air flows at steady emission against the 8-hour limits."""
    listed = tuple(all_of_them)
    reasons = [(one.name, forbids(one, task.regime, on)) for one in listed]
    if forbidden := tuple((name, why) for name, why in reasons if why):
        return Figures(None, None, forbidden)
    own = [strictest(one, task.minutes) for one in listed]
    others = [strictest(one, task.minutes, elsewhere=True) for one in listed]
    known = [each for each in own if each is not None]
    elsewhere = [each for each in others if each is not None]
    if len(known) < len(own):
        return Figures(None, None)
    breathing = needed_for_breathing_zone(known, task.place.near_field, elsewhere)
    room = needed_for_room([*known, *elsewhere], task.place.mixing_k)
    return Figures(room, breathing, (), breathing is None)


def forbids(one: Contaminant, regime: str, on: date) -> str:
    """Return why this contaminant allows no figure, "" where it does."""
    why = why_no_figure(one.emission, one.of, anywhere(one.emission, on))
    if why or lowest(one.limits, EIGHT_HOURS):
        return why
    return f"no 8-hour limit was found in {' or '.join(LISTS[regime])}"


def strictest(one: Contaminant, minutes: float, *, elsewhere: bool = False) -> float | None:
    """Return the largest dilution that a contaminant's 8-hour limits ask for, None where not known."""
    grams = one.emission.elsewhere if elsewhere else one.emission.grams
    mass, minutes = None if one.of is None else one.of.molar_mass, one.emission.minutes(minutes)
    if grams is None:
        return None
    found = [
        dilution_m3_h(grams, minutes, limit, mass, one.molar_volume)
        for limit in lowest(one.limits, EIGHT_HOURS)
    ]
    return max((each for each in found if each is not None), default=None)
