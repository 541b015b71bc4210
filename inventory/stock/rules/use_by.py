"""Until when: the earliest of the terms that a bottle carries, always with the name of the one that won.

The day named is the last usable local day, inclusive. Opened + n days ends on opened day + n; day + n months
is the same day number or the month's last. Lives under a day are instants. (Common practice for dates "use
by"; ISO 8601 leaves the month rule to the parties: ours is written here.)
"""

from calendar import monthrange
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta, tzinfo

MAKER = "maker"
# "31/12/9999" is how some spreadsheets say "does not expire"; a day is left for every clock on earth.
NEVER = datetime(9999, 12, 30, tzinfo=UTC)


@dataclass(frozen=True)
class Life:
    """So many minutes, days or months, and whose word that is: maker, shop or default."""

    count: int
    unit: str
    given_by: str

    def __str__(self) -> str:
        return f"{self.count} {self.unit}{'' if self.count == 1 else 's'}"


@dataclass(frozen=True)
class Dates:
    """Everything about a bottle that bears on its use by. `guards`: any date it carries stops.

    `retest_on` is the bottle's own; `lot_retest_on` the first of its lots', whose printed dates are then left
    out of the others by who fills this in.
    """

    expires_on: date | None = None
    best_before_on: date | None = None
    made_on: date | None = None
    retest_on: date | None = None
    lot_retest_on: date | None = None
    sealed: Life | None = None
    opened_at: datetime | None = None
    open: Life | None = None
    mixed_at: datetime | None = None
    mix: Life | None = None
    estimated: bool = False
    guards: bool = False


@dataclass(frozen=True)
class Term:
    """One limit: its name, its last usable local day, the instant it ends (aware, exclusive), stop or ask."""

    name: str
    on: date
    at: datetime
    firm: bool
    why: str


def add_months(day: date, months: int) -> date:
    """Return the same day number `months` later, or that month's last (31 Aug + 6 → 28 or 29 Feb)."""
    year, month = divmod(day.year * 12 + day.month - 1 + months, 12)
    return date(year, month + 1, min(day.day, monthrange(year, month + 1)[1]))


def end_of(day: date, zone: tzinfo) -> datetime:
    """Return the instant at which a local day is over, in UTC."""
    if day >= NEVER.date():
        return NEVER
    return datetime.combine(day + timedelta(days=1), time(), zone).astimezone(UTC)


def terms(dates: Dates, zone: tzinfo) -> list[Term]:
    """Return every term that the dates give, the earliest first; none where nothing dies."""
    found = [*_printed(dates, zone), *_sealed(dates, zone), *_opened(dates, zone), *_mixed(dates, zone)]
    return sorted(found, key=lambda term: (term.at, not term.firm))


def use_by(dates: Dates, zone: tzinfo) -> Term | None:
    """Return the term that ends first, or None."""
    return next(iter(terms(dates, zone)), None)


def over(dates: Dates, zone: tzinfo, at: datetime) -> Term | None:
    """Return the gravest term that is over at an instant: a firm one before one that only asks; else None."""
    past = [term for term in terms(dates, zone) if term.at <= at]
    return min(past, key=lambda term: (not term.firm, term.at), default=None)


def _printed(dates: Dates, zone: tzinfo) -> list[Term]:
    if dates.retest_on:
        return [_day_term("retest", dates.retest_on, zone, True, "retested")]
    found = []
    if dates.lot_retest_on:
        found.append(_day_term("retest", dates.lot_retest_on, zone, True, "its lot was retested"))
    if dates.expires_on:
        found.append(_day_term("printed", dates.expires_on, zone, True, "printed on it"))
    if dates.best_before_on:
        found.append(
            _day_term("best before", dates.best_before_on, zone, dates.guards, "best before, printed on it")
        )
    return found


def _sealed(dates: Dates, zone: tzinfo) -> list[Term]:
    if not (dates.made_on and dates.sealed) or dates.retest_on:
        return []
    firm = dates.guards or dates.sealed.given_by == MAKER
    day = _later(dates.made_on, dates.sealed)
    return [_day_term("sealed", day, zone, firm, f"made {_said(dates.made_on)} + {_whose(dates.sealed)}")]


def _opened(dates: Dates, zone: tzinfo) -> list[Term]:
    if not (dates.opened_at and dates.open):
        return []
    firm = dates.guards or (dates.open.given_by == MAKER and not dates.estimated)
    estimated = " (opened day estimated)" if dates.estimated else ""
    return [_lived("opened", dates.opened_at, dates.open, zone, firm, estimated)]


def _mixed(dates: Dates, zone: tzinfo) -> list[Term]:
    if not (dates.mixed_at and dates.mix):
        return []
    firm = dates.guards or dates.mix.given_by == MAKER
    return [_lived("mixed", dates.mixed_at, dates.mix, zone, firm, "")]


def _lived(name: str, start: datetime, life: Life, zone: tzinfo, firm: bool, note: str) -> Term:
    local = start.astimezone(zone)
    why = f"{name} {_said(local.date())} + {_whose(life)}{note}"
    if life.unit == "minute":
        ends = start.astimezone(UTC) + timedelta(minutes=life.count)
        return Term(name, ends.astimezone(zone).date(), ends, firm, why)
    return _day_term(name, _later(local.date(), life), zone, firm, why)


def _later(day: date, life: Life) -> date:
    if life.unit == "month":
        return add_months(day, life.count)
    return day + timedelta(days=life.count if life.unit == "day" else 0)


def _day_term(name: str, day: date, zone: tzinfo, firm: bool, why: str) -> Term:
    return Term(name, day, end_of(day, zone), firm, why)


def _whose(life: Life) -> str:
    return f"{life}, given by {'the maker' if life.given_by == MAKER else 'this shop'}"


def _said(day: date) -> str:
    return f"{day.day} {day:%B}"
