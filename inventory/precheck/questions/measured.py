"""Does a measurement cover what a step does with a product in a place, and what does it say of it?

A measurement covers no more product, no more minutes and no faster work than it was made with, only while it
is in date, only under the exhaust that was on, and only what nothing else lets go there then. The newest that
covers the step counts. What reached a limit counts, too, where the step is worse than what was measured.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date

from inventory.units import show
from safety.air.measured import OVER, Typed, judged, verdict
from safety.air.values import Measured

from .topics.measured import Exhaust, Measurement


@dataclass(frozen=True)
class Work:
    """What a step does with one product: `beside` says by CAS number who else lets the same go."""

    product: str
    amount: int
    minutes: float
    on: date
    exhaust: bool = False
    beside: Mapping[str, str] | None = None


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


NOTHING: tuple[tuple[Measured, ...], tuple[str, ...]] = ((), ())


def standing(
    work: Work, measurements: Iterable[Measurement], exhausts: Iterable[Exhaust], lists: Lists
) -> tuple[tuple[Measured, ...], tuple[str, ...]]:
    """Return what is measured of a step's product, and in sentences why a measurement does not count."""
    mine, here = [one for one in measurements if one.product == work.product], tuple(exhausts)
    if not mine:
        return NOTHING
    each = [(one, doubts(work, one, here, lists)) for one in mine]
    one, found = next(((one, found) for one, found in each if not found), each[0])
    results = [_said(each, one, lists) for each in judged(one.samples, lists.regime, lists.on, lists.typed)]
    if found:
        kept = [each for each in results if verdict(each) == OVER] if all(of.worse for of in found) else []
        return tuple(kept), (_not_counting(one, found),)
    beside = work.beside or {}
    kept = [each for each in results if each.cas not in beside or verdict(each) == OVER]
    shared = {each.cas: each.name for each in results if each.cas in beside}
    others = tuple(
        f"The measurement of {one.name} does not cover its {name}: {beside[cas]} lets it go there, too."
        for cas, name in shared.items()
    )
    return tuple(kept), others


def doubts(work: Work, one: Measurement, exhausts: Iterable[Exhaust], lists: Lists) -> list[Doubt]:
    """Return every reason why a measurement does not cover a step's work with its product."""

    def amount(base: float) -> str:
        return show(round(float(f"{base:.3g}")), one.dimension, lists.system)

    found = []
    if not one.holds(work.on):
        ended = work.on > one.until_on
        found.append(Doubt(f"it ended on {dated(one.until_on)}" if ended else "it was made after the step"))
    faster = work.amount * one.minutes > one.amount * work.minutes
    if work.amount > one.amount:
        most = f"the step takes {amount(work.amount)} and at most {amount(one.amount)} was measured"
        found.append(Doubt(most, worse=faster))
    if work.minutes > one.minutes:
        found.append(Doubt(f"the step takes {work.minutes:.0f} minutes and {one.minutes} were measured"))
    if faster and work.amount <= one.amount:
        rates = amount(work.amount / work.minutes), amount(one.amount / one.minutes)
        found.append(Doubt("the step uses {} a minute and {} were measured".format(*rates), worse=True))
    return [*found, *_exhaust(work, one, exhausts)]


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


def _said(each: Measured, one: Measurement, lists: Lists) -> Measured:
    most = show(one.amount, one.dimension, lists.system)
    under = f" under {one.exhaust}" if one.exhaust else ""
    within = f"{one.name}, at most {most} in {one.minutes} minutes{under}, to {dated(one.until_on)}"
    return replace(each, by=f"on {dated(one.measured_on)} by {one.by_whom}", within=within)


def _not_counting(one: Measurement, found: Iterable[Doubt]) -> str:
    why = "; ".join(each.says for each in found)
    return f"The measurement of {one.name} on {dated(one.measured_on)} does not count here: {why}."


def dated(on: date) -> str:
    """Return "12 November 2026"."""
    return f"{on.day} {on:%B %Y}"
