"""The order rules against figures from outside; sources stand in tests/expected/reorder.csv."""

import csv
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

import pytest

from inventory.reorder.rules import (
    Booked,
    Stock,
    fill_rate,
    order_line,
    reorder_point,
    roll_forward,
    still_to_book,
    want,
)

from .shelf import MADE_ON, product

EXPECTED_FILE = Path(__file__).parents[2] / "expected" / "reorder.csv"


def expected(name: str) -> float:
    """Return one figure of the file of outside truth."""
    lines = [line for line in EXPECTED_FILE.read_text().splitlines() if not line.startswith("#")]
    return next(float(row["value"]) for row in csv.DictReader(lines) if row["name"] == name)


def test_periodic_review_orders_what_stevenson_orders() -> None:
    seven_days_and_two = MADE_ON + timedelta(days=7 + 2 - 1)
    wanted = want(
        product(mean_per_day=30, spread_per_day=3, lead_days=2), MADE_ON, seven_days_and_two, service=0.99
    )
    assert wanted.order_up_to - 71 == pytest.approx(expected("order_up_to_less_on_hand"), abs=0.005)


def test_the_reorder_point_is_stevensons() -> None:
    assert reorder_point(50, 5, service=0.97) == pytest.approx(expected("reorder_point"), abs=0.005)
    assert reorder_point(0, 5, service=0.97) == pytest.approx(expected("safety_stock"), abs=0.0005)


@pytest.mark.parametrize("level", [14, 16, 18, 20])
def test_the_fill_rate_is_not_the_cycle_service(level: int) -> None:
    rate = fill_rate(mean=10, spread=3, review_days=1, lead_days=1 / 3, order_up_to=level)
    assert rate == pytest.approx(expected(f"fill_rate_{level}"), abs=5e-7)


def test_lots_rolled_forward_first_expired_first_lose_seven() -> None:
    # In thousandths of a unit; a lot is used on its last day too, so three days end two days on.
    lots = [
        Stock(held * 1000, MADE_ON + timedelta(days=days - 1)) for held, days in ((5, 3), (10, 20), (12, 60))
    ]
    coming = roll_forward(lots, (), [400.0] * 60, MADE_ON)
    assert coming.lost(delivered=False) / 1000 == pytest.approx(expected("expected_outdating"))
    assert [round(loss.amount) for loss in coming.losses] == [3800, 3200]


def test_what_nobody_booked_yet_follows_how_far_ahead_people_book() -> None:
    assert still_to_book(0.4, 30, 10) == pytest.approx(expected("unbooked_jobs"), abs=5e-7)


BOOKED_JOBS = 12 - 8.199148  # what is on the book on an average day of that shop
AVERAGE_SHOP = product(
    mean_per_day=400.0,
    lead_days=0,
    bookings_seen=20,
    days_booked_ahead=10.0,
    booked=(Booked(MADE_ON + timedelta(days=4), round(BOOKED_JOBS * 1000)),),
)
THIRTY_DAYS_ON = MADE_ON + timedelta(days=29)


def test_bookings_are_counted_once() -> None:
    wanted = want(AVERAGE_SHOP, MADE_ON, THIRTY_DAYS_ON)
    assert wanted.order_up_to / 1000 == pytest.approx(expected("jobs_counted_once"), abs=0.001)


def test_the_twin_that_also_subtracts_reserved_stock_orders_a_third_too_much() -> None:
    on_the_full_mean = want(replace(AVERAGE_SHOP, booked=(), bookings_seen=0), MADE_ON, THIRTY_DAYS_ON)
    reserved = want(AVERAGE_SHOP, MADE_ON, THIRTY_DAYS_ON).booked
    position_less_reserved = 0 - reserved
    ordered = (on_the_full_mean.order_up_to - position_less_reserved) / 1000
    assert round(ordered, 1) == expected("jobs_counted_twice")


@pytest.mark.parametrize(
    ("month", "last_day", "because"),
    [
        (date(2026, 12, 1), date(2026, 12, 31), "the year ends with it"),
        (date(2027, 2, 1), date(2027, 2, 28), "a common year"),
        (date(2028, 2, 1), date(2028, 2, 29), "a leap year"),
        (date(2100, 2, 1), date(2100, 2, 28), "a century that is no leap year"),
        (date(2027, 4, 1), date(2027, 4, 30), "thirty days"),
    ],
)
def test_the_period_ends_with_the_month_and_the_lead_time(month: date, last_day: date, because: str) -> None:
    from inventory.reorder.rules.demand import last_day_of_month

    assert last_day_of_month(month.year, month.month) == last_day, because
    line = order_line(product(lead_days=6), last_day, month, "EUR")
    assert line.wanted.until_on == last_day + timedelta(days=6), because
