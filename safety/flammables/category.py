"""The category of a flammable liquid by its flash and boiling point, by the rule that classifies mixtures.

Source: as safety.hazards.mixtures.flammable, closed cup; the EU and the UK have no category 4.
"""

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
