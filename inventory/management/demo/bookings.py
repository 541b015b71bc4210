"""The demo's jobs: past ones that history works on, and booked ones that show each finding."""

from datetime import datetime, timedelta

from inventory.management.demo.nouns import Cast
from inventory.models import Job, Person, Place, Service, Stage, Vehicle
from inventory.stock import booking

# The story's amounts are the service's own: what history measures by chance would move the findings.
NOT_MEASURED: dict[tuple[str, int | str], list[int]] = {}


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
    job = booking.book(
        cast.shop,
        service,
        vehicle,
        starts_at,
        title=service.name.lower(),
        at=booked_at,
        bay=bay,
        person=person,
        uses=NOT_MEASURED,
    )
    job.steps.filter(stage__in=[Stage.WASH, Stage.DECONTAMINATE]).update(bay=cast.places["bay1"])
    return job


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
