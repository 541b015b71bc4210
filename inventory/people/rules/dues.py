"""Until when what somebody was trained, evaluated and fitted for lasts, and what is refused before it."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta

SOON = timedelta(days=30)
# By topic, the years after which a duty renews it: REACH annex XVII entry 74 for diisocyanates.
RENEWED = {"isocyanate": 5}
FIT_YEARS = 1
WORDS = {"ended": "ended", "soon": "ends soon", "good": "in date", "open": "does not end"}


@dataclass(frozen=True)
class Due:
    """Something of somebody that ended, ends soon, or was never done (without a day)."""

    person: str
    code: str
    what: str
    until: date | None
    state: str


def state(until: date | None, on: date) -> str:
    """Return how something stands on a day: "ended", "soon" (30 days), "good", or "open" without an end."""
    if until is None:
        return "open"
    if until < on:
        return "ended"
    return "soon" if until - on <= SOON else "good"


def years_after(day: date, years: int) -> date:
    """Return the same day so many years later; 29 February becomes the 28th."""
    try:
        return day.replace(year=day.year + years)
    except ValueError:
        return day.replace(year=day.year + years, day=28)


def training_until(topic: str, trained_on: date, given: date | None) -> date | None:
    """Return the last day of a training: as given, never later than a duty renews it."""
    if topic not in RENEWED:
        return given
    last = years_after(trained_on, RENEWED[topic])
    return min(given, last) if given else last


def evaluation_for(evaluations: Iterable[tuple[int, date, date | None]], tested_on: date) -> int | None:
    """Return the key of the newest evaluation (key, first day, last day) that holds on a fit test's day."""
    holding = [
        (first, key)
        for key, first, last in evaluations
        if first <= tested_on and (last is None or tested_on <= last)
    ]
    return max(holding)[1] if holding else None


def fit_refusal(name: str, tested_on: date) -> str:
    """Return why a fit test without an evaluation before it is not kept."""
    return (
        f"{name} has no medical evaluation that held on {tested_on.day} {tested_on:%B %Y}. The evaluation "
        "comes before the fit test: write it down first."
    )


def sooner_first(dues: Iterable[Due]) -> list[Due]:
    """Return what is due, what was never done first, then by its day."""
    return sorted(dues, key=lambda due: (due.until is not None, due.until, due.person, due.what))
