"""Until when: the earliest term wins, by name; stop or ask by whose word it is."""

import csv
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from inventory.stock.rules.use_by import Dates, Life, add_months, over, terms, use_by

LONDON, NEW_YORK = ZoneInfo("Europe/London"), ZoneInfo("America/New_York")
OPENED = datetime(2026, 11, 1, 9, 30, tzinfo=UTC)
DAYS_90 = Life(90, "day", "maker")
MONTHS = Path(__file__).parents[2] / "expected" / "months.csv"


def test_nothing_dies_of_a_bottle_without_dates_or_lives() -> None:
    assert use_by(Dates(), LONDON) is None


def test_the_day_named_is_the_last_usable_day() -> None:
    printed = Dates(expires_on=date(2026, 11, 30))
    assert over(printed, LONDON, datetime(2026, 11, 30, 23, 59, 59, tzinfo=UTC)) is None
    ended = over(printed, LONDON, datetime(2026, 12, 1, tzinfo=UTC))
    assert ended is not None
    assert (ended.name, ended.on, ended.firm) == ("printed", date(2026, 11, 30), True)


@pytest.mark.parametrize(
    ("dates", "name", "on", "because"),
    [
        (Dates(expires_on=date(2027, 3, 31)), "printed", date(2027, 3, 31), "what is printed on it"),
        (Dates(best_before_on=date(2027, 2, 28)), "best before", date(2027, 2, 28), "it is a term too"),
        (
            Dates(made_on=date(2026, 3, 15), sealed=Life(18, "month", "maker")),
            "sealed",
            date(2027, 9, 15),
            "made + sealed life",
        ),
        (Dates(opened_at=OPENED, open=DAYS_90), "opened", date(2027, 1, 30), "opened + open life"),
        (
            Dates(mixed_at=OPENED, mix=Life(14, "day", "shop")),
            "mixed",
            date(2026, 11, 15),
            "mixed + mix life",
        ),
        (Dates(retest_on=date(2027, 6, 1)), "retest", date(2027, 6, 1), "a retest's day"),
        (
            Dates(expires_on=date(2027, 1, 15), opened_at=OPENED, open=DAYS_90),
            "printed",
            date(2027, 1, 15),
            "the earliest of the two",
        ),
        (
            Dates(expires_on=date(2028, 1, 15), opened_at=OPENED, open=DAYS_90),
            "opened",
            date(2027, 1, 30),
            "an opened bottle does not live until its printed date",
        ),
        (
            Dates(expires_on=date(2026, 11, 30), made_on=date(2024, 1, 1), sealed=Life(1, "month", "maker"),
                  best_before_on=date(2026, 1, 1), retest_on=date(2027, 6, 1)),
            "retest",
            date(2027, 6, 1),
            "a retest takes the place of the printed date and of the sealed term",
        ),
        (
            Dates(retest_on=date(2027, 6, 1), opened_at=OPENED, open=DAYS_90),
            "opened",
            date(2027, 1, 30),
            "and never of the opened term",
        ),
        (
            Dates(retest_on=date(2027, 6, 1), mixed_at=OPENED, mix=Life(14, "day", "shop")),
            "mixed",
            date(2026, 11, 15),
            "nor of the mixed term",
        ),
        (
            Dates(lot_retest_on=date(2027, 6, 1), expires_on=date(2027, 5, 1)),
            "printed",
            date(2027, 5, 1),
            "one retested lot of two does not speak for the other",
        ),
        (
            Dates(lot_retest_on=date(2027, 6, 1)),
            "retest",
            date(2027, 6, 1),
            "a date that a retest gave is not called printed",
        ),
        (
            Dates(sealed=Life(18, "month", "maker"), open=DAYS_90, expires_on=date(2030, 1, 1)),
            "printed",
            date(2030, 1, 1),
            "a life without its day of start gives no term",
        ),
    ],
)  # fmt: skip
def test_the_earliest_term_wins_and_says_its_name(dates: Dates, name: str, on: date, because: str) -> None:
    term = use_by(dates, LONDON)
    assert term is not None
    assert (term.name, term.on) == (name, on), because


@pytest.mark.parametrize(
    ("dates", "firm", "because"),
    [
        (Dates(expires_on=date(2027, 1, 1)), True, "a printed use-by stops"),
        (Dates(best_before_on=date(2027, 1, 1)), False, "best before asks"),
        (Dates(best_before_on=date(2027, 1, 1), guards=True), True, "gloves and eyewash always stop"),
        (Dates(opened_at=OPENED, open=DAYS_90), True, "the maker's open life stops"),
        (Dates(opened_at=OPENED, open=Life(90, "day", "shop")), False, "the shop's estimate asks"),
        (Dates(opened_at=OPENED, open=Life(90, "day", "default")), False, "a default asks"),
        (Dates(opened_at=OPENED, open=DAYS_90, estimated=True), False, "a guessed day of opening asks"),
        (Dates(opened_at=OPENED, open=Life(90, "day", "shop"), guards=True), True, "unless it guards people"),
        (
            Dates(made_on=date(2026, 1, 1), sealed=Life(2, "month", "maker")),
            True,
            "the maker's sealed life stops",
        ),
        (
            Dates(made_on=date(2026, 1, 1), sealed=Life(2, "month", "default")),
            False,
            "an estimate of it asks",
        ),
        (Dates(mixed_at=OPENED, mix=Life(30, "minute", "maker")), True, "the maker's mix life stops"),
        (Dates(mixed_at=OPENED, mix=Life(30, "minute", "shop")), False, "the shop's asks"),
        (Dates(retest_on=date(2027, 1, 1)), True, "a retest's day stops"),
    ],
)
def test_a_term_stops_or_asks_by_whose_word_it_is(dates: Dates, firm: bool, because: str) -> None:
    term = use_by(dates, LONDON)
    assert term is not None
    assert term.firm is firm, because


