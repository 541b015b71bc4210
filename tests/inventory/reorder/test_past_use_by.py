"""Stock past its use by is no stock, and the line says whose word that is. Today is 25 November 2026."""

from datetime import date, timedelta

import pytest

from tests.inventory.reorder.used_shop import line
from tests.world import ML, NOON, World, bottle, hollin, larkmoor

pytestmark = pytest.mark.django_db


@pytest.fixture
def world() -> World:
    return larkmoor()


@pytest.mark.parametrize(
    ("dates", "says", "because"),
    [
        (
            {"open_life": 30, "open_life_by": "shop"},
            "300 ml is past this shop's own estimate and is not counted; test it or empty it.",
            "the station asks, so an owner may end the doubt, but an order does not rely on it",
        ),
        (
            {"open_life": 30, "open_life_by": "maker"},
            "300 ml on hand is out of date and not counted.",
            "the maker's word stops: no test of the shop's own lifts it",
        ),
    ],
)
def test_what_is_past_an_open_life_is_not_counted_and_the_line_says_whose_word_it_was(
    world, dates, says, because
):
    wipe = hollin(world, **dates)
    bottle(world, wipe, 300 * ML, at=NOON - timedelta(days=60), opened_at=NOON - timedelta(days=50))
    fresh = bottle(world, wipe, 200 * ML)
    found = line(world, wipe.code)
    assert found.usable == fresh.content == 200 * ML, because
    assert found.because == f"Not used in the last 12 months and not booked. {says}", because


def test_a_bottle_past_an_estimate_and_its_printed_date_is_out_of_date(world):
    wipe = hollin(world, open_life=30, open_life_by="shop")
    bottle(
        world, wipe, 300 * ML, expires_on=date(2026, 11, 20), at=NOON - timedelta(days=60),
        opened_at=NOON - timedelta(days=50),
    )  # fmt: skip
    assert line(world, wipe.code).because.endswith("300 ml on hand is out of date and not counted.")
