"""The air flow that would be needed, for the room's average and for the breathing zone.

Trap: K enters once, here as Q = K·Q′, and only for the room. Trap: contaminants are summed. Trap: where
what the near field gathers (G/β) reaches the limit, no air flow is enough: local exhaust, less product, or
a mask.
Source: V1/V2 and V7 ACGIH *Industrial Ventilation* ch. 2 (from memory; the equation was read in a
university's formula sheet); N4 algebra.
"""

from collections.abc import Iterable

from safety.air.near_field import exchange_m3_min
from safety.air.room import MG, MINUTES
from safety.air.values import Limit, NearField


def dilution_m3_h(
    grams: float, minutes: float, limit: Limit, molar_mass: float | None, molar_volume: float
) -> float | None:
    """Return Q′ = G/limit for one substance, in ppm where the limit has it, else in mg/m³ (V2, V2b).

    None where the limit is in ppm alone and the molar mass is not known.
    """
    mg_h = grams * MG * MINUTES / minutes
    if limit.ppm is not None and molar_mass is not None:
        return mg_h / molar_mass * molar_volume / limit.ppm
    return mg_h * limit.share / limit.mg_m3 if limit.mg_m3 is not None else None


def needed_for_room(dilutions: Iterable[float], mixing_k: float) -> float:
    """Return ΣK·G/limit in m³/h."""
    return mixing_k * sum(sorted(dilutions))


def needed_for_breathing_zone(
    dilutions: Iterable[float], near: NearField, elsewhere: Iterable[float] = ()
) -> float | None:
    """Return the air flow in m³/h at which the index of the breathing zone is 1; None: none is enough (N4).

    For one substance this is G/(limit − G/β). What others let go in the room gathers round no work here.
    """
    own = sum(sorted(dilutions))
    gathered = own / (exchange_m3_min(near) * MINUTES)
    return (own + sum(sorted(elsewhere))) / (1 - gathered) if gathered < 1 else None
