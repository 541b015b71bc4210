"""Another amount takes the recorded one's place, as often as it is typed, and is never added to it."""

import pytest

from inventory.stock.audit import audit
from tests.inventory.scan.desk import content, desk, kinds
from tests.inventory.scan.test_more_than_planned import wiping
from tests.inventory.scan.unplanned import kept, shop
from tests.inventory.scan.wheels import used, washing
from tests.world import LITRE, ML

pytestmark = pytest.mark.django_db


def test_a_second_typed_amount_replaces_the_first_and_says_so() -> None:
    _, car, here, (one,) = washing()
    named = f"recorded: Brack wheel cleaner {one.code[:4]}"
    assert here.hears(car.code, one.code) == f"{named}: took 96 ml as planned, 904 ml left."
    assert here.hears("110 ml") == f"{named}: took 110 ml instead of 96 ml, 890 ml left."
    assert (
        here.heard[-1]["next"] == "Another amount takes its place, too. To add to it, scan the bottle again."
    )

    spoken = here.say("60 ml")

    assert f"{spoken['grade']}: {spoken['says']}" == f"{named}: took 60 ml instead of 110 ml, 940 ml left."
    assert kinds(spoken) == ["reverse", "use"]
    assert (used(car), content(one)) == ([60], 940 * ML)
    assert here.hears("AS PLANNED") == f"{named}: took 96 ml as planned instead of 60 ml, 904 ml left."


def test_undo_after_two_corrections_takes_the_whole_use_back() -> None:
    _, car, here, (one,) = washing()
    here.hears(car.code, one.code, "110 ml", "60 ml", "UNDO")

    assert (used(car), content(one)) == ([], LITRE)


def test_the_bottle_scanned_again_adds_and_what_is_typed_then_replaces_only_that() -> None:
    _, car, here, (one,) = washing()
    here.hears(car.code, one.code, "110 ml", one.code)
    assert here.heard[-1]["says"].endswith(" is not planned for Grey estate. How much of it?")
    here.hears("60 ml")

    assert used(car) == [110, 60]


def test_another_bottle_scanned_ends_the_correction() -> None:
    _, car, here, (one, other) = washing(96, 1000, 400)
    here.hears(car.code, one.code, "110 ml", other.code, "20 ml")

    assert used(car) == [110, 20]


def test_a_correction_takes_back_the_count_that_made_room_for_the_one_before() -> None:
    """The bottle held 100 ml by the book; that it held 130 was said of an amount that was not so."""
    _, car, here, (one,) = washing(96, 100)
    here.hears(car.code, one.code, "130 ml", "YES")
    assert (used(car), content(one)) == ([130], 0)

    assert kinds(here.say("60 ml")) == ["reverse", "reverse", "use"]
    assert (used(car), content(one)) == ([60], 40 * ML)
    here.hears("UNDO")
    assert (used(car), content(one)) == ([], 100 * ML)
    assert list(audit()) == []


@pytest.mark.parametrize(("said", "sentence"), [
    ("NO", "tell: Nothing was changed: 96 ml stay recorded."),
    ("UNDO", "tell: Nothing was recorded."),
])  # fmt: skip
def test_a_question_that_is_let_go_leaves_the_correction_open(said: str, sentence: str) -> None:
    _, car, here, (one,) = washing(96, 100)
    here.hears(car.code, one.code, "130 ml")
    assert here.hears(said) == sentence
    here.hears("80 ml")

    assert (used(car), content(one)) == ([80], 20 * ML)


def test_a_smaller_amount_after_a_refused_one_and_a_larger_one_is_judged_as_the_replacement() -> None:
    """60 ml planned, 700 ml refused, 120 ml answered (60.8 %), then 80 ml: 40.5 % of the limit, no 136 %."""
    world = shop()
    _, car, full = wiping(world)
    here = desk(world)
    here.hears(car, full)
    assert here.hears("700 ml").startswith("stop: ")
    assert here.hears("120 ml").startswith("ask: ")
    assert here.hears("YES") == (
        f"recorded: Hollin panel wipe {full[:4]}: took 120 ml instead of 60 ml, 880 ml left."
    )

    assert here.hears("80 ml") == (
        f"recorded: Hollin panel wipe {full[:4]}: took 80 ml instead of 120 ml, 920 ml left."
    )
    assert kept(full).content == 920 * ML


def test_a_larger_correction_of_a_correction_is_still_judged() -> None:
    world = shop()
    _, car, full = wiping(world)
    here = desk(world)
    here.hears(car, full, "50 ml")

    assert here.hears("700 ml").startswith(
        "stop: Wheels, Bay 1: who works here breathes 355 % of the 15-minute limit"
    )
    assert here.heard[-1]["next"].endswith("50 ml stay recorded: type another amount, or UNDO.")


def test_the_key_for_another_amount_says_instead_of_which() -> None:
    _, car, here, (one,) = washing()
    assert here.hears(car.code, one.code, "USE") == (
        f"ask: How much of Brack wheel cleaner {one.code[:4]} instead of 96 ml?"
    )
    here.hears("60 ml")
    assert used(car) == [60]