def test_a_firm_term_that_is_over_goes_before_a_softer_one_that_ended_earlier() -> None:
    dates = Dates(best_before_on=date(2026, 1, 31), expires_on=date(2026, 6, 30))
    ended = over(dates, LONDON, datetime(2026, 7, 1, tzinfo=UTC))
    assert ended is not None
    assert ended.name == "printed"


def test_a_term_says_why_in_words() -> None:
    opened = use_by(Dates(opened_at=OPENED, open=DAYS_90, estimated=True), LONDON)
    assert opened is not None
    assert opened.why == "opened 1 November + 90 days, given by the maker (opened day estimated)"


def test_every_term_is_listed_earliest_first() -> None:
    dates = Dates(
        expires_on=date(2028, 1, 15), opened_at=OPENED, open=DAYS_90, best_before_on=date(2027, 1, 1)
    )
    assert [term.name for term in terms(dates, LONDON)] == ["best before", "opened", "printed"]


def months() -> list[tuple[str, str, str, str]]:
    with MONTHS.open() as lines:
        rows = csv.DictReader(line for line in lines if not line.startswith("#"))
        return [(row["day"], row["months"], row["then"], row["because"]) for row in rows]


@pytest.mark.parametrize(("day", "count", "then", "because"), months())
def test_a_month_later_is_the_same_day_number_or_the_months_last(
    day: str, count: str, then: str, because: str
) -> None:
    assert add_months(date.fromisoformat(day), int(count)) == date.fromisoformat(then), because


@pytest.mark.parametrize(
    ("zone", "day", "ends", "because"),
    [
        (
            LONDON,
            date(2026, 3, 28),
            datetime(2026, 3, 29, 0, tzinfo=UTC),
            "the day before the clocks go forward",
        ),
        (LONDON, date(2026, 3, 29), datetime(2026, 3, 29, 23, tzinfo=UTC), "a day of 23 hours"),
        (LONDON, date(2026, 10, 25), datetime(2026, 10, 26, 0, tzinfo=UTC), "a day of 25 hours"),
        (
            LONDON,
            date(2026, 10, 24),
            datetime(2026, 10, 24, 23, tzinfo=UTC),
            "still summer time at its midnight",
        ),
        (NEW_YORK, date(2026, 3, 8), datetime(2026, 3, 9, 4, tzinfo=UTC), "a day of 23 hours"),
        (NEW_YORK, date(2026, 11, 1), datetime(2026, 11, 2, 5, tzinfo=UTC), "a day of 25 hours"),
    ],
)
def test_a_day_ends_at_local_midnight_also_where_the_clocks_change(
    zone: ZoneInfo, day: date, ends: datetime, because: str
) -> None:
    term = use_by(Dates(expires_on=day), zone)
    assert term is not None
    assert term.at == ends, because


def test_an_opening_late_in_the_evening_counts_from_the_local_day() -> None:
    evening = Dates(opened_at=datetime(2026, 7, 2, 2, 30, tzinfo=UTC), open=Life(1, "day", "maker"))
    new_york, london = use_by(evening, NEW_YORK), use_by(evening, LONDON)
    assert new_york is not None
    assert london is not None
    assert (new_york.on, london.on) == (date(2026, 7, 2), date(2026, 7, 3))


def test_a_life_in_minutes_ends_at_its_instant_through_a_change_of_the_clocks() -> None:
    start = datetime(2026, 10, 25, 0, 50, tzinfo=UTC)  # 01:50 in London, ten minutes before it is 01:00 again
    term = use_by(Dates(mixed_at=start, mix=Life(30, "minute", "maker")), LONDON)
    assert term is not None
    assert term.at == start + timedelta(minutes=30)


def test_an_end_beyond_every_calendar_is_far_away_and_no_error() -> None:
    term = use_by(Dates(expires_on=date(9999, 12, 31)), NEW_YORK)
    assert term is not None
    assert term.at > datetime(9999, 1, 1, tzinfo=UTC)
    assert over(Dates(expires_on=date(9999, 12, 31)), NEW_YORK, datetime(2126, 1, 1, tzinfo=UTC)) is None
