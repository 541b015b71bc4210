"""A typed amount settles its need: it is not booked again, and not named as missing."""

from datetime import timedelta

import pytest

from inventory.jobs.queries import unsaid
from inventory.stock.signing import sign_stage
from tests.inventory.scan.desk import content
from tests.inventory.scan.wheels import used, washing
from tests.world import LITRE, ML, NOON

pytestmark = pytest.mark.django_db


def test_a_signature_books_nothing_of_what_a_typed_amount_took_off() -> None:
    _, car, here, (one,) = washing()
    here.hears(car.code, one.code, "60 ml")

    assert here.hears("SIGN") == "recorded: Signed the wash on Grey estate."
    assert here.heard[-1]["next"] == ""
    assert (used(car), content(one)) == ([60], 940 * ML)
    assert unsaid(car) == []


def test_a_signature_names_nothing_as_missing_where_the_bottle_went_back_to_the_store() -> None:
    world, car, here, (one,) = washing()
    here.hears(car.code, one.code, "60 ml", one.code, "MOVE", world.store.code)
    assert used(car) == [60, 36], "a bottle that is scanned onto the car again adds"
    here.hears("UNDO", "UNDO")
    here.hears(car.code)

    assert here.hears("SIGN") == "recorded: Signed the wash on Grey estate."
    assert here.heard[-1]["next"] == ""


def test_a_signature_does_not_call_unscanned_what_was_scanned_and_typed() -> None:
    _, car, here, (one,) = washing(traced=True)
    here.hears(car.code, one.code, "60 ml", "SIGN")

    assert here.heard[-1]["next"] == ""


def test_the_page_s_signature_and_closing_take_a_typed_amount_for_all_of_it_too() -> None:
    world, car, here, (one,) = washing()
    here.hears(car.code, one.code, "60 ml")
    assert unsaid(car) == []

    sign_stage(car, "wash", by=world.tomas, at=NOON + timedelta(hours=1))

    assert used(car) == [60]


def test_a_correction_to_nothing_is_not_booked_again() -> None:
    _, car, here, (one,) = washing()
    here.hears(car.code, one.code, "0 ml", "SIGN")

    assert (used(car), content(one)) == ([0], LITRE)


def test_the_first_of_two_bottles_taken_as_planned_leaves_the_rest_open() -> None:
    _, car, here, (first, second) = washing(96, 50, 400)
    here.hears(car.code, first.code)
    assert [one.left for one in unsaid(car)] == [46 * ML]

    assert here.hears("SIGN") == "recorded: Signed the wash on Grey estate: 1 bottle booked as planned."
    assert (used(car), content(second)) == ([50, 46], 354 * ML)


def test_what_a_bottle_gave_that_held_too_little_settles_nothing() -> None:
    """55 ml are what the first bottle gave, not what the step used: 41 ml of 96 are still to come."""
    _, car, here, (first, _) = washing(96, 50, 400)
    here.hears(car.code, first.code, "55 ml", "YES")

    assert [one.left for one in unsaid(car)] == [41 * ML]
