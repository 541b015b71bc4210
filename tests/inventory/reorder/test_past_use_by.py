"""Stock past its use by or on its way out is no stock, and the line says why. Today is 25 November 2026."""

from datetime import date, timedelta

import pytest

from inventory.models import Kind, Place, Product
from tests.inventory.reorder.used_shop import facts, line
from tests.world import ML, NOON, bottle, hollin, job, need, step

pytestmark = pytest.mark.django_db


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


def test_what_stands_at_the_waste_point_is_on_its_way_out_and_serves_nobody(world):
    wipe, out = hollin(world), Place.objects.create(shop=world.shop, name="Waste", kind=Place.Kind.WASTE)
    bottle(world, wipe, 300 * ML, place=out)
    kept = bottle(world, wipe, 200 * ML)
    assert [each.content for each in facts(world, wipe.code).stock] == [kept.content]

    ardle = Product.objects.create(shop=world.shop, name="Ardle wipe", kind=Kind.SOLVENT, dimension="volume")
    need(step(job(world)), Kind.SOLVENT, 500 * ML)
    wanted = [sum(each.amount for each in facts(world, code).booked) for code in (wipe.code, ardle.code)]
    assert wanted == [200 * ML, 300 * ML], "the first by name has to bring what the shelf lacks"
