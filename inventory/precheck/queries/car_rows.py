"""The rows that say what cars arrive with: panels, what was typed, earlier visits, the bay's other cars."""

from collections import defaultdict
from datetime import datetime, time, tzinfo
from functools import cached_property

from django.db.models import Q, QuerySet

from inventory.models import Arrival, Job, Kind, Panel, StepNeed
from inventory.trade.profile import Profile

from .loading import Loading
from .profiles import profiles


class CarRows:
    """Each set in one query, whatever the number of jobs, cars and steps."""

    def __init__(self, loading: Loading) -> None:
        self.loading = loading
        self.vehicles = {job.vehicle_id for job in loading.jobs}

    @cached_property
    def panels(self) -> dict[int, list[Panel]]:
        """By vehicle."""
        found: dict[int, list[Panel]] = defaultdict(list)
        for row in Panel.objects.filter(vehicle__in=self.vehicles):
            found[row.vehicle_id].append(row)
        return found

    @property
    def cut_panels(self) -> dict[int, frozenset[str]]:
        """By step, the panels that its cut is limited to; a car without panels has none to ask for."""
        return self.loading.cut_panels if self.panels else {}

    @cached_property
    def arrivals(self) -> dict[int, list[Arrival]]:
        """By job."""
        found: dict[int, list[Arrival]] = defaultdict(list)
        for row in Arrival.objects.filter(job__in=self.loading.jobs).select_related("product").order_by("id"):
            found[row.job_id].append(row)
        return found

    @cached_property
    def needs(self) -> dict[int, list[StepNeed]]:
        """By job under check, what its steps take."""
        found: dict[int, list[StepNeed]] = defaultdict(list)
        for row in self.loading.work_rows:
            found[row.step.job_id].append(row)
        return found

    @cached_property
    def earlier(self) -> dict[int, list[StepNeed]]:
        """By vehicle, what the steps of its closed jobs took, in order of time."""
        rows = _done().filter(step__job__vehicle__in=self.vehicles, step__job__state=Job.State.CLOSED)
        found: dict[int, list[StepNeed]] = defaultdict(list)
        for row in rows:
            found[row.step.job.vehicle_id].append(row)
        return found

    @cached_property
    def beside(self) -> list[StepNeed]:
        """What may spread silicone in the bays of these jobs on their days, whoever's car it is for."""
        steps = [row for row in self.loading.step_rows if row.bay_id]
        if not steps:
            return []
        zone = self.loading.shop.zone
        rows = _done().filter(
            Q(kind=Kind.DRESSING)
            | Q(product__kind=Kind.DRESSING)
            | Q(product__profile__leaves__isnull=False),
            step__bay__in={row.bay_id for row in steps},
            step__starts_at__gte=midnight(min(row.starts_at for row in steps), zone),
            step__starts_at__lt=max(row.starts_at for row in steps),
        )
        return list(rows.exclude(step__job__state=Job.State.CANCELLED))

    @cached_property
    def profiles(self) -> dict[int, Profile]:
        """By product, what is known of whatever touches, touched or comes near these cars."""
        needs = [*self.loading.work_rows, *self.beside, *(n for rows in self.earlier.values() for n in rows)]
        arrived = [row.product for rows in self.arrivals.values() for row in rows]
        return profiles(product for product in [*(need.product for need in needs), *arrived] if product)


def _done() -> "QuerySet[StepNeed]":
    rows = StepNeed.objects.exclude(outcome=StepNeed.Outcome.NOT_DONE)
    return rows.select_related("product", "step__job__vehicle").order_by(
        "step__starts_at", "step__position", "id"
    )


def midnight(instant: datetime, zone: tzinfo) -> datetime:
    """Return the start of an instant's local day."""
    return datetime.combine(instant.astimezone(zone).date(), time.min, zone)
