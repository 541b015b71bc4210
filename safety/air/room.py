"""The room's average: right for the others in the bay, too mild for the person who wipes.

Trap: K, for imperfect mixing, enters once: build-up and purge use Q/K, the air flow that is needed K times
Q'.
Source: V3 and V4 of ACGIH *Industrial Ventilation* ch. 2 (from memory; the same form was read in an
engineering handbook's page).
"""

import math

from safety.air.course import Course, Part
from safety.air.values import Place

MG = 1000.0
MINUTES = 60.0


def changes_a_minute(place: Place) -> float:
    """Return Q/(K·V) in 1/min; the place's volume and air flow must be known."""
    assert place.volume_m3 is not None
    assert place.air_m3_h is not None
    return place.air_m3_h / MINUTES / place.mixing_k / place.volume_m3


def room(place: Place, grams: float, minutes: float) -> Course:
    """Return the course of the room's average (V3): (G/Q′)(1 − exp(−Q′t/V)) with Q′ = Q/K."""
    assert place.volume_m3 is not None
    slope = grams * MG / minutes / place.volume_m3
    return Course((Part(slope, changes_a_minute(place)),), minutes)


def fall(place: Place, start: float, end: float) -> float | None:
    """Return the minutes in which the average falls from start to end (V4), None where no air moves."""
    if start <= end:
        return 0.0
    rate = changes_a_minute(place)
    return math.log(start / end) / rate if rate > 0 else None
