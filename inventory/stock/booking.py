"""Booking a job from a service, and moving it: the jobs' pages, spreadsheets and the demo share this."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from datetime import datetime, timedelta

from django.db import transaction
from django.db.models import Max, Min, prefetch_related_objects

from inventory.models import (
    Job,
    Movement,
    Person,
    Place,
    Service,
    ServiceNeed,
    ServiceStep,
    Shop,
    Step,
    StepNeed,
    Vehicle,
    Work,
)
from inventory.stock.rules.amounts import Planned, planned
from inventory.stock.rules.wall_time import later, on_the_wall

# Medians look back this far: what was measured two years ago was another habit (our choice).
LOOK_BACK = timedelta(days=365)
# What a step does to the car: a booked step carries it as its service wrote it.
WORK = tuple(field.name for field in Work._meta.local_fields)
# ("product", id) or ("kind", kind) -> what steps took, the latest first, concentrate in base units
Uses = Mapping[tuple[str, int | str], Sequence[int]]


@transaction.atomic
def book(
    shop: Shop,
    service: Service | None,
    vehicle: Vehicle,
    starts_at: datetime,
    *,
    title: str,
    at: datetime,
    bay: Place | None = None,
    person: Person | None = None,
    uses: Uses | None = None,
) -> Job:
    """Make a job of a service for a vehicle; its steps and amounts can be edited afterwards.

    `uses` are the shop's measured uses on vehicles of this size, read here where they are not given.
    """
    job = Job.objects.create(
        shop=shop, vehicle=vehicle, service=service, title=title,
        starts_at=starts_at, ends_at=starts_at, booked_at=at,
    )  # fmt: skip
    if service:
        prefetch_related_objects([service], "steps__needs")
        known = measured_uses(shop, vehicle.size, at) if uses is None else uses
        made = [(_step(job, row, bay, person), row) for row in service.steps.all()]
        Step.objects.bulk_create(step for step, _ in made)
        StepNeed.objects.bulk_create(
            _need(step, need, known) for step, row in made for need in row.needs.all()
        )
    fit(job)
    return job


def _step(job: Job, row: ServiceStep, bay: Place | None, person: Person | None) -> Step:
    starts_at = later(job.starts_at, timedelta(minutes=row.starts_after), job.shop.zone)
    return Step(
        job=job, position=row.position, stage=row.stage, name=row.name, bay=bay, person=person,
        starts_at=starts_at, ends_at=starts_at + timedelta(minutes=row.minutes),
        **{name: getattr(row, name) for name in WORK},
    )  # fmt: skip


def _need(step: Step, need: ServiceNeed, uses: Uses) -> StepNeed:
    return StepNeed(
        step=step, product_id=need.product_id, kind=need.kind,
        amount=amount_for(need, step.job.vehicle.size, uses).amount,
        parts_product=need.parts_product, parts_water=need.parts_water,
    )  # fmt: skip


def amount_for(need: ServiceNeed | StepNeed, size: str, uses: Uses) -> Planned:
    """Return what to plan of a need for a vehicle size, and why."""
    return planned(need.amount, size, uses_of(need, uses))


def uses_of(need: ServiceNeed | StepNeed, uses: Uses) -> Sequence[int]:
    """Return what was measured of what a need asks for, the latest first."""
    key: tuple[str, int | str] = ("product", need.product_id) if need.product_id else ("kind", need.kind)
    return uses.get(key, ())


def shift(job: Job, starts_at: datetime) -> None:
    """Let a job start at another hour: what is not signed moves by as much on the shop's wall."""
    zone = job.shop.zone
    by = on_the_wall(job.starts_at, starts_at, zone)
    for step in job.steps.filter(signed_at__isnull=True):
        step.starts_at = later(step.starts_at, by, zone)
        # In a night on which the clock changes an hour may be skipped or come twice.
        step.ends_at = max(step.starts_at, later(step.ends_at, by, zone))
        step.save(update_fields=["starts_at", "ends_at"])
    job.starts_at, job.ends_at = starts_at, max(starts_at, later(job.ends_at, by, zone))
    job.save(update_fields=["starts_at", "ends_at"])
    fit(job)


def fit(job: Job) -> None:
    """Let a job start with its first step and end with its last."""
    ends = job.steps.aggregate(first=Min("starts_at"), last=Max("ends_at"))
    if ends["first"]:
        job.starts_at, job.ends_at = ends["first"], ends["last"]
        job.save(update_fields=["starts_at", "ends_at"])


def measured_uses(shop: Shop, size: str, at: datetime) -> dict[tuple[str, int | str], list[int]]:
    """Return what steps took on vehicles of a size, the latest first: by product and by kind.

    Only steps whose every use of the product was measured count; amounts are concentrate, base units.
    """
    rows = Movement.objects.filter(
        shop=shop, kind=Movement.Kind.USE, job__vehicle__size=size, step__isnull=False,
        happened_at__gt=at - LOOK_BACK, reversed_by__isnull=True, concentrate__isnull=False,
    ).order_by("-happened_at", "-seq")  # fmt: skip
    sums: dict[tuple[int | None, int | None, str], int] = defaultdict(int)
    assumed = set()
    for step, product, kind, amount, facts in rows.values_list(
        "step_id", "product_id", "product__kind", "concentrate", "facts"
    ):
        sums[step, product, kind] += amount or 0
        if not facts.get("measured"):
            assumed.add((step, product, kind))
    uses: dict[tuple[str, int | str], list[int]] = defaultdict(list)
    for key, total in sums.items():
        if key not in assumed and key[1] is not None:
            uses["product", key[1]].append(total)
            uses["kind", key[2]].append(total)
    return uses
