"""What the demo's services do to a car, and what the gauge read on the cars that are to be cut."""

from datetime import datetime, timedelta

from inventory.management.demo.nouns import Cast
from inventory.management.demo.tables import Row, listed, table
from inventory.models import Job, Panel, Reading, ServiceStep

WORK = ("strips_coating", "rinses", "spot", "sprayed", "local_exhaust")
AGREED = timedelta(hours=26)
WORKED = timedelta(hours=8)
CANNOT = "not"


def describe_work(cast: Cast) -> None:
    """Write on the services' steps what they do to a car; jobs that are booked afterwards carry it."""
    for row in table("work"):
        # A row that names no step of the services' table must not pass unseen.
        step = ServiceStep.objects.get(service=cast.services[row["service"]], name=row["step"])
        step.cut, step.passes, step.respirator = row["cut"], int(row["passes"]), row["respirator"]
        step.touches, step.tools = listed(row["touches"]) or None, listed(row["tools"])
        for name in WORK:
            setattr(step, name, row[name] == "yes")
        step.save()


def read_panels(cast: Cast, now: datetime) -> None:
    """Type in the panels and readings of booked cars, as Tomas did on the day before."""
    for position, row in enumerate(table("panels"), 1):
        vehicle = cast.vehicles[row["vehicle"]]
        panel = Panel.objects.create(
            vehicle=vehicle, position=position, name=row["panel"], surface=row["surface"],
            substrate=row["substrate"],
        )  # fmt: skip
        jobs = Job.objects.filter(vehicle=vehicle)
        booked = jobs.filter(state=Job.State.OPEN).order_by("starts_at").first()
        if booked:
            _read(cast, panel, booked, row["before"], Reading.When.BEFORE, now - AGREED)
        last = jobs.filter(state=Job.State.CLOSED).order_by("starts_at").last()
        if last:
            _earlier(cast, panel, last, row)


def _earlier(cast: Cast, panel: Panel, job: Job, row: Row) -> None:
    _read(cast, panel, job, row["earlier_before"], Reading.When.BEFORE, job.starts_at)
    _read(cast, panel, job, row["earlier_after"], Reading.When.AFTER, job.starts_at + WORKED)


def _read(cast: Cast, panel: Panel, job: Job, said: str, when: str, at: datetime) -> None:
    if said:
        um = None if said == CANNOT else int(said)
        Reading.objects.create(panel=panel, job=job, when=when, um=um, taken_at=at, by=cast.people["tomas"])
