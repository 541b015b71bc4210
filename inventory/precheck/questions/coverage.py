"""Does a measurement cover what a step does with a product in a place, and what is in doubt?

A measurement covers no more product, no more minutes and no faster work than it was made with, only while it
is in date, only under the exhaust that was on, and only work that sprays no mist.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date

from inventory.units import show
from safety.air.measured import Typed

from .topics.measured import Exhaust, Measurement

# The model lets a product go in the shorter of the work and this.
QUARTER = 15.0


@dataclass(frozen=True)
class Work:
    """What a step does with one product: `beside` says by CAS number who else lets the same go."""

    product: str
    amount: int
    minutes: float
    on: date
    exhaust: bool = False
    beside: Mapping[str, str] | None = None
    sprayed: bool = False


@dataclass(frozen=True)
class Lists:
    """The limits that judge: a regime's lists on a day, and the shop's own."""

    regime: str
    on: date
    typed: Typed
    system: str = "metric"


@dataclass(frozen=True)
class Doubt:
    """Why a measurement does not cover a step; `worse`: the step breathes no less than what was measured."""

    says: str
    worse: bool = False


def doubts(work: Work, one: Measurement, exhausts: Iterable[Exhaust], lists: Lists) -> list[Doubt]:
    """Return every reason why a measurement does not cover a step's work with its product."""

    def amount(base: float) -> str:
        return show(round(float(f"{base:.3g}")), one.dimension, lists.system)

    found = []
    if work.sprayed:
        found.append(Doubt("the step sprays it as a mist, and work without a mist was measured", worse=True))
    if not one.holds(work.on):
        ended = work.on > one.until_on
        found.append(Doubt(f"it ended on {dated(one.until_on)}" if ended else "it was made after the step"))
    faster = work.amount * one.minutes > one.amount * work.minutes
    worse = _as_fast(work, one)
    if work.amount > one.amount:
        most = f"the step takes {amount(work.amount)} and at most {amount(one.amount)} was measured"
        found.append(Doubt(most, worse))
    if work.minutes > one.minutes:
        longer = f"the step takes {work.minutes:.0f} minutes and {one.minutes} were measured"
        found.append(Doubt(longer, worse))
    if faster and work.amount <= one.amount:
        rates = amount(work.amount / work.minutes), amount(one.amount / one.minutes)
        found.append(Doubt("the step uses {} a minute and {} were measured".format(*rates), worse))
    return [*found, *_exhaust(work, one, exhausts)]


def _as_fast(work: Work, one: Measurement) -> bool:
    """Say whether a step uses no less a minute, taken over its minutes or its first quarter of an hour."""
    first = min(work.minutes, QUARTER), min(float(one.minutes), QUARTER)
    each = ((work.minutes, float(one.minutes)), first)
    return any(work.amount * measured >= one.amount * mine for mine, measured in each)


def _exhaust(work: Work, one: Measurement, exhausts: Iterable[Exhaust]) -> list[Doubt]:
    if not one.exhaust:
        return []
    if not work.exhaust:
        return [Doubt(f"it was made under {one.exhaust}, and the step is not", worse=True)]
    same = [each for each in exhausts if each.name.casefold() == one.exhaust.casefold()]
    if any(each.holds(work.on) for each in same):
        return []
    return [Doubt(f"it was made under {one.exhaust}, {lapsed(same, work.on)}", worse=True)]


def lapsed(of: Iterable[Exhaust], on: date) -> str:
    """Return why none of these exhausts counts on a day: "examined to Friday 20 November 2026"."""
    last = max(of, key=lambda one: (one.ended_on is None, one.until_on), default=None)
    if last is None:
        return "which is not here"
    if last.ended_on is not None and last.ended_on <= on:
        return f"which is here no more since {dated(last.ended_on)}"
    if on < last.examined_on:
        return f"examined only on {dated(last.examined_on)}"
    return f"examined to {dated(last.until_on)}"


def dated(on: date) -> str:
    """Return "12 November 2026"."""
    return f"{on.day} {on:%B %Y}"
