"""What is summed against which limit: a cabinet's content, or what stands in a fire area."""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from safety.flammables.bands import ALL, BY_FLASH, TYPED, Band, bands, in_band
from safety.flammables.values import Held

ROOM_MAXIMUM_C = 30.0  # read in a copy of the UK guidance; a hotter room types its own
BUND = 1.1


@dataclass(frozen=True)
class Store:
    """Where it is: regime, cabinet or fire area, and what the shop typed, in litres and °C."""

    regime: str
    cabinet: bool
    room_maximum_c: float = ROOM_MAXIMUM_C
    half_day_litres: float | None = None
    typed_litres: float | None = None

    @property
    def place(self) -> str:
        """Return what it is called."""
        return "cabinet" if self.cabinet else "fire area"


@dataclass(frozen=True)
class Total:
    """One sum beside its limit, in litres, the largest container first."""

    band: Band
    litres: float
    held: tuple[Held, ...]


def standing(held: Iterable[Held], store: Store) -> tuple[Held, ...]:
    """Return what a limit looks at: outside every cabinet, in a cabinet and in the UK everything."""
    whole = store.cabinet or store.regime == BY_FLASH
    return tuple(one for one in held if whole or not one.cabinet)


def sums(held: Iterable[Held], store: Store) -> tuple[Total, ...]:
    """Return every limit that holds in the place, with what counts against it."""
    counted = standing(held, store)
    limits = bands(store.regime, store.cabinet)
    if not limits and store.typed_litres is not None:
        limits = (Band(ALL, store.typed_litres, TYPED, ""),)
    found = []
    for band in limits:
        mine = in_band(counted, band.band, store.regime, store.room_maximum_c)
        found.append(Total(band, math.fsum(one.litres for one in mine), mine))
    return tuple(found)


def bund_litres(held: Iterable[Held]) -> float:
    """Return what a cabinet's sump must hold: 110 % of the largest container (UK guidance, read)."""
    return BUND * max((one.litres for one in held), default=0.0)
