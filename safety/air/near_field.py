"""The breathing zone of the person who works: near field and far field (N1 to N3, N5).

Trap: the technician's air is the larger of this model and the room's with K; Q is here the real air flow,
and K is never put on top of it.
Source: Nicas 1996; AIHA *Mathematical Models for Estimating Occupational Exposure* 2009 (from memory); the
approximation in time by Nicas 2024;68(1):78 (the abstract was read). The range of the parameters is from
memory.
"""

import math
from dataclasses import dataclass

from safety.air.course import Course, Part
from safety.air.room import MG, MINUTES, room
from safety.air.values import NearField, Place


def exchange_m3_min(near: NearField) -> float:
    """Return β, the air between the near field and the room (N3): half its free surface × speed."""
    return math.pi * near.radius_m**2 * near.air_speed_m_min


def volume_m3(near: NearField) -> float:
    """Return the volume of the half sphere."""
    return 2 / 3 * math.pi * near.radius_m**3


def near_field(place: Place, grams: float, minutes: float, elsewhere: float = 0.0) -> Course:
    """Return the course beside the source (N2): (G/Q)(1 − exp(−Qt/V)) + (G/β)(1 − exp(−βt/V_N)).

    It errs high in the first minutes: 12 % after one, 2.5 % from fifteen. What is let go elsewhere in the
    room adds to the first term alone.
    """
    assert place.volume_m3 is not None
    assert place.air_m3_h is not None
    near, given_off = place.near_field, grams * MG / minutes
    small = volume_m3(near)
    all_of_it = (grams + elsewhere) * MG / minutes
    far_part = Part(all_of_it / place.volume_m3, place.air_m3_h / MINUTES / place.volume_m3)
    return Course((far_part, Part(given_off / small, exchange_m3_min(near) / small)), minutes)


@dataclass(frozen=True)
class Breathed:
    """What the technician breathes in mg/m³: the larger of both models, figure by figure (N5)."""

    end: float
    task_mean: float
    worst_15: float
    peak: float


def breathed(place: Place, grams: float, minutes: float, elsewhere: float = 0.0) -> Breathed:
    """Return the figures of the breathing zone for one substance."""
    both = (room(place, grams + elsewhere, minutes), near_field(place, grams, minutes, elsewhere))
    return Breathed(
        end=max(course.at(minutes) for course in both),
        task_mean=max(course.task_mean for course in both),
        worst_15=max(course.worst_15 for course in both),
        peak=max(course.peak for course in both),
    )
