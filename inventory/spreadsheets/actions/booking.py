"""Jobs come in: a new one with the steps of its service, a known one with another time, bay or person."""

from functools import cache

from inventory.models import Person, Request, Vehicle
from inventory.spreadsheets.queries import Preview
from inventory.spreadsheets.resources import JobRow, Known
from inventory.spreadsheets.rules.outcome import Becomes
from inventory.stock import booking


def bring_jobs(preview: Preview, by: Person, request: Request) -> None:
    """Book what is new, move and hand over what changed."""
    known = preview.known

    @cache
    def uses(size: str) -> booking.Uses:
        return booking.measured_uses(known.shop, size, known.at)

    for row in preview.becoming(Becomes.NEW):
        car = _vehicle(row, known)
        _book(row, car, known, uses(car.size))
    for row in preview.becoming(Becomes.CHANGED):
        _change(row)


def _book(row: JobRow, car: Vehicle, known: Known, uses: booking.Uses) -> None:
    assert row.starts_at is not None
    booking.book(
        known.shop, row.service, car, row.starts_at, title=row.title, at=known.at, uses=uses,
        bay=None if isinstance(row.bay, str) else row.bay,
        person=None if isinstance(row.person, str) else row.person,
    )  # fmt: skip


def _vehicle(row: JobRow, known: Known) -> Vehicle:
    name, plate = row.vehicle.strip(), row.plate.strip()
    found = known.vehicles.get((name, plate))
    if found is None:
        found = Vehicle.objects.create(shop=known.shop, name=name, plate=plate, size=row.size)
        known.vehicles = {**known.vehicles, (name, plate): found}
    return found


def _change(row: JobRow) -> None:
    """Shift what is not signed, and give it the row's bay and person; steps that differ stay as they are."""
    assert row.job is not None
    assert row.starts_at is not None
    row.job.title = row.title
    row.job.save(update_fields=["title"])
    booking.shift(row.job, row.starts_at)
    # SEVERAL says that the steps differ, and leaves them so.
    given = {"bay": row.bay, "person": row.person}
    named = {name: value for name, value in given.items() if not isinstance(value, str)}
    if named:
        row.job.steps.filter(signed_at__isnull=True).update(**named)
