"""What ledger and job book say about demand, each booking counted once; today is 25 November 2026."""

from datetime import date, timedelta

import pytest

from inventory.models import Job, Kind
from inventory.reorder.rules import Booked
from inventory.stock.rules.acts import Act
from tests.inventory.reorder.used_shop import facts, line, used_a_millilitre_a_day
from tests.world import (
    LITRE,
    ML,
    NOON,
    TODAY,
    bottle,
    hollin,
    job,
    larkmoor,
    need,
    product,
    record,
    step,
)

pytestmark = pytest.mark.django_db


def test_a_use_that_was_taken_back_is_no_use(world):
    wipe = hollin(world)
    kept = bottle(world, wipe, LITRE)
    use = record(world, Act("use", NOON, source=kept.code, amount=280 * ML))[-1]
    assert facts(world, wipe.code).mean_per_day == 10 * ML

    record(world, Act("reverse", NOON, reverses=use.seq))
    assert facts(world, wipe.code).mean_per_day == 0


def test_use_of_more_than_a_year_ago_is_forgotten(world):
    wipe = hollin(world)
    kept = bottle(world, wipe, LITRE, at=NOON - timedelta(days=400))
    record(world, Act("use", NOON - timedelta(days=365), source=kept.code, amount=300 * ML))
    assert facts(world, wipe.code).mean_per_day == 0

    record(world, Act("use", NOON - timedelta(days=364), source=kept.code, amount=365 * ML))
    assert facts(world, wipe.code).mean_per_day == ML


def test_the_use_of_another_shop_is_not_ours(world):
    mine, other = hollin(world), larkmoor("farrow")
    used_a_millilitre_a_day(other, hollin(other))
    assert facts(world, mine.code).mean_per_day == 0


def test_a_booking_counts_once_beside_the_mean_use(world):
    wipe = hollin(world)
    used_a_millilitre_a_day(world, wipe)
    assert line(world, wipe.code).wanted.expected == 12 * ML, "25 November through 6 December, 1 ml a day"

    need(step(job(world, NOON + timedelta(days=2))), wipe, 8 * ML)
    wanted = line(world, wipe.code).wanted
    assert (wanted.booked, wanted.unbooked) == (8 * ML, 4 * ML)
    assert wanted.expected == 12 * ML, "20 ml would order the booked car twice"


def test_what_a_job_used_already_is_not_wanted_again(world):
    wipe = hollin(world)
    kept = used_a_millilitre_a_day(world, wipe)
    car = job(world, NOON - timedelta(hours=2))
    wiping = step(car)
    need(wiping, wipe, 8 * ML)
    record(world, Act("use", NOON, source=kept.code, amount=5 * ML, job=car.code, step=wiping.code))
    assert facts(world, wipe.code).booked == (Booked(TODAY, 3 * ML),)

    wiping.signed_at = NOON
    wiping.save()
    assert facts(world, wipe.code).booked == ()


@pytest.mark.parametrize("state", [Job.State.CANCELLED, Job.State.CLOSED])
def test_a_job_that_ended_wants_nothing(world, state):
    wipe, car = hollin(world), job(world)
    need(step(car), wipe, 8 * ML)
    assert facts(world, wipe.code).booked == (Booked(date(2026, 11, 26), 8 * ML),)

    Job.objects.filter(pk=car.pk).update(state=state)
    assert facts(world, wipe.code).booked == ()


def test_a_need_of_a_kind_is_wanted_of_the_product_of_it_that_is_used_most(world):
    first = product(world, "Ardle wipe", Kind.SOLVENT)
    usual = hollin(world)
    need(step(job(world)), Kind.SOLVENT, 8 * ML)
    assert facts(world, first.code).booked, "nothing was used yet: the first by name"

    used_a_millilitre_a_day(world, usual)
    assert facts(world, usual.code).booked == (Booked(date(2026, 11, 26), 8 * ML),)
    assert facts(world, first.code).booked == ()


def test_how_cars_are_booked_comes_from_the_shops_own_year(world):
    wipe = hollin(world)
    for number in range(20):
        ended = job(world, NOON - timedelta(days=10), booked_at=NOON - timedelta(days=14))
        state = Job.State.CANCELLED if number < 5 else Job.State.CLOSED
        Job.objects.filter(pk=ended.pk).update(state=state)
    job(world, NOON + timedelta(days=6), booked_at=NOON - timedelta(days=14))
    long_ago = job(world, NOON - timedelta(days=390), booked_at=NOON - timedelta(days=400))
    Job.objects.filter(pk=long_ago.pk).update(state=Job.State.CANCELLED)

    found = facts(world, wipe.code)
    assert (found.bookings_seen, found.cancelled) == (20, 0.25)
    assert found.days_booked_ahead == 5, "15 cars 4 days ahead and an open one 20 days"


def test_a_shop_that_cancelled_everything_still_gets_its_report(world):
    wipe = hollin(world)
    ended = job(world)
    Job.objects.filter(pk=ended.pk).update(state=Job.State.CANCELLED)
    assert facts(world, wipe.code).cancelled == 0.99


def test_the_spread_of_use_a_job_is_measured_over_jobs(world):
    wipe = hollin(world)
    kept = bottle(world, wipe, LITRE)
    for amount in (30, 40, 50):
        car = job(world, NOON - timedelta(days=1))
        record(world, Act("use", NOON, source=kept.code, amount=amount * ML, job=car.code))
    assert facts(world, wipe.code).spread_per_booking == pytest.approx(8_164.97, abs=0.01)
