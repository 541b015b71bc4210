"""A mixed bottle serves booked jobs at its own mix and nobody else. Today is Wednesday 25 November 2026."""

from datetime import date, timedelta

import pytest

from inventory.reorder.rules import Booked, Stock, order_line
from inventory.stock.rules.acts import Act
from tests.inventory.reorder.shelf import MADE_ON, MONTH_END
from tests.inventory.reorder.shelf import product as facts_of
from tests.inventory.reorder.used_shop import facts, line, used_a_millilitre_a_day
from tests.world import (
    LITRE,
    ML,
    NOON,
    World,
    bottle,
    hollin,
    job,
    need,
    pack,
    record,
    spray_bottle,
    step,
)

pytestmark = pytest.mark.django_db

THURSDAY = date(2026, 11, 26)


def mixed(world: World, wipe, *, at=NOON) -> None:
    """Pour all of 100 ml of wipe into a spray bottle of a litre, at 1:9."""
    neat, spray = bottle(world, wipe, 100 * ML), spray_bottle(world)
    pour = Act("fill", at, source=neat.code, target=spray.code, amount=100 * ML, added=LITRE, parts=(1, 9))
    record(world, pour)


def test_a_mixed_bottle_is_not_counted_for_a_job_that_wants_it_neat(world):
    wipe = hollin(world)
    pack(wipe, LITRE)
    mixed(world, wipe)
    need(step(job(world)), wipe, 80 * ML)
    found = line(world, wipe.code)
    assert (found.usable, found.packs) == (0, 1), "the bay would stand there without neat wipe"
    assert found.because == (
        "Empty on 26 November; lead time 6 days: ordered today it comes 5 days late, on 1 December."
        " Mixed bottles hold 100 ml of concentrate:"
        " no booked job wants that mix in time, so it is not counted."
    )


def test_a_mixed_bottle_serves_the_jobs_at_its_mix_and_the_rest_is_not_counted(world):
    wipe = hollin(world)
    pack(wipe, LITRE)
    mixed(world, wipe)
    need(step(job(world)), wipe, 60 * ML, parts=(1, 9))
    need(step(job(world)), wipe, 25 * ML)
    found = line(world, wipe.code)
    assert facts(world, wipe.code).booked == (
        Booked(THURSDAY, 60 * ML, mixed=60 * ML),
        Booked(THURSDAY, 25 * ML),
    )
    assert (found.wanted.booked, found.usable) == (25 * ML, 0)
    assert found.because.endswith(
        "Mixed bottles hold 100 ml of concentrate:"
        " 60 ml serves booked jobs at that mix, the rest is not counted."
    )


def test_the_twin_with_jobs_for_all_of_the_mix_orders_what_the_mix_lacks(world):
    wipe = hollin(world)
    pack(wipe, LITRE)
    mixed(world, wipe)
    need(step(job(world)), wipe, 130 * ML, parts=(1, 9))
    found = line(world, wipe.code)
    assert found.needed == 30 * ML
    assert found.because.endswith(
        "Mixed bottles hold 100 ml of concentrate: all of it serves booked jobs at that mix."
    )


def test_a_mixed_bottle_is_taken_before_neat_stock_that_dies_first(world):
    wipe = hollin(world)
    bottle(world, wipe, LITRE, expires_on=date(2026, 12, 31))
    mixed(world, wipe)
    need(step(job(world)), wipe, 60 * ML, parts=(1, 9))
    assert line(world, wipe.code).wanted.booked == 0


@pytest.mark.parametrize("by", ["maker", "shop"])
def test_a_mix_that_dies_before_the_job_does_not_serve_it_whosever_word_that_is(world, by):
    wipe = hollin(world, mix_life=7, mix_life_unit="day", mix_life_by=by)
    mixed(world, wipe)
    need(step(job(world, NOON + timedelta(days=7))), wipe, 60 * ML, parts=(1, 9))
    need(step(job(world, NOON + timedelta(days=8))), wipe, 30 * ML, parts=(1, 9))
    assert facts(world, wipe.code).booked == (
        Booked(date(2026, 12, 2), 60 * ML, mixed=60 * ML),
        Booked(date(2026, 12, 3), 30 * ML),
    )


def test_a_mix_out_of_date_is_counted_among_what_is_out_of_date(world):
    wipe = hollin(world, mix_life=7, mix_life_unit="day", mix_life_by="maker")
    mixed(world, wipe, at=NOON - timedelta(days=8))
    need(step(job(world)), wipe, 60 * ML, parts=(1, 9))
    found = line(world, wipe.code)
    assert found.wanted.booked == 60 * ML
    assert found.because.endswith("100 ml on hand is out of date and not counted.")


def test_a_booking_that_the_mix_serves_still_counts_once_beside_the_mean_use(world):
    wipe = hollin(world)
    used_a_millilitre_a_day(world, wipe)
    mixed(world, wipe)
    need(step(job(world)), wipe, 8 * ML, parts=(1, 9))
    wanted = line(world, wipe.code).wanted
    assert (wanted.booked, wanted.unbooked) == (0, 4 * ML), "12 ml in 12 days, 8 of them out of the mix"


def test_neat_stock_runs_out_for_the_others_though_a_mix_stands_beside_it():
    wipe = facts_of(
        mean_per_day=10 * ML,
        stock=(Stock(50 * ML),),
        booked=(Booked(date(2026, 12, 20), 100 * ML, mixed=100 * ML),),
        mixed=100 * ML,
    )
    # 370 ml are used in 37 days, 100 of them out of the mix: 7.3 ml a day of the 50 that stand there neat.
    assert order_line(wipe, MONTH_END, MADE_ON, "EUR").empty_on == date(2026, 12, 7)
