"""What the ledger and the job book say about demand, one query each."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import date, datetime, time, timedelta, tzinfo
from functools import lru_cache
from statistics import pstdev

from django.db.models import Avg, Count, DurationField, ExpressionWrapper, F, Q

from inventory.models import Job, Movement, Product, Shop

YEAR = timedelta(days=365)
# Every clock on earth is a whole number of quarters of an hour from UTC, its changes included.
QUARTER = 15 * 60
CHUNK = 10_000
# A shop that cancelled every booking so far still expects the next one to come now and then.
MOST_CANCELLED = 0.99


@dataclass
class Used:
    """Concentrate of one product taken in the last 12 months, by local day and by job, in base units."""

    by_day: dict[date, int] = field(default_factory=lambda: defaultdict(int))
    by_job: dict[int, int] = field(default_factory=lambda: defaultdict(int))

    @property
    def total(self) -> int:
        """Everything used in these months."""
        return sum(self.by_day.values())

    @property
    def spread_per_job(self) -> float:
        """Standard deviation of the use per job, 0 where fewer than two jobs took any."""
        return pstdev(self.by_job.values()) if len(self.by_job) > 1 else 0.0


@dataclass(frozen=True)
class Bookings:
    """How the shop's jobs of the last 12 months were booked: how many ended, which share never came."""

    seen: int
    cancelled: float
    days_ahead: float | None


def used(shop: Shop, on: date) -> dict[int, Used]:
    """Return what was used of each product, by its id, in the 12 months through `on`; nothing taken back.

    The local day is reckoned here, once a quarter of an hour: SQLite would call Python for every row.
    """
    rows = Movement.objects.filter(
        shop=shop,
        kind=Movement.Kind.USE,
        concentrate__gt=0,
        product__isnull=False,
        happened_at__gte=_a_year_before(shop, on),
        reversed_by__isnull=True,
    ).order_by()
    day_of = lru_cache(maxsize=None)(lambda quarter: _local_day(quarter, shop.zone))
    found: dict[int, Used] = defaultdict(Used)
    columns = rows.values_list("product_id", "job_id", "happened_at", "concentrate")
    for product, job, at, amount in columns.iterator(chunk_size=CHUNK):
        mine = found[product]
        mine.by_day[day_of(int(at.timestamp()) // QUARTER)] += amount or 0
        if job is not None:
            mine.by_job[job] += amount or 0
    return found


def _local_day(quarter: int, zone: tzinfo) -> date:
    return datetime.fromtimestamp(quarter * QUARTER, zone).date()


def bookings(shop: Shop, on: date) -> Bookings:
    """Return how jobs are booked here; a job still open says nothing yet about cancelling."""
    ended = Q(state__in=[Job.State.CLOSED, Job.State.CANCELLED])
    ahead = ExpressionWrapper(F("starts_at") - F("booked_at"), output_field=DurationField())
    since = _a_year_before(shop, on)
    figures = Job.objects.filter(shop=shop, booked_at__gte=since).aggregate(
        seen=Count("id", filter=ended),
        cancelled=Count("id", filter=Q(state=Job.State.CANCELLED)),
        ahead=Avg(ahead, filter=~Q(state=Job.State.CANCELLED)),
    )
    seen, mean = figures["seen"], figures["ahead"]
    share = min(figures["cancelled"] / seen, MOST_CANCELLED) if seen else 0.0
    return Bookings(seen, share, None if mean is None else max(0.0, mean / timedelta(days=1)))


def usual_of_kind(products: Iterable[Product], history: dict[int, Used]) -> dict[str, str]:
    """Return by kind the code of the product most used, else the first by name."""
    ranked = sorted(products, key=lambda row: (-history[row.id].total if row.id in history else 0, row.name))
    usual: dict[str, str] = {}
    for row in ranked:
        usual.setdefault(row.kind, row.code)
    return usual


def _a_year_before(shop: Shop, on: date) -> datetime:
    return datetime.combine(on - YEAR + timedelta(days=1), time(), shop.zone)
