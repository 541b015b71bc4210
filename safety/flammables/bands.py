"""Which limits a regime sets, and against which of them a container counts.

Traps: aerosols count, propellant and liquid. In the US a flammable aerosol is category 1; in the UK it
stands with what lights at room temperature. An aerosol that nobody classified counts as one that burns.
Where a flash point is missing, category 3 counts as if it lit in the room: it may.
Source: safety/tables/flammable_limits.csv.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

from safety.flammables.category import NOT_FLAMMABLE, category
from safety.flammables.values import US_GALLON_L, Held
from safety.hazards.tables import rows

ROOM, TO_60, ALL = "room", "60", "all"
HIGHEST_C = 60.0
LITRES = {"gal": US_GALLON_L, "l": 1.0}
BY_FLASH = "UK"
TYPED = "Typed by the shop"
IN_WORDS = {
    "1": "category 1 and flammable aerosols",
    "4": "category 4",
    "1 2 3": "categories 1 to 3 and flammable aerosols",
    "2 3 4": "categories 2 to 4",
    ROOM: "flash point below the room's highest {room:g} °C and flammable aerosols",
    TO_60: "flash point from {room:g} to 60 °C",
    ALL: "any category and flammable aerosols",
}


@dataclass(frozen=True)
class Band:
    """One limit in litres, and which categories or flash points it sums."""

    band: str
    litres: float
    source: str
    mark: str


@cache
def bands(regime: str, cabinet: bool) -> tuple[Band, ...]:
    """Return the limits of a regime for a cabinet or for a fire area; () where the table has none."""
    where = "cabinet" if cabinet else "fire area"
    return tuple(
        Band(row["band"], float(row["limit"]) * LITRES[row["unit"]], row["source"], row["mark"])
        for row in rows("flammable_limits")
        if (row["regime"], row["where"]) == (regime, where)
    )


def counts_as(one: Held, regime: str, room_maximum_c: float) -> str | None:
    """Return what a container counts as: category number or flash band, "" for none, None for unknown."""
    if one.aerosol:
        burns = one.category in (1, 2, None)
        return (ROOM if regime == BY_FLASH else "1") if burns else ""
    of = category(one.flash_c, None, regime) if one.category is None else one.category
    if of is None or of == NOT_FLAMMABLE:
        return None if of is None else ""
    return by_flash(one.flash_c, of, room_maximum_c) if regime == BY_FLASH else str(of)


def by_flash(flash_c: float | None, of: int, room_maximum_c: float) -> str:
    """Return the UK's band of a liquid that burns."""
    if flash_c is None:
        return "" if of == 4 else ROOM
    if flash_c < room_maximum_c:
        return ROOM
    return TO_60 if flash_c <= HIGHEST_C else ""


def in_band(held: Iterable[Held], band: str, regime: str, room_maximum_c: float) -> tuple[Held, ...]:
    """Return what a limit sums, the largest first."""
    counted = [(one, counts_as(one, regime, room_maximum_c)) for one in held]
    mine = [one for one, kind in counted if kind and (band == ALL or kind in band.split())]
    return tuple(sorted(mine, key=lambda one: (-one.litres, one.name)))
