"""A car's panels, what is left on each, its readings, and what it arrives with."""

from dataclasses import dataclass
from datetime import datetime, tzinfo

from django.db.models import Q, QuerySet

from inventory.jobs.rules.panels import USUAL, USUAL_PLASTIC, Left, left
from inventory.models import Arrival, Job, Panel, Person, Reading, Step
from inventory.precheck.queries import paint
from inventory.trade.paint import PanelLeft
from inventory.trade.paint.left import panels_left
from inventory.trade.residues import NOTHING, words_of
from inventory.trade.surfaces import materials
from inventory.trade.thickness import thickness


@dataclass(frozen=True)
class Row:
    """A panel with what is left on it; `read_at` is when its last reading was taken."""

    panel: Panel
    surface: str
    left: Left
    read_at: datetime | None


@dataclass(frozen=True)
class Read:
    """A reading as the page lists it; `mine` says whether who looks may take it back."""

    reading: Reading
    says: str
    mine: bool


def panels(job: Job) -> "QuerySet[Panel]":
    """Return the panels of a job's car in their order."""
    return Panel.objects.filter(vehicle=job.vehicle_id).order_by("position", "id")


def panels_to_cut(step: Step) -> "QuerySet[Panel]":
    """Return the panels of a step's car that are paint, or that it named before somebody covered them."""
    painted = [key for key, one in materials().items() if one.area == paint.PAINT]
    named = step.panels.values("pk") if step.pk else []
    return panels(step.job).filter(Q(surface__in=painted) | Q(pk__in=named))


def rows(job: Job) -> list[Row]:
    """Return every panel of a job's car with what the job leaves on it."""
    facts = paint.of_car(job)
    found = panels_left(facts.panels, facts.readings, facts.cuts, facts.floor, facts.history)
    lines = {line.panel.code: line for line in found}
    return [_row(panel, lines.get(panel.code), facts.unit) for panel in panels(job)]


def _row(panel: Panel, line: PanelLeft | None, unit: str) -> Row:
    film = line.tightest if line else None
    known = materials().get(panel.surface)
    return Row(
        panel, known.name if known else panel.surface, left(line, unit), film.last_at if film else None
    )


def missing_usual(job: Job) -> list[str]:
    """Return the usual panels that this car does not have yet."""
    have = set(panels(job).values_list("name", flat=True))
    return [name for name in (*USUAL, *USUAL_PLASTIC) if name not in have]


def readings(job: Job, who: Person, at: datetime) -> list[Read]:
    """Return the readings of a job's car over all visits, the latest first."""
    found = Reading.objects.filter(panel__vehicle=job.vehicle_id).select_related("panel", "by", "job")
    unit, zone = job.shop.film_unit, job.shop.zone
    return [
        Read(row, said(row, unit), may_undo(row, who, at, zone)) for row in found.order_by("-taken_at", "-id")
    ]


def said(row: Reading, unit: str) -> str:
    """Return what the gauge said, in the shop's unit."""
    return "not readable" if row.um is None else thickness(row.um, unit)


def may_undo(row: Reading, who: Person, at: datetime, zone: tzinfo) -> bool:
    """Say whether somebody may take a reading back: an owner always, its reader on the same day."""
    same_day = row.taken_at.astimezone(zone).date() == at.astimezone(zone).date()
    return who.is_owner or (who.role != Person.Role.VIEWER and row.by_id == who.pk and same_day)


def arrivals(job: Job) -> list[Arrival]:
    """Return what somebody said that this car arrives with, the whole car first."""
    found = Arrival.objects.filter(job=job).select_related("panel", "product")
    return sorted(found, key=lambda row: (row.panel is not None, row.panel_id or 0, row.pk))


def residue_words() -> dict[str, str]:
    """Return what a car may arrive with, by its key; also that somebody looked and found nothing."""
    return {key: words_of(key) for key in (NOTHING, "wax", "sealant", "coating", "oils", "silicone")}
