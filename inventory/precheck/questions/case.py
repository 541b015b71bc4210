"""One check at one instant: the facts, who gets what, and how each step of the job stands with its stock."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime, tzinfo
from functools import cached_property

from inventory.stock.rules.one_lot import apart
from inventory.stock.rules.reserve import (
    Need,
    OnShelf,
    Reserved,
    Taken,
    ends_before,
    in_order,
    lasts,
    less,
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
    pools: tuple[tuple[tuple[Need, ...], tuple[OnShelf, ...]], ...]

    @cached_property
    def by_need(self) -> dict[str, list[Taken]]:
        """What each need gets."""
        found: dict[str, list[Taken]] = defaultdict(list)
        for taken in self.reserved.taken:
            found[taken.need].append(taken)
        return found

    @cached_property
    def found(self) -> dict[str, list[OnShelf]]:
        """By need, the bottles that it asks for as earlier needs leave them: opened, with less in them."""
        found = {}
        for needs, shelf in self.pools:
            now = {bottle.code: bottle for bottle in shelf}
            for need in needs:
                found[need.id] = [bottle for bottle in now.values() if _is_asked_for(bottle, need)]
                for taken in self.by_need.get(need.id, ()):
                    now[taken.container] = less(now[taken.container], taken.amount, need.starts_at)
        return found

    def left(self) -> list[OnShelf]:
        """Return the shelf as all open jobs leave it."""
        starts = {need.id: need.starts_at for need in self.needs}
        shelf = {bottle.code: bottle for bottle in self.shelf}
        for taken in self.reserved.taken:
            shelf[taken.container] = less(shelf[taken.container], taken.amount, starts[taken.need])
        return list(shelf.values())


def _is_asked_for(bottle: OnShelf, need: Need) -> bool:
    return serves(need, replace(bottle, held="") if bottle.held else bottle)


def plan(needs: Iterable[Need], shelf: Iterable[OnShelf], zone: tzinfo, at: datetime) -> Plan:
    """Return who gets what. A step that is late happens now, so what it opens is opened now."""
    late = tuple(
        in_order(
            replace(need, starts_at=max(need.starts_at, at), ends_at=max(need.ends_at, at)) for need in needs
        )
    )
    stock = tuple(shelf)
    pools = _pools(late, stock)
    each = [reserve(wanting, bottles, zone) for wanting, bottles in pools]
    taken = tuple(taken for reserved in each for taken in reserved.taken)
    short = {need: amount for reserved in each for need, amount in reserved.short.items()}
    return Plan(late, stock, Reserved(taken, short), pools)


def _pools(
    needs: tuple[Need, ...], shelf: tuple[OnShelf, ...]
) -> tuple[tuple[tuple[Need, ...], tuple[OnShelf, ...]], ...]:
    """Split needs and bottles by product, or by kind where a need asks for any of it: pools share nothing."""
    kinds = {bottle.product: bottle.kind for bottle in shelf}
    asked = {need.kind for need in needs if need.product is None}
    wanting: dict[str, list[Need]] = defaultdict(list)
    bottles: dict[str, list[OnShelf]] = defaultdict(list)
    for need in needs:
        kind = kinds.get(need.product or "", need.kind)
        wanting[need.product if need.product and kind not in asked else kind].append(need)
    for bottle in shelf:
        bottles[bottle.kind if bottle.kind in asked else bottle.product].append(bottle)
    return tuple((tuple(some), tuple(bottles.get(pool, ()))) for pool, some in wanting.items())


@dataclass(frozen=True)
class Supply:
    """One need of the job under check: what it gets, what it lacks, and what it must not take.

    elsewhere: of a step that began with a lot, what the shelf holds before others have theirs: the hand that
    finishes the step finds it, whoever it is booked for.
    """

    need: Need
    step: StepFacts
    taken: tuple[tuple[OnShelf, int], ...]
    missing: int
    held: tuple[OnShelf, ...]
    dead: tuple[tuple[OnShelf, Term], ...]
    usable: int
    elsewhere: int = 0

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
        """Whether there is enough, or more for a step that began, but not of one lot."""
        got = self.need.amount - self.missing
        return self.need.one_lot and apart(self.need.amount, got, self.all_lots, self.need.had)

    @property
    def all_lots(self) -> int:
        """How much there is of all lots together."""
        return max(self.usable, self.elsewhere)

    @property
    def lacks(self) -> bool:
        """Whether there is too little that is usable, of however many lots."""
        return bool(self.missing) and not (self.need.one_lot and self.usable >= self.need.amount)


@dataclass(frozen=True)
class Case:
    """What a question is asked about."""

    facts: Facts
    at: datetime
    plan: Plan

    @cached_property
    def open_steps(self) -> frozenset[str]:
        """Return the codes of the steps that nobody has signed yet."""
        return frozenset(step.code for step in self.facts.steps if not step.signed_at)

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
        found = self.plan.found[need.id]
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
            elsewhere=self._elsewhere(need) if need.one_lot and need.had else 0,
        )

    def _elsewhere(self, need: Need) -> int:
        shelf = (bottle for bottle in self.facts.shelf if serves(need, bottle))
        return sum(bottle.concentrate for bottle in shelf if lasts(bottle, need, self.facts.zone))
