"""A shift: what was breathed over eight hours, and many contaminants together.

Trap: by default every contaminant is summed, whatever it does to whom; only a competent person leaves one
out.
Trap: a longer shift is compared with a lower limit by its mean over the whole shift, never also by ΣCT/8.
Source: 29 CFR 1910.1000(d)(1)(i) and (d)(2)(i) (read); Brief and Scala (from memory).
"""

from collections.abc import Iterable

HOURS = 8.0
DAY = 24.0


def twa_8h(spells: Iterable[tuple[float, float]]) -> float:
    """Return ΣCT/8 from pairs of hours and concentration."""
    return sum(hours * concentration for hours, concentration in spells) / HOURS


def reduced(limit: float, hours: float) -> float:
    """Return the limit for a shift of more than eight hours (Brief and Scala); of eight, the limit itself."""
    return limit * (HOURS / hours) * (DAY - hours) / (DAY - HOURS)


def share_of_shift(task_mean: float, minutes: float, limit: float) -> float:
    """Return which part of its 8-hour limit one task takes, nothing breathed besides it."""
    hours = minutes / 60
    if hours > HOURS:
        return task_mean / reduced(limit, hours)
    return twa_8h([(hours, task_mean)]) / limit


def additive_index(shares: Iterable[float]) -> float:
    """Return Em = ΣC/L; more than 1 is over the limit of the mixture."""
    return sum(sorted(shares))
