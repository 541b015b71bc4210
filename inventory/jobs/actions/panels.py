"""What is written about a car's paint: its panels, what the gauge read, what it arrives with."""

from collections.abc import Iterable, Sequence
from dataclasses import astuple, dataclass
from datetime import date, datetime, time, tzinfo

from django.db import transaction
from django.db.models import Max

from inventory.jobs.queries.panels import may_undo, missing_usual
from inventory.jobs.rules.arrivals import CAR, at_odds
from inventory.jobs.rules.panels import USUAL_PLASTIC
from inventory.models import Arrival, Job, Panel, Person, Product, Reading, Request, Step
from inventory.stock.requests import Answer, answer_once
from inventory.stock.rules.lines import Refused

from .locking import hold


@dataclass(frozen=True)
class Read:
    """What was typed of one panel: micrometres, or None where the gauge cannot read it."""

    panel: int
    um: int | None


@dataclass(frozen=True)
class Arriving:
    """One thing that a car brings, on a panel or, without one, everywhere."""

    residue: str
    panel: Panel | None = None
    since_on: date | None = None
    product: Product | None = None


@transaction.atomic
def add_usual(job: Job) -> int:
    """Add the usual panels that a job's car lacks, in clear coat; bumpers are painted plastic."""
    names = missing_usual(job)
    first = _last(job) + 1
    Panel.objects.bulk_create(
        Panel(vehicle=job.vehicle, position=first + at, name=name, **_usual(name))
        for at, name in enumerate(names)
    )
    return len(names)


def _last(job: Job) -> int:
    return int(Panel.objects.filter(vehicle=job.vehicle).aggregate(last=Max("position"))["last"] or 0)


def _usual(name: str) -> dict[str, str]:
    plastic = name in USUAL_PLASTIC
    return {"surface": "painted_plastic", "substrate": "plastic"} if plastic else {}


@transaction.atomic
def save_panels(job: Job, kept: Sequence[Panel], removed: Iterable[Panel]) -> None:
    """Save a car's panels and take others out; one that was read or that a cut names stays; raises Refused.

    A cut without its last panel would be a cut of the whole car.
    """
    gone = list(removed)
    cut = Step.objects.filter(panels__in=gone).values_list("name", "panels__name").first()
    if cut:
        step, panel = cut
        raise Refused(
            f"“{step}” is planned to cut the {panel}, so it stays. Choose other panels there first."
        )
    read = Reading.objects.filter(panel__in=gone).select_related("panel").first()
    if read:
        raise Refused(f"The gauge has read the {read.panel.name}, so it stays. Take its readings back first.")
    Panel.objects.filter(pk__in=[row.pk for row in gone]).delete()
    # Names may change places: no panel may stand in another's way while they are saved.
    for row in kept:
        if row.pk:
            Panel.objects.filter(pk=row.pk).update(name=f"~{row.pk}")
    last = _last(job)
    for row in kept:
        if row.pk is None:
            last += 1
            row.vehicle, row.position = job.vehicle, last
        row.save()


def record_readings(
    job: Job, when: str, film: str, read: Sequence[Read], *, by: Person, key: str, at: datetime
) -> None:
    """Write what the gauge said of several panels, once for a key; raises KeyReused."""
    body = ["readings", job.code, when, film, *map(astuple, read)]

    def write(request: Request) -> Answer:
        Reading.objects.bulk_create(
            Reading(panel_id=one.panel, job=job, when=when, film=film, um=one.um, taken_at=at, by=by)
            for one in read
        )
        return {"readings": len(read)}

    answer_once(job.shop, key, body, at, write)


def undo_reading(reading: Reading, *, by: Person, at: datetime, zone: tzinfo) -> None:
    """Take a wrong reading back: who typed it on the same day, an owner always; raises Refused."""
    if not may_undo(reading, by, at, zone):
        raise Refused(
            f"Only {reading.by} on the same day, or an owner, takes this reading back. Read the panel again."
        )
    reading.delete()


@transaction.atomic
def save_arrivals(job: Job, said: Sequence[Arriving], zone: tzinfo) -> None:
    """Replace what was said of what a car arrives with.

    Raises Refused where the job is no longer booked, and where a panel would bear nothing and something.
    """
    if odd := at_odds((one.residue, one.panel.name if one.panel else CAR) for one in said):
        raise Refused(" ".join(odd.values()))
    hold(job)
    known = {(row.residue, row.panel_id): row.since_at for row in job.arrivals.all()}
    job.arrivals.all().delete()
    Arrival.objects.bulk_create(
        Arrival(
            job=job,
            panel=one.panel,
            residue=one.residue,
            product=one.product,
            since_at=_since(one, known.get((one.residue, one.panel.pk if one.panel else None)), zone),
        )
        for one in said
    )


def _since(said: Arriving, known: datetime | None, zone: tzinfo) -> datetime | None:
    """A day is typed; an hour that was known of the same day stays."""
    if said.since_on is None:
        return None
    if known and known.astimezone(zone).date() == said.since_on:
        return known
    return datetime.combine(said.since_on, time.min, zone)
