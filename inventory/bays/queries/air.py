"""What a bay's page shows: its newest readings, what may spark there, and the air of the steps of a day."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, time, timedelta

from django.db.models import Q

from inventory.bays.rules import Curve, curve
from inventory.models import Job, Place, PlaceCheck, Shop, Step, WeatherReading
from inventory.precheck.queries import facts_of
from inventory.precheck.queries.readings import reading
from inventory.precheck.questions import Case, Finding, plan
from inventory.precheck.questions.air import breathed, judged
from inventory.precheck.questions.air_saying import told_once
from inventory.precheck.questions.evaporation import steps_in_air
from inventory.precheck.questions.topics.weather import FRESH
from safety.weather import Weather, weather

TOPICS = ("steps", "needs", "shelf", "products", "air")
WORKED_IN = (Place.Kind.BAY, Place.Kind.CABIN)
LATEST = 5


@dataclass(frozen=True)
class Measured:
    """A reading with what it means for a coat by the trade's window."""

    row: WeatherReading
    weather: Weather
    fresh: bool

    @property
    def grade(self) -> str:
        """The gravest grade of its findings, "ready" where nothing is said."""
        return next((one.grade for one in self.weather.findings), "ready")


@dataclass(frozen=True)
class Breathed:
    """A step's air on the page; without a curve `why` says what is missing.

    `measured`: the check goes by what was measured of it, not by the curve alone.
    """

    step: Step
    curve: Curve | None
    findings: tuple[Finding, ...]
    why: str = ""
    measured: bool = False


def bays(shop: Shop) -> list[Place]:
    """Return the places in which people work: bays, cabins, and whatever else is closed in."""
    rows = Place.objects.filter(Q(kind__in=WORKED_IN) | Q(enclosed=True), shop=shop)
    return list(rows.order_by("name"))


def place(shop: Shop, code: str) -> Place | None:
    """Return a place of a shop by its code."""
    return Place.objects.filter(shop=shop, code=code.upper()).select_related("shop").first()


def readings(found: Place, at: datetime) -> list[Measured]:
    """Return the latest readings of a place, the newest first."""
    rows = found.weather.select_related("by").order_by("-taken_at", "-id")[:LATEST]
    return [measured(row, at) for row in rows]


def measured(row: WeatherReading, at: datetime) -> Measured:
    """Return one reading judged; it is fresh for two hours."""
    value = reading(row)
    judged = weather(value.air_c, value.humidity, value.panel_c)
    return Measured(row, judged, row.taken_at >= at - FRESH)


def steps_of_day(found: Place, at: datetime) -> list[Step]:
    """Return the steps of open jobs that are done in a place on the shop's day, those not signed."""
    zone = found.shop.zone
    day = datetime.combine(at.astimezone(zone).date(), time(), zone)
    rows = Step.objects.filter(
        bay=found, job__state=Job.State.OPEN, signed_at=None,
        starts_at__lt=day + timedelta(days=1), ends_at__gt=day,
    )  # fmt: skip
    return list(rows.select_related("job__vehicle", "job__shop", "bay").order_by("starts_at", "position"))


def rags_emptied(place: Place) -> PlaceCheck | None:
    """Return when the rag can of a place was emptied last, and by whom; None where nobody ever said so."""
    rows = place.checks.filter(what=PlaceCheck.What.RAGS).select_related("by")
    return rows.order_by("-done_at").first()


def step(shop: Shop, code: str) -> Step | None:
    """Return a step of an open job by its code."""
    rows = Step.objects.filter(job__shop=shop, job__state=Job.State.OPEN, code=code.upper())
    return rows.select_related("job__vehicle", "job__shop", "bay").first()


def breathed_at(steps: Iterable[Step], at: datetime) -> list[Breathed]:
    """Return the air of steps that let something go, in as many queries for one as for many."""
    rows = {row.code: row for row in steps}
    if not rows:
        return []
    jobs = list({row.job.pk: row.job for row in rows.values()}.values())
    facts = facts_of(jobs[0].shop, jobs, TOPICS)
    found: dict[str, Breathed] = {}
    for job in jobs:
        mine = facts[job.pk]
        case = Case(mine, at, plan(mine.needs, mine.shelf, mine.zone, at))
        for of in steps_in_air(case, [each for each in mine.air.steps if each.code in rows]):
            weighed = of.emissions and of.place.known
            drawn = curve(of, breathed(case, of).facts.contaminants) if weighed else None
            about = tuple(told_once(case, [(of, each) for each in judged(case, of)]))
            found[of.step.code] = Breathed(
                rows[of.step.code], drawn, about, "" if drawn else _why(of.place.known), bool(of.measured)
            )
    return [found[code] for code in rows if code in found]


def _why(known: bool) -> str:
    if known:
        return "Nothing of it has a limit that a curve could stand against."
    return "The size of the room or its air flow is not known: nothing can be drawn."
