"""One check at one instant: the facts, who gets what, and how each step of the job stands with its stock."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime, tzinfo
from functools import cached_property

from inventory.stock.rules.reserve import (
    Need,
    OnShelf,
    Reserved,
    Taken,
    ends_before,
    in_order,
    reserve,
    serves,
)
from inventory.stock.rules.use_by import Term

from .facts import Facts, StepFacts


@dataclass(frozen=True)
class Plan:
    """Who gets what: one for all jobs of a shop at an instant."""

    needs: tuple[Need, ...]
    shelf: tuple[OnShelf, ...]
    reserved: Reserved

    @cached_property
    def by_need(self) -> dict[str, list[Taken]]:
        """What each need gets."""
        found: dict[str, list[Taken]] = defaultdict(list)
        for taken in self.reserved.taken:
            found[taken.need].append(taken)
        return found

    def found_by(self, need: Need) -> list[OnShelf]:
        """Return the bottles that a need asks for as earlier needs leave them: opened, with less in them."""
        like = {b.code: b for b in self.shelf if serves(need, replace(b, held=""))}
        for earlier in self.needs:
            if earlier.id == need.id:
                break
            for taken in self.by_need.get(earlier.id, ()):
                if taken.container in like:
                    like[taken.container] = _after(like[taken.container], taken, earlier.starts_at)
        return [bottle for bottle in like.values() if bottle.concentrate]

    def left(self) -> list[OnShelf]:
        """Return the shelf as all open jobs leave it."""
        starts = {need.id: need.starts_at for need in self.needs}
        shelf = {bottle.code: bottle for bottle in self.shelf}
        for taken in self.reserved.taken:
            shelf[taken.container] = _after(shelf[taken.container], taken, starts[taken.need])
        return list(shelf.values())


def _after(bottle: OnShelf, taken: Taken, at: datetime) -> OnShelf:
    product, water = bottle.parts
    gone = -(-taken.amount * (product + water) // product)
    dates = replace(bottle.dates, opened_at=at) if bottle.sealed else bottle.dates
    return replace(bottle, content=max(0, bottle.content - gone), sealed=False, dates=dates)


def plan(needs: Iterable[Need], shelf: Iterable[OnShelf], zone: tzinfo, at: datetime) -> Plan:
    """Return who gets what. A step that is late happens now, so what it opens is opened now."""
    late = in_order(
        replace(need, starts_at=max(need.starts_at, at), ends_at=max(need.ends_at, at)) for need in needs
    )
    stock = tuple(shelf)
    return Plan(tuple(late), stock, reserve(late, stock, zone))


@dataclass(frozen=True)
class Supply:
    """One need of the job under check: what it gets, what it lacks, and what it must not take."""

    need: Need
    step: StepFacts
    taken: tuple[tuple[OnShelf, int], ...]
    missing: int
    held: tuple[OnShelf, ...]
    dead: tuple[tuple[OnShelf, Term], ...]
    usable: int

    def in_bay(self, bottle: OnShelf) -> bool:
        """Say whether a bottle stands in the step's own bay."""
        return bottle.place is not None and bottle.place == self.step.bay

    def at_hand(self, bottle: OnShelf) -> bool:
        """Say whether a hand would take this bottle first: it stands in the bay, or it is open already."""
        return self.in_bay(bottle) or not bottle.sealed

    @cached_property
    def good_at_hand(self) -> bool:
        """Whether a bottle that lasts is at hand, so that no hand needs to reach for another."""
        return any(self.at_hand(bottle) for bottle, _ in self.taken)

    @property
    def lots_apart(self) -> bool:
        """Whether there is enough, but not of one lot."""
        return bool(self.missing) and self.need.one_lot and self.usable >= self.need.amount


@dataclass(frozen=True)
class Case:
    """What a question is asked about."""

    facts: Facts
    at: datetime
    plan: Plan

    @cached_property
    def supplies(self) -> tuple[Supply, ...]:
        """Return how each need of the job stands, in the order of its steps."""
        steps = {step.code: step for step in self.facts.steps}
        mine = [need for need in self.plan.needs if need.job == self.facts.job.key and need.amount]
        found = [
            self._supply(need, steps[self.facts.step_of[need.id]])
            for need in mine
            if self._known(need, steps)
        ]
        return tuple(sorted(found, key=lambda supply: (supply.step.starts_at, supply.need.id)))

    def _known(self, need: Need, steps: dict[str, StepFacts]) -> bool:
        return self.facts.step_of.get(need.id) in steps

    def _supply(self, need: Need, step: StepFacts) -> Supply:
        found = self.plan.found_by(need)
        fine = [bottle for bottle in found if not bottle.held]
        ends = [
            (bottle, ends_before(bottle, need.starts_at, need.ends_at, self.facts.zone)) for bottle in fine
        ]
        bottles = {bottle.code: bottle for bottle in fine}
        return Supply(
            need=need,
            step=step,
            taken=tuple((bottles[t.container], t.amount) for t in self.plan.by_need.get(need.id, ())),
            missing=self.plan.reserved.short.get(need.id, 0),
            held=tuple(bottle for bottle in found if bottle.held),
            dead=tuple((bottle, term) for bottle, term in ends if term and term.firm),
            usable=sum(bottle.concentrate for bottle, term in ends if not (term and term.firm)),
        )
