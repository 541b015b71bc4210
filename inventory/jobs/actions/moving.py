"""Moving a job, cancelling it, booking it again, and what it is called."""

from datetime import datetime

from django.db import transaction

from inventory.jobs import queries
from inventory.jobs.rules.gains import changed
from inventory.models import Job, Vehicle
from inventory.stock.booking import shift

from .locking import hold


@transaction.atomic
def move(job: Job, starts_at: datetime, *, at: datetime) -> list[str]:
    """Shift a job and every step that is not signed; return who gains and who gives way; raises Refused."""
    hold(job)
    job.refresh_from_db()
    before = queries.standings(job.shop, at)
    shift(job, starts_at)
    return changed(before, queries.standings(job.shop, at))


@transaction.atomic
def cancel(job: Job, *, at: datetime) -> list[str]:
    """Cancel a job: it wants nothing any more, at once; return who gains; raises Refused."""
    hold(job)
    return _state(job, Job.State.CANCELLED, at)


@transaction.atomic
def book_again(job: Job, *, at: datetime) -> list[str]:
    """Open a cancelled job again; return who gives way; raises Refused."""
    hold(job, Job.State.CANCELLED)
    return _state(job, Job.State.OPEN, at)


def _state(job: Job, state: str, at: datetime) -> list[str]:
    before = queries.standings(job.shop, at)
    job.state = state
    job.save(update_fields=["state"])
    after = queries.standings(job.shop, at)
    after.pop(job.code, None)
    return changed(before, after)


@transaction.atomic
def keep(job: Job, car: Vehicle) -> None:
    """Save what a job is called, its notes, and its car, and nothing that others decide; raises Refused."""
    hold(job)
    job.save(update_fields=["title", "notes"])
    car.save()
