"""The demo's jobs: past ones that history works on, and booked ones that show each finding."""

from datetime import datetime, timedelta

from inventory.management.demo.nouns import Cast
from inventory.models import Job, Person, Place, Service, ServiceNeed, ServiceStep, Step, StepNeed, Vehicle

SIZE = {"small": 8, "mid": 10, "large": 13, "van": 16}  # tenths of a mid-size car; common practice, no source


def book(
    cast: Cast,
    service: Service,
    vehicle: Vehicle,
    starts_at: datetime,
    booked_at: datetime,
    person: Person,
    bay: Place,
) -> Job:
    """Return a booked job with the steps and needs of a service; washing is done in bay 1."""
    steps = list(service.steps.prefetch_related("needs__product"))
    minutes = max(step.starts_after + step.minutes for step in steps)
    job = Job.objects.create(
        shop=cast.shop,
        vehicle=vehicle,
        service=service,
        title=service.name.lower(),
        starts_at=starts_at,
        ends_at=starts_at + timedelta(minutes=minutes),
        booked_at=booked_at,
    )
    made = [(_step(cast, job, plan, person, bay), plan) for plan in steps]
    Step.objects.bulk_create(step for step, _ in made)
    StepNeed.objects.bulk_create(
        _need(step, need, vehicle) for step, plan in made for need in plan.needs.all()
    )
    return job


def _step(cast: Cast, job: Job, plan: ServiceStep, person: Person, bay: Place) -> Step:
    begins = job.starts_at + timedelta(minutes=plan.starts_after)
    return Step(
        job=job,
        position=plan.position,
        stage=plan.stage,
        name=plan.name,
        person=person,
        bay=cast.places["bay1"] if plan.stage in {"wash", "decontaminate"} else bay,
        starts_at=begins,
        ends_at=begins + timedelta(minutes=plan.minutes),
    )


def _need(step: Step, need: ServiceNeed, vehicle: Vehicle) -> StepNeed:
    return StepNeed(
        step=step,
        product=need.product,
        kind=need.kind,
        amount=need.amount * SIZE[vehicle.size] // 10,
        parts_product=need.parts_product,
        parts_water=need.parts_water,
    )


def book_the_week(cast: Cast, now: datetime) -> list[Job]:
    """Book the days ahead, so that a car is ready, one short, one too late for its coating, one recalled."""
    day = now.astimezone(cast.shop.zone).replace(hour=0, minute=0, second=0, microsecond=0)
    tomas, ines = cast.people["tomas"], cast.people["ines"]

    def at(days: int, hour: int, minute: int = 0) -> datetime:
        return day + timedelta(days=days, hours=hour, minutes=minute)

    plan = [
        ("Maintenance wash", "hatch", at(0, 8), tomas, "bay1"),
        ("Tar and wax removal", "van", at(0, 13, 30), tomas, "bay1"),
        ("Correction and two-layer coating", "estate", at(1, 8, 30), ines, "bay2"),
        ("One-step polish", "roadster", at(2, 8), tomas, "bay1"),
        ("Lime and water marks", "pickup", at(3, 9), tomas, "bay2"),
        ("Wheels off and coated", "coupe", at(5, 8, 30), ines, "bay2"),
        ("Interior deep clean", "wagon", at(6, 9), tomas, "bay2"),
        ("Correction and two-layer coating", "saloon", at(8, 8, 30), ines, "bay2"),
    ]
    booked = now - timedelta(days=9)
    return [
        book(
            cast,
            cast.services[service],
            cast.vehicles[vehicle],
            starts,
            booked + timedelta(hours=n),
            who,
            cast.places[bay],
        )
        for n, (service, vehicle, starts, who, bay) in enumerate(plan)
    ]
