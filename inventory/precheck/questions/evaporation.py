"""From the steps of a job to tasks whose air can be judged: who breathes what, where, beside whom."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date, datetime
from functools import reduce

from inventory.precheck.questions.topics.air import AirPlace, AirStep, AirUse, Makeup
from inventory.precheck.questions.topics.weather import Reading
from safety.air.evaporating import Release, density_kg_l, released
from safety.air.values import Emission, Measured, Place, Task

from .case import Case
from .coverage import Lists, Work
from .measured import standing

# What evaporates takes the shorter of the step and this.
MINUTES = 15.0
COATING = "coating"
NOTHING = Release()
CABIN = AirPlace("", "the car's cabin", Place(3.0, 0.0, 1.0), cabin=True)
NOWHERE = AirPlace("", "no bay", Place(None, None, 1.0))


@dataclass(frozen=True)
class Taken:
    """A product that a step takes, with its amount in base units and its grams; None: nobody can say."""

    makeup: Makeup
    amount: int
    grams: float | None


@dataclass(frozen=True)
class StepAir:
    """One step, what it lets go, what others let go beside it; `reading` None: not measured in time.

    `measured` was measured of this work at the nose, `uncovered` says why another measurement does not count;
    `dust_caught`: examined local exhaust takes dust and mist away.
    """

    step: AirStep
    place: AirPlace
    regime: str
    taken: tuple[Taken, ...]
    release: Release
    beside: Release = NOTHING
    reading: Reading | None = None
    measured: tuple[Measured, ...] = ()
    uncovered: tuple[str, ...] = ()
    dust_caught: bool = False

    @property
    def minutes(self) -> float:
        """The minutes over which it evaporates: the shorter of the step and fifteen."""
        return max(1.0, min(MINUTES, (self.step.ends_at - self.step.starts_at).total_seconds() / 60))

    def task(self, emissions: Iterable[Emission]) -> Task:
        """Return the step as a task of so many emissions."""
        reading = self.reading
        return Task(
            self.place.place, self.minutes, self.regime, tuple(emissions), self.step.respirator,
            air_c=reading.air_c if reading else None, panel_c=reading.panel_c if reading else None,
            measured=self.measured, dust_caught=self.dust_caught,
        )  # fmt: skip

    @property
    def emissions(self) -> tuple[Emission, ...]:
        """What has grams: its own, and as `elsewhere` what others let go in the same minutes."""
        others = [replace(one, grams=0.0, elsewhere=one.grams) for one in self.beside.weighed if one.grams]
        return (*self.release.weighed, *others)


def steps_in_air(case: Case, steps: Iterable[AirStep]) -> list[StepAir]:
    """Return the steps that let something go, each with what others let go beside it."""
    facts = case.facts.air
    everyone = (*facts.steps, *facts.others)
    found = []
    for step in steps:
        taken = tuple(_taken(case, use) for use in step.uses)
        known = tuple(one for one in taken if one is not None)
        if not (release := _released(case, step, known)):
            continue
        beside = [
            _release(case, other)
            for other in everyone
            if other.code != step.code
            and (other.hangs_over(step) or (not other.signed and step.meets(other)))
        ]
        of = StepAir(
            step, place_of(case, step), facts.regime, known, release, reduce(_joined, beside, NOTHING),
            reading_of(case, step), dust_caught=caught(case, step, "dust"),
        )  # fmt: skip
        found.append(with_measured(case, of))
    return found


def caught(case: Case, step: AirStep, form: str) -> bool:
    """Say whether a step is done under local exhaust of its bay that catches a form, examined and in date."""
    bay, on = case.facts.air.places.get(step.bay or "", NOWHERE), working_day(case, step)
    return step.exhaust and any(one.takes(form) and one.holds(on) for one in bay.exhausts)


def with_measured(case: Case, of: StepAir) -> StepAir:
    """Return a step with what was measured of its products in its place."""
    if not of.place.measurements:
        return of
    facts, today = case.facts.air, case.at.astimezone(case.facts.zone).date()
    lists = Lists(of.regime, today, facts.limits, case.facts.system)
    results: list[Measured] = []
    uncovered: list[str] = []
    for one in {one.makeup.code: one for one in of.taken}.values():
        amount = sum(each.amount for each in of.taken if each.makeup.code == one.makeup.code)
        work = Work(
            one.makeup.code, amount, (of.step.ends_at - of.step.starts_at).total_seconds() / 60,
            working_day(case, of.step), of.step.exhaust, _also(case, of, one.makeup.code), of.step.sprayed,
        )  # fmt: skip
        stands, why = standing(work, of.place.measurements, of.place.exhausts, lists)
        results += stands
        uncovered += why
    return replace(of, measured=tuple(results), uncovered=tuple(uncovered))


def _also(case: Case, of: StepAir, product: str) -> dict[str, str]:
    """Return by CAS number what else lets it go while a product is used: another product, other work."""
    found = {one.cas: "other work" for one in of.beside.weighed if one.cas}
    for one in of.taken:
        if one.makeup.code != product:
            emissions = _released(case, of.step, [one]).weighed
            found |= {each.cas: one.makeup.name for each in emissions if each.cas}
    return found


def working_day(case: Case, step: AirStep) -> date:
    """Return the shop's day on which a step is done; one that is late is done today."""
    return max(step.starts_at, case.at).astimezone(case.facts.zone).date()


