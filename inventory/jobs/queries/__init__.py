"""What the job pages show, in a constant number of queries each."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime
from itertools import groupby

from django.db.models import Prefetch, Q, QuerySet

from inventory.jobs.rules.bays import Clash, Stay, clashes
from inventory.jobs.rules.gains import Standing
from inventory.models import (
    Job,
    Kind,
    Movement,
    Place,
    Product,
    Service,
    ServiceNeed,
    Shop,
    Stage,
    Step,
    StepNeed,
    Vehicle,
)
from inventory.precheck import queries as precheck
from inventory.stock.booking import amount_for, measured_uses, uses_of
from inventory.stock.rules.amounts import ENOUGH
from inventory.stock.signing import left_over
from inventory.units import show, show_mix

KIND_WORDS = dict(Kind.choices)
CLOSED_SHOWN = 10


@dataclass(frozen=True)
class Listed:
    """A job in the list, with its verdict."""

    job: Job
    verdict: str
    says: str


@dataclass(frozen=True)
class Day:
    """The jobs that start on a local day."""

    on: date
    jobs: list[Listed]


def jobs(shop: Shop) -> "QuerySet[Job]":
    """Return the jobs of a shop with what sentences about them need."""
    return Job.objects.filter(shop=shop).select_related("vehicle", "service", "shop")


def days(shop: Shop, at: datetime) -> list[Day]:
    """Return the open jobs by the day they start, each with its verdict."""
    rows = list(jobs(shop).filter(state=Job.State.OPEN).order_by("starts_at", "booked_at", "id"))
    found = precheck.verdicts(shop, at, rows)
    listed = [Listed(row, found[row.code].verdict, found[row.code].headline.says) for row in rows]
    by_day = groupby(listed, key=lambda one: one.job.starts_at.astimezone(shop.zone).date())
    return [Day(on, list(group)) for on, group in by_day]


def closed(shop: Shop) -> list[Job]:
    """Return the jobs that were closed or cancelled last."""
    return list(jobs(shop).exclude(state=Job.State.OPEN).order_by("-starts_at")[:CLOSED_SHOWN])


def standings(shop: Shop, at: datetime) -> dict[str, Standing]:
    """Return how every open job stands, by its code."""
    rows = list(jobs(shop).filter(state=Job.State.OPEN))
    found = precheck.verdicts(shop, at, rows)
    return {
        row.code: Standing(str(row.vehicle), found[row.code].verdict, _open(found[row.code])) for row in rows
    }


def _open(verdict: precheck.Verdict) -> int:
    return verdict.check.count("stop") + verdict.check.count("ask")


def steps(job: Job) -> list[Step]:
    """Return the steps of a job with bay, person and needs."""
    needs = Prefetch("needs", StepNeed.objects.select_related("product").order_by("id"))
    return list(job.steps.select_related("bay", "person", "signed_by").prefetch_related(needs, "panels"))


def stages_to_sign(found: Iterable[Step]) -> list[tuple[str, str]]:
    """Return the stages that have an unsigned step, in the order of work, as (value, word).

    A rinse is signed by itself.
    """
    unsigned = {step.stage for step in found if not step.signed_at and not step.rinses}
    return [(str(value), str(word)) for value, word in Stage.choices if value in unsigned]


def bay_clashes(job: Job) -> list[Clash]:
    """Return where another open job stands in a bay that this one needs at the same time."""
    rows = Step.objects.filter(
        job__shop=job.shop, job__state=Job.State.OPEN, bay__isnull=False, signed_at__isnull=True,
        starts_at__lt=job.ends_at, ends_at__gt=job.starts_at,
    ).select_related("bay", "job__vehicle")  # fmt: skip
    stays = [
        Stay(row.job.code, str(row.job.vehicle), row.name, row.bay.name, row.starts_at, row.ends_at)
        for row in rows
        if row.bay
    ]
    return clashes(job.code, stays)


def entries(job: Job) -> list[Movement]:
    """Return the ledger's entries of a job in the order of their time, what was taken back included."""
    rows = Movement.objects.filter(job=job).select_related(
        "source", "product", "person", "step", "reversed_by"
    )
    return list(rows.order_by("happened_at", "seq"))


@dataclass(frozen=True)
class Unsaid:
    """What of a need was neither scanned nor signed: `left` of it, as concentrate, base units."""

    need: StepNeed
    step: Step
    named: str
    dimension: str
    left: int


def unsaid(job: Job) -> list[Unsaid]:
    """Return the needs, or what is left of them, about which nobody has said what became of them."""
    measured, left = taking(job.shop), {int(one.need.id): one.need.amount for one in left_over(job)}
    return [
        Unsaid(need, step, name_of(need), measured.dimension(need), left[need.pk])
        for step in steps(job)
        for need in step.needs.all()
        if need.pk in left
    ]


@dataclass(frozen=True)
class Taking:
    """How a shop measures what steps take: a kind as its first product is, else by volume."""

    system: str
    kinds: dict[str, str]

    def dimension(self, need: StepNeed | ServiceNeed) -> str:
        """Return the dimension of a need."""
        return need.product.dimension if need.product else self.of_kind(need.kind)

    def of_kind(self, kind: str) -> str:
        """Return the dimension of a kind."""
        return self.kinds.get(kind, Product.Dimension.VOLUME)

    def amount(self, base: int, need: StepNeed | ServiceNeed) -> str:
        """Return an amount of a need in the shop's units."""
        return show(base, self.dimension(need), self.system)

    def says(self, need: StepNeed | ServiceNeed) -> str:
        """Return "Hollin panel wipe 180 ml", "any shampoo 30 ml at 1:500"."""
        mix = f" at {show_mix(need.parts_product, need.parts_water)}" if need.parts_water else ""
        return f"{name_of(need)} {self.amount(need.amount, need)}{mix}"


def taking(shop: Shop) -> Taking:
    """Return how a shop measures, in one query."""
    rows = Product.objects.filter(shop=shop, archived=False).order_by("-id")
    return Taking(shop.system, dict(rows.values_list("kind", "dimension")))


def name_of(need: StepNeed | ServiceNeed) -> str:
    """Return what a need asks for, in words."""
    return need.product.name if need.product else f"any {KIND_WORDS[need.kind]}"


def medians(job: Job, needs: Iterable[StepNeed], at: datetime) -> list[str]:
    """Return what this shop measured on cars of this size, a sentence for each need that has a median."""
    uses, measure = measured_uses(job.shop, job.vehicle.size, at), taking(job.shop)
    said = []
    for need in needs:
        if len(uses_of(need, uses)) >= ENOUGH:
            own = amount_for(need, job.vehicle.size, uses)
            said.append(f"{name_of(need)}: {measure.amount(own.amount, need)}. {own.because}")
    return said


def services(shop: Shop) -> "QuerySet[Service]":
    """Return what the shop sells, by name."""
    return (
        Service.objects.filter(shop=shop, archived=False)
        .prefetch_related("steps__needs__product")
        .order_by("name")
    )


def vehicles(shop: Shop) -> "QuerySet[Vehicle]":
    """Return the vehicles that the shop knows."""
    return Vehicle.objects.filter(shop=shop).order_by("name", "plate")


def bays(shop: Shop) -> "QuerySet[Place]":
    """Return where work is done."""
    return Place.objects.filter(Q(kind=Place.Kind.BAY) | Q(kind=Place.Kind.CABIN), shop=shop).order_by("name")


def products(shop: Shop) -> "QuerySet[Product]":
    """Return what a step may ask for."""
    return Product.objects.filter(shop=shop, archived=False).order_by("name")
