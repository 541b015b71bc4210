"""What may burn in a task's air, from its emissions: shares of the limit, and liquids that vapour may light.

Trap: a flammable part without a lower explosive limit is asked for and named, never counted as nothing.
Trap: flammable in a closed cabin (3 m³, no air flow) is a stop; a pit, a boot, an engine bay are such
places too.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from safety.air.contaminants import UNKNOWN_AIR_C, Contaminant
from safety.air.explosive import lel_percent, may_ignite
from safety.air.limits import lel_ppm
from safety.air.no_figure import codes
from safety.air.values import Task

CLOSED_UP_TO_M3 = 20.0  # a van's load space; our choice
GASES = ("H220", "H221", "H222", "H223")
LIQUIDS = {"H224": -273.0, "H225": -273.0, "H226": 23.0}  # the lowest flash point that each class may have
FLAMMABLE = (*GASES, *LIQUIDS)
CATEGORY_3_UP_TO_C = 60.0


@dataclass(frozen=True)
class Fire:
    """The share of the lower explosive limit in percent, of what could be counted; and what could not."""

    percent: float | None
    without_limit: tuple[str, ...]
    nobody_knows: tuple[str, ...]


def burns(one: Contaminant) -> bool | None:
    """Return whether its vapour burns; None where neither table nor classes say."""
    if any(code in FLAMMABLE for code in codes(one.emission)):
        return True
    if one.of is not None:
        return one.of.burns
    return None if one.emission.hazards is None else False


def fire(all_of_them: Iterable[Contaminant], on: date) -> Fire:
    """Return the share of the limit in the room's average; None where nothing could be counted."""
    vapours, uncounted = [], False
    without: list[str] = []
    unknown: list[str] = []
    for one in all_of_them:
        limit, here = lel_ppm(one.emission, on), one.ppm(None if one.room is None else one.room.end)
        if limit is not None and here is not None:
            vapours.append((here, limit))
        elif one.emission.form != "dust" and burns(one) is not False:
            uncounted = True
            if one.room is not None:
                (without if burns(one) else unknown).append(one.name)
    percent = lel_percent(vapours) if vapours or not uncounted else None
    return Fire(percent, tuple(without), tuple(unknown))


def warmest(task: Task) -> float:
    """Return the warmer of air and panel; where neither is known, 25 °C."""
    known = [value for value in (task.air_c, task.panel_c) if value is not None]
    return max(known, default=UNKNOWN_AIR_C)


def lightable(all_of_them: tuple[Contaminant, ...], warmest_c: float) -> tuple[str, ...]:
    """Return the names of what may catch fire from a spark at this temperature."""
    mixture = sum(burns(one) is True for one in all_of_them) > 1
    return tuple(one.name for one in all_of_them if burns(one) and lights(one, warmest_c, mixture))


def lights(one: Contaminant, warmest_c: float, mixture: bool) -> bool:
    """Return whether one contaminant may: a gas always, a liquid by its flash point; unknown is yes."""
    flash = None if one.of is None else one.of.flash_point_c
    if flash is None:
        flash = min((LIQUIDS[code] for code in codes(one.emission) if code in LIQUIDS), default=-273.0)
    return may_ignite(flash, warmest_c, mixture)


def closed_in(task: Task, all_of_them: Iterable[Contaminant]) -> bool:
    """Return whether something flammable is used in a small place without air flow.

    Flammable is what has a flammable class or burns with a flash point up to 60 °C, the upper end of
    category 3 (CLP Annex I and GHS, table 2.6.1); gases, and what burns without a known flash point, too.
    """
    place = task.place
    small = place.volume_m3 is not None and place.volume_m3 <= CLOSED_UP_TO_M3
    return small and place.air_m3_h == 0 and any(flammable(one) for one in all_of_them)


def flammable(one: Contaminant) -> bool:
    """Return whether it carries a flammable class, or burns with no known flash point above 60 °C."""
    if any(code in FLAMMABLE for code in codes(one.emission)):
        return True
    flash = None if one.of is None else one.of.flash_point_c
    return burns(one) is True and (flash is None or flash <= CATEGORY_3_UP_TO_C)
