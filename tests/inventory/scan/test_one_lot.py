"""A second lot of a coating at the station: it stops, a badge's yes never passes, an owner's word does."""

import pytest

from inventory.models import Job, Movement, Override, Person, Product
from inventory.precheck import actions as check
from inventory.precheck import queries as prechecked
from tests.inventory.scan.desk import Desk, desk, kinds
from tests.world import ML, NOON, World, bottle, job, larkmoor, need, product, step, tidewall

pytestmark = pytest.mark.django_db
REASON = "The second lot goes on the boot lid only."


def begun(*others: tuple[int, str], planned: int = 40) -> tuple[World, Job, Desk, list[str]]:
    """A step that has had 30 ml of lot A, its only bottle, and bottles of other lots."""
    world = larkmoor()
    coat = tidewall(world, needs_sheet=False)
    first = bottle(world, coat, 30 * ML, lot="A")
    rest = [bottle(world, coat, ml * ML, lot=lot).code for ml, lot in others]
    car = job(world, NOON)
    need(step(car, "Coating"), coat, planned * ML)
    here = desk(world)
    here.hears(car.code, first.code, "30 ml")
    return world, car, here, rest


def word(car: Job, by: Person) -> None:
    """Let somebody say why two lots are right, on what the check finds of the car now."""
    found = next(one for one in prechecked.check(car, NOON).check.findings if one.code == "two_lots")
    check.answer(car, found.code, " ".join(found.about), found.says, REASON, by=by, at=NOON)


def test_a_second_lot_on_one_step_stops_and_says_the_way_out() -> None:
    _, _, here, (second,) = begun((30, "B"))
    spoken = here.say(second)
    assert (spoken["grade"], spoken["says"]) == (
        "stop", "This step has Tidewall coating from another lot on it already.",
    )  # fmt: skip
    assert spoken["next"] == (
        "Take the first lot, or an owner says why two lots are right, on the check page."
    )
    assert [key["label"] for key in spoken["keys"]] == ["See its check", "It is on the car already"]


def test_no_badge_and_no_yes_passes_a_second_lot() -> None:
    world, _, here, (second,) = begun((30, "B"))
    here.hears(second, "YES", world.ines.code, second, "YES")
    assert Movement.objects.filter(kind="use", reversed_by=None).count() == 1


def test_a_technicians_word_lifts_nothing() -> None:
    world, car, here, (second,) = begun((30, "B"))
    with pytest.raises(check.NotNow):
        word(car, world.tomas)
    assert not Override.objects.exists()
    assert here.hears(second).startswith("stop: ")


def test_an_owners_word_on_another_step_does_not_stand_here() -> None:
    world, car, here, (second,) = begun((30, "B"))
    word(car, world.ines)
    Override.objects.update(about=f"{Override.objects.get().about.split()[0]} SANOTHER")
    assert here.hears(second).startswith("stop: ")


def test_an_owners_word_on_the_check_lets_the_second_lot_on() -> None:
    world, car, here, (second,) = begun((30, "B"))
    word(car, world.ines)
    assert kinds(here.say(second)) == ["open", "use"]


def test_an_owners_word_given_beforehand_still_stands_after_the_first_lot_went_on() -> None:
    world = larkmoor()
    coat = tidewall(world, needs_sheet=False)
    first, second = bottle(world, coat, 30 * ML, lot="A"), bottle(world, coat, 25 * ML, lot="B")
    car = job(world, NOON)
    need(step(car, "Coating"), coat, 40 * ML)
    word(car, world.ines)
    here = desk(world)
    assert here.hears(car.code, first.code, "30 ml").startswith("recorded: ")
    assert kinds(here.say(second.code)) == ["open", "use"]


def test_the_check_finds_two_lots_for_the_owner_even_where_the_other_lot_holds_too_little() -> None:
    world, car, here, (second,) = begun((5, "B"))
    found = [one for one in prechecked.check(car, NOON).check.findings if one.code.startswith("t")]
    assert [(one.code, one.says) for one in found] == [
        ("two_lots", "Tidewall coating: 10 ml more needed from the lot that the step has, 0 ml of it left."),
        ("too_little", "Tidewall coating: 10 ml needed, 0 ml free."),
    ]
    word(car, world.ines)
    spoken = here.say(second)
    assert spoken["says"] == (
        f"Tidewall coating {second[:4]}: took 5 ml, all it holds by the book; 5 ml are still wanted."
    )
    assert kinds(spoken) == ["open", "use"]


def test_where_the_first_lot_is_there_it_is_named() -> None:
    _, _, here, (again, second) = begun((30, "A"), (30, "B"))
    spoken = here.say(second)
    assert (spoken["grade"], spoken["next"]) == (
        "stop",
        f"Take the first lot, {again[:4]} from Store. If it is not there, count it: then an owner says why "
        "two lots are right, on the check page.",
    )


def test_what_is_planned_no_more_is_planned_first() -> None:
    _, _, here, (second,) = begun((30, "B"), planned=30)
    spoken = [here.say(line) for line in (second, "3 ml")][-1]
    assert spoken["grade"] == "stop"
    assert spoken["next"] == (
        "Take the first lot. If there is none, plan what is still needed on the job's page: then an owner "
        "says why two lots are right, on the check page."
    )


def test_a_second_lot_that_is_on_the_car_already_is_written_down_and_flagged() -> None:
    _, _, here, (second,) = begun((30, "B"))
    assert here.hears(second, "ALREADY", "10 ml").startswith("recorded: ")
    assert Movement.objects.get(kind="use", source__code=second).facts["declared"] is True


def test_the_same_lot_from_another_bottle_goes_on() -> None:
    _, _, here, (second,) = begun((30, "A"))
    assert kinds(here.say(second)) == ["open", "use"]


def test_a_coating_that_may_mix_lots_goes_on_from_two() -> None:
    _, _, here, (second,) = begun((30, "B"))
    Product.objects.update(mixes_lots=True)
    assert kinds(here.say(second)) == ["open", "use"]


def test_another_coating_in_one_step_is_no_second_lot_of_the_first() -> None:
    world, car, here, _ = begun()
    top = product(world, "Hollow top coat", "coating", needs_sheet=False)
    need(car.steps.get(), top, 10 * ML)
    assert kinds(here.say(bottle(world, top, 30 * ML, lot="B").code)) == ["open", "use"]


def test_sign_stops_at_the_station_where_a_stage_would_be_booked_from_two_lots() -> None:
    world = larkmoor()
    coat = tidewall(world, needs_sheet=False)
    Product.objects.update(traced=False)
    for ml, lot in ((30, "A"), (25, "B")):
        bottle(world, coat, ml * ML, lot=lot, opened_at=NOON, place=world.bay_2)
    car = job(world, NOON)
    need(step(car, "Coating", bay=world.bay_2), coat, 40 * ML)
    here = desk(world)
    spoken = [here.say(line) for line in (car.code, "SIGN")][-1]
    assert spoken["grade"] == "stop"
    assert spoken["says"].startswith("Tidewall coating: 40 ml needed from one lot, 30 ml in the fullest.")
    assert car.steps.get().signed_at is None
