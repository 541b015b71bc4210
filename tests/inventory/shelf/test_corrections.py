"""What is corrected or held from a bottle's page, and what that leaves alone."""

from datetime import date

import pytest
from django.urls import reverse

from inventory.models import Container
from inventory.stock.audit import audit
from tests.world import ML, bottle, tidewall

pytestmark = pytest.mark.django_db


def page(code: str, name: str = "container") -> str:
    return reverse(f"shelf:{name}", args=[code])


def text(response) -> str:
    return response.content.decode()


def test_a_correction_that_corrects_nothing_is_refused(ines, world):
    kept = bottle(world, tidewall(world), 30 * ML, lot="TW-1", expires_on=date(2027, 6, 30))

    answer = ines.post(page(kept.code, "correct"), {"number": "TW-1", "expires_on": "2027-06-30"})

    assert "That is what the book says already." in text(answer)


def test_a_wrong_date_is_corrected_for_every_bottle_of_its_lot(ines, world):
    product = tidewall(world)
    one = bottle(world, product, 30 * ML, lot="TW-1", expires_on=date(2027, 6, 30))
    other = bottle(world, product, 30 * ML, lot="TW-1")

    ines.post(page(one.code, "correct"), {"number": "TW-1", "expires_on": "2027-03-31"})

    for kept in (one, other):
        kept.refresh_from_db()
        assert kept.use_by_on == date(2027, 3, 31)


def test_a_lot_that_was_not_given_is_never_joined_with_another_one(ines, world):
    product = tidewall(world)
    other = bottle(world, product, 30 * ML, lot="", expires_on=date(2026, 12, 1))
    third = bottle(world, product, 30 * ML, lot="", expires_on=date(2026, 12, 2))
    one = bottle(world, product, 30 * ML, lot="L77", expires_on=date(2027, 6, 30))

    ines.post(page(one.code, "correct"), {"number": "", "expires_on": "2029-06-01"})

    days = {kept.code: kept.use_by_on for kept in Container.objects.all()}
    assert days == {
        other.code: date(2026, 12, 1),
        third.code: date(2026, 12, 2),
        one.code: date(2029, 6, 1),
    }


def test_a_known_lot_keeps_its_date_when_a_bottle_is_moved_into_it(ines, world):
    product = tidewall(world)
    bottle(world, product, 30 * ML, lot="TW-1", expires_on=date(2027, 6, 30))
    one = bottle(world, product, 30 * ML, lot="TW-9", expires_on=date(2027, 1, 31))

    answer = ines.post(page(one.code, "correct"), {"number": "TW-1", "expires_on": "2029-06-01"})

    assert "Lot TW-1 is here with use by 2027-06-30." in text(answer)
    ines.post(page(one.code, "correct"), {"number": "TW-1", "expires_on": "2027-06-30"})
    one.refresh_from_db()
    assert ([lot.number for lot in one.lots.all()], one.use_by_on) == (["TW-1"], date(2027, 6, 30))


def test_a_second_reason_never_takes_the_place_of_the_first(ines, world):
    kept = bottle(world, tidewall(world), 30 * ML)
    ines.post(page(kept.code, "hold"), {"reason": "recalled"})

    answer = ines.post(page(kept.code, "hold"), {"reason": "frozen"})

    assert "is held already: recalled." in text(answer)
    kept.refresh_from_db()
    assert kept.held == "recalled"


def test_a_wrong_lot_is_corrected_for_this_bottle_alone(ines, world):
    product = tidewall(world)
    one = bottle(world, product, 30 * ML, lot="TW-1", expires_on=date(2027, 6, 30))
    other = bottle(world, product, 30 * ML, lot="TW-1")

    ines.post(page(one.code, "correct"), {"number": "TW-7", "expires_on": "2028-01-31"})

    one.refresh_from_db()
    other.refresh_from_db()
    assert ([lot.number for lot in one.lots.all()], one.use_by_on) == (["TW-7"], date(2028, 1, 31))
    assert ([lot.number for lot in other.lots.all()], other.use_by_on) == (["TW-1"], date(2027, 6, 30))
    assert list(audit()) == []
