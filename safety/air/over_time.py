"""The air of a step minute by minute, for a curve: the room's average and the breathing zone.

What evaporates lasts its minutes, what cures its hour; each decays after its end at its own rate.
Trap: the breathing zone is the larger of both models at every instant (N5).
"""

from collections.abc import Iterable
from dataclasses import dataclass

from safety.air.near_field import near_field
from safety.air.room import room
from safety.air.values import Place


@dataclass(frozen=True)
class Source:
    """Grams of one substance let go evenly over minutes from the start, and what others let go meanwhile."""

    grams: float
    minutes: float
    elsewhere: float = 0.0


@dataclass(frozen=True)
class Instant:
    """mg/m³ so many minutes after the start, by the room's model and by near field / far field."""

    minute: float
    room: float
    near: float

    @property
    def nose(self) -> float:
        """What who works here breathes: the larger of both."""
        return max(self.room, self.near)


def over_time(place: Place, sources: Iterable[Source], minutes: Iterable[float]) -> tuple[Instant, ...]:
    """Return the concentrations at each minute; the place's volume and air flow must be known."""
    given = tuple(sources)
    average = [room(place, one.grams + one.elsewhere, one.minutes) for one in given]
    near = [near_field(place, one.grams, one.minutes, one.elsewhere) for one in given]
    found = []
    for at in minutes:
        here, there = sum(one.at(at) for one in average), sum(one.at(at) for one in near)
        found.append(Instant(at, here, there))
    return tuple(found)
