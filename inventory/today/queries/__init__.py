"""What the first page shows, read from the features' own queries; a constant number of them."""

from dataclasses import dataclass
from datetime import date, datetime, timedelta

from django.utils import timezone

from inventory.models import Job, Shop
from inventory.precheck import queries as precheck
from inventory.reorder import queries as reorder
from inventory.today.rules import when

from .dying import dying
from .hands import hands

__all__ = ["Car", "cars", "dying", "hands", "now", "orders"]

DAYS_AHEAD = 2


@dataclass(frozen=True)
class Car:
    """A booked car with its verdict and the one sentence that says what is the matter."""

    job: Job
    when: str
    bays: str
    verdict: str
    says: str
    action: str


def now() -> datetime:
    """Return the instant of a request, the only clock in this feature."""
    return timezone.now()


def cars(shop: Shop, at: datetime) -> list[Car]:
    """Return the cars of today and the next days, and those that are being worked on, in order of time."""
    on = at.astimezone(shop.zone).date()
    until = timezone.make_aware(
        datetime.combine(on + timedelta(days=DAYS_AHEAD + 1), datetime.min.time()), shop.zone
    )
    jobs = list(
        Job.objects.filter(shop=shop, state=Job.State.OPEN, starts_at__lt=until)
        .select_related("vehicle", "shop")
        .prefetch_related("steps__bay")
        .order_by("starts_at", "booked_at", "id")
    )
    verdicts = precheck.verdicts(shop, at, jobs)
    return [_car(job, verdicts[job.code], shop, on) for job in jobs]


def _car(job: Job, verdict: precheck.Verdict, shop: Shop, on: date) -> Car:
    bays = dict.fromkeys(step.bay.name for step in job.steps.all() if step.bay)
    grave = [finding for finding in verdict.check.findings if finding.grade == verdict.verdict]
    return Car(
        job=job,
        when=when(job.starts_at.astimezone(shop.zone), on),
        bays=", ".join(bays),
        verdict=verdict.verdict,
        says=grave[0].says if grave else "",
        action={"ready": "Open", "ask": "Answer", "stop": "Look"}[verdict.verdict],
    )


def orders(shop: Shop, at: datetime) -> list[reorder.ToOrder]:
    """Return what to order within a week, the soonest first."""
    return reorder.to_order(shop, at)
