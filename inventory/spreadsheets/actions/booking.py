"""Jobs come in: a new one with the steps of its service, a known one with another time, bay or person."""

from datetime import timedelta
from fractions import Fraction

from inventory.models import Job, Person, Request, Service, Step, StepNeed, Vehicle
from inventory.spreadsheets.queries import Preview
from inventory.spreadsheets.resources import JobRow, Known
from inventory.spreadsheets.rules.outcome import Becomes

# Common practice, no source: what a service takes is written for a mid-size car.
SIZE_FACTORS = {"small": Fraction(4, 5), "mid": Fraction(1), "large": Fraction(13, 10), "van": Fraction(8, 5)}


def bring_jobs(preview: Preview, by: Person, request: Request) -> None:
    """Book what is new, move and hand over what changed."""
    for row in preview.becoming(Becomes.NEW):
        _book(row, preview.known)
    for row in preview.becoming(Becomes.CHANGED):
        _change(row)


def _book(row: JobRow, known: Known) -> None:
    assert row.starts_at is not None
    job = Job.objects.create(
        shop=known.shop, vehicle=_vehicle(row, known), service=row.service, title=row.title,
        starts_at=row.starts_at, ends_at=row.starts_at, booked_at=known.at,
    )  # fmt: skip
    if row.service:
        _copy_steps(job, row, row.service)


def _vehicle(row: JobRow, known: Known) -> Vehicle:
    name, plate = row.vehicle.strip(), row.plate.strip()
    found = known.vehicles.get((name, plate))
    if found is None:
        found = Vehicle.objects.create(shop=known.shop, name=name, plate=plate, size=row.size)
        known.vehicles = {**known.vehicles, (name, plate): found}
    return found


def _copy_steps(job: Job, row: JobRow, service: Service) -> None:
    bay = None if isinstance(row.bay, str) else row.bay
    person = None if isinstance(row.person, str) else row.person
    factor = SIZE_FACTORS[job.vehicle.size]
    for plan in service.steps.all():
        starts_at = job.starts_at + timedelta(minutes=plan.starts_after)
        step = Step.objects.create(
            job=job, position=plan.position, stage=plan.stage, name=plan.name, bay=bay, person=person,
            starts_at=starts_at, ends_at=starts_at + timedelta(minutes=plan.minutes),
        )  # fmt: skip
        job.ends_at = max(job.ends_at, step.ends_at)
        StepNeed.objects.bulk_create(
            StepNeed(
                step=step, product_id=need.product_id, kind=need.kind, amount=round(need.amount * factor),
                parts_product=need.parts_product, parts_water=need.parts_water,
            )
            for need in plan.needs.all()
        )  # fmt: skip
    job.save(update_fields=["ends_at"])


def _change(row: JobRow) -> None:
    """Shift what is not signed, and give it the row's bay and person; steps that differ stay as they are."""
    assert row.job is not None
    assert row.starts_at is not None
    job, by = row.job, row.starts_at - row.job.starts_at
    for step in job.steps.filter(signed_at__isnull=True):
        step.starts_at, step.ends_at = step.starts_at + by, step.ends_at + by
        if not isinstance(row.bay, str):
            step.bay = row.bay
        if not isinstance(row.person, str):
            step.person = row.person
        step.save(update_fields=["starts_at", "ends_at", "bay", "person"])
    job.title, job.starts_at, job.ends_at = row.title, row.starts_at, job.ends_at + by
    job.save(update_fields=["title", "starts_at", "ends_at"])
