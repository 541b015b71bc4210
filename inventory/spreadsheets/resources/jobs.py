"""Jobs that are booked: matched by code, else by car and time."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from import_export.resources import Resource

from inventory.codes import pair
from inventory.models import Job, Person, Place, Service, Vehicle
from inventory.spreadsheets.resources.columns import Amiss, Cells, Column, Given, Sheet, chosen, text
from inventory.spreadsheets.resources.known import Known
from inventory.spreadsheets.rules import values
from inventory.spreadsheets.rules.table import Cell
from inventory.spreadsheets.rules.values import Wrong

SEVERAL = "(several)"
FIXED = "This is not changed by a spreadsheet. Put “{}” back, or change it on the job's page."
CHANGEABLE = {"title", "starts_at", "bay", "person"}


@dataclass
class JobRow:
    """One row: a car, a service, a time; bay and person are those of every step, or SEVERAL."""

    job: Job | None = None
    code: str = ""
    vehicle: str = ""
    plate: str = ""
    size: str = ""
    service: Service | None = None
    title: str = ""
    starts_at: datetime | None = None
    bay: Place | str | None = None
    person: Person | str | None = None


def row_of(job: Job) -> JobRow:
    """Return the row of a job whose vehicle, service and steps are loaded."""
    steps = list(job.steps.all())
    bays = list(dict.fromkeys(step.bay for step in steps))
    people = list(dict.fromkeys(step.person for step in steps))
    return JobRow(
        job, job.code, job.vehicle.name, job.vehicle.plate, job.vehicle.size, job.service, job.title,
        job.starts_at, (bays or [None])[0] if len(bays) < 2 else SEVERAL,
        (people or [None])[0] if len(people) < 2 else SEVERAL,
    )  # fmt: skip


def _starts(cell: Cell, given: Given) -> datetime:
    return values.read_instant(cell, given.known.shop.zone)


def _service(cell: Cell, given: Given) -> Service:
    do = "Write it on the Jobs page first, or use its name as it is there."
    return given.known.services.one(values.text_of(cell), "service", do)


def _bay(cell: Cell, given: Given) -> Place | str:
    if values.text_of(cell) == SEVERAL:
        return _kept(given.thing.bay)
    do = "Add it on the Settings page first, or write its name as it is there."
    return given.known.places.one(values.text_of(cell), "place", do)


def _person(cell: Cell, given: Given) -> Person | str:
    if values.text_of(cell) == SEVERAL:
        return _kept(given.thing.person)
    do = "Add them on the People page first, or write the name as it is there."
    return given.known.people.one(values.text_of(cell), "person", do)


def _kept(now: object) -> str:
    if now != SEVERAL:
        raise Wrong(f"{SEVERAL} only says that steps differ. Name one, or leave the cell empty.")
    return SEVERAL


def _start(thing: JobRow, known: Known) -> str:
    return "" if thing.starts_at is None else values.show_instant(thing.starts_at, known.shop.zone)


class JobResource(Sheet, Resource):  # type: ignore[misc]
    """A row a booked job; its steps follow from its service."""

    slug, what = "jobs", "jobs"
    lead = "The cars that are booked: which service, when, in which bay, by whom."

    code = Column("code", "code", None)
    vehicle = Column("vehicle", "vehicle", text(80), needed=True)
    plate = Column("plate", "plate", text(20))
    size = chosen("size", "size", Vehicle.Size.choices)
    service = Column(
        "service", "service", _service, lambda thing, known: thing.service.name if thing.service else ""
    )
    title = Column("title", "called", text(120))
    starts_at = Column("starts_at", "starts at (local time)", _starts, _start, needed=True)
    bay = Column("bay", "bay", _bay, lambda thing, known: str(thing.bay or ""), blank=None)
    person = Column("person", "technician", _person, lambda thing, known: str(thing.person or ""), blank=None)

    def find(self, row: Cells, known: Known) -> JobRow | None:
        """Match by code where one is given, else by car and time."""
        code = self.cell(row, "code").replace(" ", "").upper()
        if code and code not in known.jobs:
            raise Amiss(code=f"“{code}” is no open job here. Leave the code empty to book a new one.")
        job = known.jobs[code] if code else self._alike(row, known)
        if job and (first := known.claim("job", job.code)):
            raise Amiss(code=f"This job is in row {first} already. Keep one of the two.")
        return row_of(job) if job else None

    def _alike(self, row: Cells, known: Known) -> Job | None:
        try:
            at = values.read_instant(row.get(self.heading("starts_at")), known.shop.zone)
        except Wrong:
            return None
        key = (self.cell(row, "vehicle"), self.cell(row, "plate"), at)
        found = [
            job for job in known.jobs.values() if (job.vehicle.name, job.vehicle.plate, job.starts_at) == key
        ]
        return found[0] if len(found) == 1 else None

    def fresh(self, row: Cells, known: Known) -> JobRow:
        """Start a booking."""
        return JobRow()

    def check(self, thing: JobRow, before: Sequence[Cell] | None, row: Cells, known: Known) -> None:
        """Refuse a booking without work, and changes that have a page of their own."""
        if before is not None:
            for column, was, now in zip(self.columns, before, self.cells(thing, known), strict=True):
                if was != now and column.attribute not in CHANGEABLE:
                    raise Amiss(**{column.attribute: FIXED.format(was)})
            return
        if thing.service is None and not thing.title.strip():
            raise Amiss(service="Name the service, or say under “called” what is done.")
        thing.title = thing.title or str(thing.service)
        car = known.vehicles.get((thing.vehicle.strip(), thing.plate.strip()))
        if car and thing.size and thing.size != car.size:
            raise Amiss(
                size=f"{car} is kept as {car.get_size_display()}. Leave the cell empty, or correct the car."
            )
        thing.size = car.size if car else thing.size or Vehicle.Size.MID
        if first := known.claim("booking", (thing.vehicle.strip(), thing.plate.strip(), thing.starts_at)):
            raise Amiss(starts_at=f"Row {first} books this car at this time already. Keep one of the two.")

    def about(self, thing: JobRow) -> str:
        """Return the car and what is done."""
        code = f", {pair(thing.code)}" if thing.code else ""
        return f"{thing.vehicle} · {thing.title or thing.service or ''}{code}"
