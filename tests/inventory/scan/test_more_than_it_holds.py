"""More is planned than the bottle holds: it gives what it holds, and the next one is named."""

import pytest

from inventory.jobs.queries import unsaid
from tests.inventory.scan.desk import content, desk
from tests.inventory.scan.wheels import used, washing
from tests.world import ML, NOON, bottle, job, larkmoor, need, step, tidewall

pytestmark = pytest.mark.django_db


def test_a_planned_amount_takes_what_the_bottle_holds_and_names_the_next_one() -> None:
    _, car, here, (first, second) = washing(52, 30, 400)

    spoken = [here.say(line) for line in (car.code, first.code)][-1]

    assert f"{spoken['grade']}: {spoken['says']}" == (
        f"recorded: Brack wheel cleaner {first.code[:4]}: took 30 ml, all it holds by the book; "
        "22 ml are still wanted."
    )
    assert spoken["next"] == (
        f"Scan the next bottle, {second.code[:4]} from Bay 1, or type how much it really gave."
    )
    assert [key["label"] for key in spoken["keys"]] == [f"Use {second.code[:4]}", "Discard it", "Undo"]
    assert here.hears(second.code) == (
        f"recorded: Brack wheel cleaner {second.code[:4]}: took 22 ml as planned, 378 ml left."
    )
    assert (used(car), content(first)) == ([30, 22], 0)


def test_what_it_really_gave_is_typed_in_its_place_and_more_than_the_book_holds_is_asked() -> None:
    _, car, here, (first, second) = washing(52, 30, 400)
    here.hears(car.code, first.code)
    assert here.hears("28 ml") == (
        f"recorded: Brack wheel cleaner {first.code[:4]}: took 28 ml instead of 30 ml, 2 ml left; "
        "24 ml are still wanted."
    )
    assert here.hears("35 ml") == f"ask: {first.code[:4]} is booked at 30 ml. You said 35 ml."
    assert here.hears("YES") == (
        f"recorded: Brack wheel cleaner {first.code[:4]}: took 35 ml instead of 28 ml, "
        "all it holds by the book; 17 ml are still wanted."
    )
    here.hears(second.code)
    assert used(car) == [35, 17]


def test_where_one_bottle_gave_all_after_all_nothing_more_is_wanted() -> None:
    _, car, here, (first, _) = washing(52, 30, 400)
    here.hears(car.code, first.code, "52 ml")
    assert here.hears("YES") == (
        f"recorded: Brack wheel cleaner {first.code[:4]}: took 52 ml instead of 30 ml, it is empty."
    )
    assert unsaid(car) == []


def test_where_no_other_bottle_is_there_that_is_said() -> None:
    _, car, here, (first,) = washing(52, 30)
    here.hears(car.code, first.code)
    assert here.heard[-1]["next"] == "No other bottle here may give it. If this one gave more: type how much."


def test_the_next_bottle_of_a_coating_is_one_of_its_lot() -> None:
    world = larkmoor()
    coat = tidewall(world, needs_sheet=False)
    first = bottle(world, coat, 30 * ML, lot="A")
    other = bottle(world, coat, 30 * ML, lot="B")
    again = bottle(world, coat, 30 * ML, lot="A")
    car = job(world, NOON)
    need(step(car), coat, 52 * ML)
    here = desk(world)
    here.hears(car.code, first.code)
    assert here.heard[-1]["next"] == (
        f"Scan the next bottle, {again.code[:4]} from Store, or type how much it really gave."
    )
    assert here.hears(other.code) == "stop: This step has Tidewall coating from another lot on it already."
