"""A label's days in the reader's language: until when, since when, and why that day."""

from datetime import date, datetime, time, tzinfo

from inventory.stock.rules.use_by import MAKER, Dates, Life, Term
from safety.print.words import ENGLISH, say

MONTHS = "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec"
PRINTED = {"retest": "retested", "printed": "printed on it", "best before": "best before, printed on it"}
UNITS = {"minute": "{n} minutes", "day": "{n} days", "month": "{n} months"}


def short(day: date, language: str) -> str:
    """Return a day as on the cap: 26 Nov 2026, 26 nov 2026."""
    return f"{day.day} {say(MONTHS, language).split()[day.month - 1]} {day.year}"


def day(at: datetime | None, zone: tzinfo, language: str) -> str:
    """Return an instant's local day as on the cap, nothing where there is none."""
    return short(at.astimezone(zone).date(), language) if at else ""


def until(term: Term, zone: tzinfo, language: str) -> str:
    """Return the last usable day as on the cap, with the time where it ends within the day."""
    ends = term.at.astimezone(zone)
    hour = "" if ends.time() == time() else f" {ends:%H:%M}"
    return f"{short(term.on, language)}{hour}"


def why(term: Term, dates: Dates, zone: tzinfo, language: str) -> str:
    """Return why a term ends when it does."""
    if language == ENGLISH:
        return term.why
    if term.name in PRINTED:
        return say(PRINTED[term.name], language)
    pattern, started, life = {
        "sealed": ("made {day} + {life}", dates.made_on, dates.sealed),
        "opened": ("opened {day} + {life}", dates.opened_at, dates.open),
        "mixed": ("mixed {day} + {life}", dates.mixed_at, dates.mix),
    }[term.name]
    if started is None or life is None:  # a term has both, or it would not be there
        return term.why
    from_ = started.astimezone(zone).date() if isinstance(started, datetime) else started
    return say(pattern, language, day=short(from_, language), life=_lasts(life, language))


def _lasts(life: Life, language: str) -> str:
    whose = "{life} (maker)" if life.given_by == MAKER else "{life} (this shop)"
    return say(whose, language, life=say(UNITS[life.unit], language, n=life.count))
