"""A need of a kind comes off the shelf first, and only what lacks is ordered. Today is 25 November 2026."""

from datetime import date, timedelta

import pytest

from inventory.models import Kind, Product
from inventory.reorder.rules import Booked
from inventory.stock.rules.acts import Act
from tests.inventory.reorder.used_shop import facts, line
from tests.world import (
    LITRE,
    ML,
    NOON,
    bottle,
    hollin,
    job,
    need,
    pack,
    product,
    record,
    step,
)

pytestmark = pytest.mark.django_db

THURSDAY = date(2026, 11, 26)


@pytest.fixture
def usual(world) -> Product:
    """Hollin panel wipe, of which everything was used yesterday: the usual solvent, sold by the litre."""
    wipe = hollin(world)
    pack(wipe, LITRE)
    gone = bottle(world, wipe, 280 * ML)
    record(world, Act("use", NOON - timedelta(days=1), source=gone.code, amount=280 * ML))
    return wipe


@pytest.fixture
def other(world) -> Product:
    """Ardle wipe, a solvent that nobody used yet."""
    return product(world, "Ardle wipe", Kind.SOLVENT)


def test_stock_of_another_product_of_the_kind_is_not_ordered_again(world, usual, other):
    bottle(world, other, LITRE)
    need(step(job(world)), Kind.SOLVENT, 900 * ML)
    assert facts(world, other.code).booked == (Booked(THURSDAY, 900 * ML, instead=900 * ML),)
    found = line(world, usual.code)
    assert (found.wanted.expected, found.packs) == (0, 0)
    assert found.because.endswith(
        "0.9 l that booked jobs want of its kind comes from other products on hand, first expired first."
    )


def test_the_twin_without_that_stock_is_ordered_of_the_usual_product(world, usual, other):
    need(step(job(world)), Kind.SOLVENT, 900 * ML)
    assert facts(world, other.code).booked == ()
    found = line(world, usual.code)
    assert found.wanted.booked == 900 * ML
    assert "of its kind" not in found.because


def test_what_the_shelf_lacks_is_wanted_of_the_usual_product(world, usual, other):
    bottle(world, other, 300 * ML)
    bottle(world, usual, 200 * ML)
    need(step(job(world)), Kind.SOLVENT, 900 * ML)
    assert facts(world, other.code).booked == (Booked(THURSDAY, 300 * ML, instead=300 * ML),)
    assert facts(world, usual.code).booked == (Booked(THURSDAY, 600 * ML),), "200 on hand and 400 to order"


def test_the_first_to_expire_serves_whichever_product_it_is(world, usual, other):
    bottle(world, usual, LITRE, expires_on=date(2027, 3, 31))
    bottle(world, other, 100 * ML, expires_on=date(2026, 12, 31))
    need(step(job(world)), Kind.SOLVENT, 150 * ML)
    assert facts(world, other.code).booked == (Booked(THURSDAY, 100 * ML, instead=100 * ML),)
    assert facts(world, usual.code).booked == (Booked(THURSDAY, 50 * ML),)


def test_what_a_job_wants_by_name_is_not_given_to_who_takes_any(world, usual, other):
    bottle(world, other, 100 * ML)
    car = job(world)
    need(step(car), Kind.SOLVENT, 100 * ML)
    need(step(car), other, 80 * ML)
    shared = Booked(THURSDAY, 100 * ML, instead=20 * ML)
    assert facts(world, other.code).booked == (shared,), "80 by name, 20 for any"
    assert facts(world, usual.code).booked == (Booked(THURSDAY, 80 * ML),)


def test_a_booking_of_the_kind_counts_once_against_the_mean_use_of_one_product(world, usual, other):
    used = bottle(world, other, LITRE + 280 * ML, expires_on=date(2027, 3, 31))
    record(world, Act("use", NOON - timedelta(days=1), source=used.code, amount=280 * ML))
    need(step(job(world)), Kind.SOLVENT, 90 * ML)
    # 12 days of 10 ml each; the usual one is the first by name of two that are used alike.
    assert line(world, usual.code).wanted.expected == 120 * ML
    assert line(world, other.code).wanted.expected == 120 * ML

    more = bottle(world, usual, 300 * ML)
    record(world, Act("use", NOON - timedelta(days=1), source=more.code, amount=280 * ML))
    found = line(world, usual.code).wanted, line(world, other.code).wanted
    assert [(each.booked, each.unbooked) for each in found] == [
        (0, 150 * ML),
        (90 * ML, 120 * ML),
    ], "240 ml of one, 90 ml of them booked; the other's 120 ml are wanted beside what it serves"


@pytest.mark.parametrize(
    ("spoil", "because"),
    [
        ({"expires_on": date(2026, 11, 25)}, "it dies the night before the job"),
        ({"held": True}, "nobody may use what is held"),
        ({"archived": True}, "a product put away is not offered"),
        ({"kind": Kind.COATING}, "no other kind serves"),
        ({"open_life_by": "shop"}, "past the shop's own estimate: an order does not rely on it"),
    ],
)
def test_only_usable_stock_of_the_kind_serves(world, usual, other, spoil, because):
    if "open_life_by" in spoil:
        spoil = {"open_life": 10, **spoil}
    Product.objects.filter(pk=other.pk).update(
        **{name: value for name, value in spoil.items() if name not in ("expires_on", "held")}
    )
    other.refresh_from_db()
    opened = {"opened_at": NOON - timedelta(days=20)} if "open_life" in spoil else {}
    kept = bottle(world, other, LITRE, expires_on=spoil.get("expires_on"), **opened)
    if "held" in spoil:
        record(world, Act("quarantine", NOON, target=kept.code, facts={"reason": "frozen"}))
    need(step(job(world)), Kind.SOLVENT, 900 * ML)
    assert facts(world, usual.code).booked == (Booked(THURSDAY, 900 * ML),), because
