"""The category of a flammable liquid by its flash and boiling point, by the rule that classifies mixtures.

Source: as safety.hazards.mixtures.flammable, closed cup; the EU and the UK have no category 4.
"""

from collections.abc import Iterable

from safety.hazards.classes import Hazard
from safety.hazards.mixtures.flammable import measured
from safety.hazards.mixtures.values import Mixture
from safety.hazards.mixtures.written import read

NOT_FLAMMABLE = 0
CLASSIFIED_BY = {"UK": "EU"}  # GB CLP has the same table


def category(flash_c: float | None, boiling_c: float | None, regime: str) -> int | None:
    """Return 1 to 4 from °C and a regime (US, CA, UN, EU, UK), 0 for what does not count, None for unknown.

    Trap: below 23 °C an unknown boiling point leaves category 2, which may be 1: ask for it.
    """
    if flash_c is None:
        return None
    liquid = Mixture("liquid", (), flash_point_c=flash_c, boiling_point_c=boiling_c)
    found = measured(liquid, flash_c, CLASSIFIED_BY.get(regime, regime)).hazards
    return int(read(found[0]).of.category) if found else NOT_FLAMMABLE


def of_sheet(
    hazards: Iterable[Hazard] | None, flash_c: float | None, boiling_c: float | None, regime: str
) -> tuple[int | None, bool]:
    """Return the category, and whether it is an aerosol's own, from a sheet's classes and measured points.

    The graver of both counts: a sheet of another country may leave category 4 out. None: nobody looked.
    """
    classes = tuple(hazards or ())
    sprays = [int(one.of.category) for one in classes if one.of.name == "Aerosol"]
    if sprays:
        return min(sprays), True
    known = [int(one.of.category) for one in classes if one.of.name == "Flam. Liq." and knows(one, regime)]
    measured_one = category(flash_c, boiling_c, regime)
    if measured_one:
        known.append(measured_one)
    if known:
        return min(known), False
    return (None if hazards is None and measured_one is None else NOT_FLAMMABLE), False


def knows(one: Hazard, regime: str) -> bool:
    """Return whether a regime has a hazard's class and category."""
    return CLASSIFIED_BY.get(regime, regime) in one.of.regimes
