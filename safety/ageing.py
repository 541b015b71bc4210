"""What heat takes from a shelf life, as a penalty alone.

Traps: it never lengthens a maker's date: cold counts as the reference. It says nothing about frost, light,
water or an open cap.
Source: Q10 = 2, the rule of ASTM F1980 (its worked value was read): ten kelvin halve the time.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta

from safety.findings import Finding

Q10 = 2.0
STEP_K = 10.0
ROUNDING = 1e-9
SOURCE = "Q10 = 2, the rule of ASTM F1980 (read); a penalty alone, never an extension"


class AgeingError(ValueError):
    """A spell that cannot be; the sentence says what was expected."""


@dataclass(frozen=True)
class Spell:
    """So many days at one temperature in °C."""

    days: float
    at_c: float

    def __post_init__(self) -> None:
        """Refuse a spell of less than no days."""
        if not self.days >= 0:
            raise AgeingError(f"days: 0 or more were expected, not {self.days:g}.")


def pace(at_c: float, reference_c: float, q10: float = Q10) -> float:
    """Return how many days at the reference one day at this temperature uses up, colder ones below 1."""
    return float(q10 ** ((at_c - reference_c) / STEP_K))


def accelerated_days(days: float, at_c: float, reference_c: float, q10: float = Q10) -> float:
    """Return how many days in the oven stand for so many at the reference (ASTM F1980)."""
    return days / pace(at_c, reference_c, q10)


def used_days(spells: Iterable[Spell], reference_c: float) -> float:
    """Return the life used up in days at the reference; a cold day counts as a whole one."""
    return math.fsum(one.days * max(1.0, pace(one.at_c, reference_c)) for one in spells)


def penalty_days(spells: Iterable[Spell], reference_c: float) -> float:
    """Return the days that heat took beyond those that passed; never below 0."""
    listed = tuple(spells)
    return used_days(listed, reference_c) - math.fsum(one.days for one in listed)


def use_by_after(use_by: date, spells: Iterable[Spell], reference_c: float) -> date:
    """Return the date less the penalty, a day begun counted whole; never later than it was."""
    lost = math.ceil(penalty_days(spells, reference_c) - ROUNDING)
    return use_by - timedelta(days=lost) if lost < (use_by - date.min).days else date.min


def heat(
    name: str, use_by: date, spells: Iterable[Spell], reference_c: float, on: date
) -> tuple[Finding, ...]:
    """Return the finding on what stood warmer than the reference for long enough to cost a day."""
    warm = [one for one in spells if one.at_c > reference_c]
    until = use_by_after(use_by, warm, reference_c)
    if until == use_by or on > use_by:  # a date that is over by itself needs no heat to be told
        return ()
    lost, days = (use_by - until).days, math.fsum(one.days for one in warm)
    hottest = max(one.at_c for one in warm)
    says = f"{name} stood warm: its {use_by.isoformat()} counts as {until.isoformat()}."
    spell = f"{_number(days)} days above {reference_c:g} °C, at most {hottest:g} °C"
    because = f"{spell}, take {lost} more off its life."
    if until < on:
        do = "Set it aside; the maker alone can say that it is still good."
        return (Finding("ageing.heat", "ask", says, because, do, SOURCE, (name,)),)
    do = f"Use it by {until.isoformat()} and keep it at {reference_c:g} °C or cooler."
    return (Finding("ageing.heat", "tell", says, because, do, SOURCE, (name,)),)


def _number(value: float) -> str:
    return f"{round(value, 1):g}" if value >= 0.1 else "Less than 0.1"