def _joined(one: Release, other: Release) -> Release:
    return Release(
        (*one.vapours, *other.vapours), (*one.cure, *other.cure),
        (*one.fumes, *other.fumes), (*one.mist, *other.mist),
    )  # fmt: skip


def place_of(case: Case, step: AirStep) -> AirPlace:
    """Return where a step is breathed: its bay, or the car's cabin where it touches the inside."""
    bay = case.facts.air.places.get(step.bay or "", NOWHERE)
    if not step.inside or bay.cabin:
        return bay
    name = f"the car's cabin in {bay.name}" if bay.code else CABIN.name
    return replace(CABIN, code=bay.code, name=name, sparks=bay.sparks)


def reading_of(case: Case, step: AirStep) -> Reading | None:
    """Return the bay's reading if it counts for the step."""
    reading = case.facts.air.readings.get(step.bay or "")
    return reading if reading and reading.counts(step.starts_at, case.at) else None


def _release(case: Case, step: AirStep) -> Release:
    taken = [_taken(case, use) for use in step.uses]
    return _released(case, step, [one for one in taken if one is not None])


def makeups_of(case: Case, step: AirStep) -> list[Makeup]:
    """Return what a step takes, a kind as the shelf serves it."""
    taken = [_taken(case, use) for use in step.uses]
    return [one.makeup for one in taken if one is not None and one.makeup.name]


def _released(case: Case, step: AirStep, taken: Iterable[Taken]) -> Release:
    each = [
        released(
            one.makeup.ingredients, one.grams, cures=one.makeup.kind == COATING,
            sprayed=step.sprayed or one.makeup.aerosol, typed=case.facts.air.limits,
        )
        for one in taken
    ]  # fmt: skip
    return reduce(_joined, each, NOTHING)


def letting_go(steps: Iterable[StepAir]) -> tuple[str, ...]:
    """Return by code the products of some steps of which something goes into the air."""
    return tuple(dict.fromkeys(one.makeup.code for of in steps for one in of.taken if _lets_go(of, one)))


def _lets_go(of: StepAir, one: Taken) -> bool:
    cures, sprayed = one.makeup.kind == COATING, of.step.sprayed or one.makeup.aerosol
    return bool(released(one.makeup.ingredients, one.grams, cures=cures, sprayed=sprayed))


def _taken(case: Case, use: AirUse) -> Taken | None:
    makeup = case.facts.air.makeups.get(use.product or _product_for(case, use))
    return None if makeup is None else Taken(makeup, use.amount, grams_of(makeup, use.amount))


def _product_for(case: Case, use: AirUse) -> str:
    """Return what a need of a kind takes: as the shelf serves it, else what lets most go of that kind."""
    bottles = {bottle.code: bottle.product for bottle in case.plan.shelf}
    for taken in case.plan.by_need.get(use.need, ()):
        return bottles.get(taken.container, "")
    alike = [one for one in case.facts.air.makeups.values() if one.kind == use.kind]
    return max(alike, key=lambda one: (_volatile_share(one), one.code), default=Makeup("", "", "", "")).code


def _volatile_share(makeup: Makeup) -> float:
    return sum(one.grams or 0.0 for one in released(makeup.ingredients, 1.0).vapours)


def grams_of(makeup: Makeup, amount: int) -> float | None:
    """Return the grams of an amount in base units (µl, mg); None of pieces and lengths."""
    if makeup.dimension == "mass":
        return amount / 1000
    if makeup.dimension == "volume":
        return amount / 1000 * density_kg_l(makeup.density_kg_l, makeup.ingredients)
    return None


def day_of(case: Case, moment: datetime) -> object:
    """Return the shop's day of a moment."""
    return moment.astimezone(case.facts.zone).date()
