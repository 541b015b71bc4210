"""What is measured of a step's product in a place, and which measurement counts of several.

The newest that covers the step counts, unless a newer one reached a limit with no more work than it had. What
reached a limit and is newer than it counts, too, where the step is no better than what was measured.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from inventory.units import show
from safety.air.measured import OVER, judged, verdict
from safety.air.values import Measured

from .coverage import Doubt, Lists, Work, dated, doubts
from .topics.measured import Exhaust, Measurement


@dataclass(frozen=True)
class Held:
    """A measurement held against a step: what its results show, and why it does not cover the step.

    `refuted`: nothing but a newer measurement speaks against it.
    """

    one: Measurement
    results: tuple[Measured, ...]
    doubts: tuple[Doubt, ...]
    refuted: bool = False

    @property
    def reached(self) -> tuple[Measured, ...]:
        """The results that are at their limit or above it."""
        return tuple(each for each in self.results if verdict(each) == OVER)

    @property
    def no_better(self) -> bool:
        """Whether the step breathes no less than what was measured."""
        return all(each.worse for each in self.doubts)


NOTHING: tuple[tuple[Measured, ...], tuple[str, ...]] = ((), ())


def standing(
    work: Work, measurements: Iterable[Measurement], exhausts: Iterable[Exhaust], lists: Lists
) -> tuple[tuple[Measured, ...], tuple[str, ...]]:
    """Return what is measured of a step's product, and in sentences why a measurement does not count.

    `measurements` come the newest first.
    """
    held = _held(work, [one for one in measurements if one.product == work.product], tuple(exhausts), lists)
    if not held:
        return NOTHING
    at = next((at for at, each in enumerate(held) if not each.doubts), len(held))
    newer, covering = held[:at], held[at : at + 1]
    kept: dict[tuple[str, str], Measured] = {}
    for each in (*newer, *covering):
        counting = each.reached if each.doubts else _alone(each, work)
        for one in counting if each.no_better else ():
            kept.setdefault((one.cas, one.kind), one)
    told = [each for each in newer if each.reached or each.refuted or (not covering and each is held[0])]
    shared = [sentence for each in covering for sentence in _shared(each, work)]
    return tuple(kept.values()), (*map(_not_counting, told), *shared)


def _held(work: Work, mine: list[Measurement], exhausts: tuple[Exhaust, ...], lists: Lists) -> list[Held]:
    found: list[Held] = []
    for one in mine:
        results = judged(one.samples, lists.regime, lists.on, lists.typed)
        why = doubts(work, one, exhausts, lists)
        held = Held(one, tuple(_said(each, one, lists) for each in results), tuple(why))
        against = [] if held.reached else _refuting(one, found)
        found.append(replace(held, doubts=(*why, *against), refuted=bool(against) and not why))
    return found


def _alone(each: Held, work: Work) -> tuple[Measured, ...]:
    beside = work.beside or {}
    return tuple(one for one in each.results if one.cas not in beside or one in each.reached)


def _shared(each: Held, work: Work) -> list[str]:
    beside = work.beside or {}
    shared = {one.cas: one.name for one in each.results if one.cas in beside}
    return [
        f"The measurement of {each.one.name} does not cover its {name}: {beside[cas]} lets it go there, too."
        for cas, name in shared.items()
    ]


def _refuting(one: Measurement, newer: Iterable[Held]) -> list[Doubt]:
    """Doubt what a newer measurement contradicts: it reached a limit with work that this one would cover."""
    return [
        Doubt(f"the one on {dated(each.one.measured_on)} reached a limit with no more work")
        for each in newer
        if each.reached and _within(each.one, one)
    ][:1]


def _within(inner: Measurement, outer: Measurement) -> bool:
    slower = inner.amount * outer.minutes <= outer.amount * inner.minutes
    exhaust = outer.exhaust.casefold() in ("", inner.exhaust.casefold())
    # No faster and no longer: so it used no more, either.
    return slower and exhaust and inner.minutes <= outer.minutes


def _said(each: Measured, one: Measurement, lists: Lists) -> Measured:
    most = show(one.amount, one.dimension, lists.system)
    under = f" under {one.exhaust}" if one.exhaust else ""
    within = f"{one.name}, at most {most} in {one.minutes} minutes{under}, to {dated(one.until_on)}"
    return replace(each, by=f"on {dated(one.measured_on)} by {one.by_whom}", within=within)


def _not_counting(each: Held) -> str:
    why = "; ".join(of.says for of in each.doubts)
    named = f"The measurement of {each.one.name} on {dated(each.one.measured_on)}"
    if each.reached and each.no_better:
        return f"{named} reached a limit, and the step is no better: {why}."
    return f"{named} does not count here: {why}."
