"""RINSE with a car in hand: the planned rinse, or one that no plan holds; a bottle where that is meant."""

import pytest

from inventory.models import Movement, Step
from tests.inventory.scan.desk import desk, kinds
from tests.inventory.scan.unplanned import found, opened, plain, shop, wheel_acid, working
from tests.world import LITRE, ML, NOON, World, bleach, job, larkmoor, lime_remover, spray_bottle, step

pytestmark = pytest.mark.django_db
ADDED = (
    "recorded: Signed a rinse to a clear drain on Grey estate. "
    "Nobody had planned it: the job has it as done now."
)


def limed(world: World) -> str:
    """Return an open bottle of lime remover, which is asked and stopped for nothing here."""
    sour = lime_remover(world)
    type(sour).objects.filter(pk=sour.pk).update(kind="other")
    return opened(world, sour)


def test_without_car_and_bottle_rinse_asks_for_the_bottle() -> None:
    assert desk(larkmoor()).hears("RINSE") == "ask: Rinse what?"


def test_a_stop_that_says_rinse_and_sign_ends_by_rinse() -> None:
    world = shop()
    car, _ = working(world, touches=["paint"])
    sour, white = limed(world), opened(world, bleach(world))
    here = desk(world)
    here.hears(car.code, sour, "10 ml")
    spoken = here.say(white)
    assert spoken["says"] == (
        "Brack bleach and Brack lime remover follow one another on this car without a rinse."
    )
    assert spoken["next"] == "Rinse car and floor with water to a clear drain, and sign the rinse."

    assert here.hears("RINSE") == ADDED
    assert not here.hears(white).startswith("stop: ")


def test_the_rinse_that_was_added_is_a_step_signed_now_here_by_who_said_it_and_undo_takes_it_away() -> None:
    world = shop()
    car, now = working(world)
    here = desk(world)

    assert here.hears(car.code, "RINSE") == ADDED

    added = Step.objects.get(job=car, rinses=True)
    assert (added.name, added.stage, added.bay) == ("Rinse to a clear drain", now.stage, world.bay_1)
    assert (added.person, added.signed_by, added.signed_at) == (world.tomas, world.tomas, added.starts_at)
    assert here.hears("UNDO") == (
        "recorded: Taken back: the signature under Rinse to a clear drain on Grey estate."
    )
    assert not Step.objects.filter(job=car, rinses=True).exists()


def test_a_job_without_steps_is_rinsed_too() -> None:
    world = larkmoor()
    car = job(world, NOON)

    assert desk(world).hears(car.code, "RINSE") == ADDED
    assert Step.objects.get(job=car).stage == "wash"


def test_a_planned_rinse_is_signed_before_one_is_added() -> None:
    world = shop()
    car, _ = working(world)
    rinse = step(car, "Rinse wheels", after_hours=1)
    Step.objects.filter(pk=rinse.pk).update(rinses=True)
    here = desk(world)

    assert here.hears(car.code, "RINSE") == (
        "recorded: Signed Rinse wheels on Grey estate: rinsed to a clear drain."
    )
    assert here.hears("RINSE") == ADDED


def mixed(world: World, car: str) -> tuple[object, str]:
    """Return a station at which a spray bottle of soap is in hand for a car, and the bottle's code."""
    drum, empty = opened(world, plain(world, "Fenmoor soap", "shampoo")), spray_bottle(world).code
    here = desk(world)
    here.hears(drum, "FILL", "neat", empty, f"{LITRE // ML // 2} ml", car)
    return here, empty


def test_with_a_bottle_of_our_own_in_hand_rinse_means_the_car_where_something_on_it_wants_rinsing() -> None:
    world = shop()
    car, _ = working(world, touches=["paint"])
    sour = limed(world)
    here, spray = mixed(world, car.code)
    here.hears(sour, "10 ml", spray, "20 ml")  # type: ignore[attr-defined]

    spoken = here.say("RINSE")  # type: ignore[attr-defined]

    assert f"{spoken['grade']}: {spoken['says']}" == ADDED
    assert spoken["next"] == (
        f"What comes after it may begin. RINSE BOTTLE rinses out Fenmoor soap {spray[:4]}."
    )
    assert here.hears("RINSE BOTTLE").startswith("ask: Fenmoor soap ")  # type: ignore[attr-defined]
    assert kinds(here.say("YES")) == ["count", "rinse"]  # type: ignore[attr-defined]


def test_with_a_bottle_of_our_own_in_hand_rinse_means_the_bottle_where_nothing_on_the_car_wants_it() -> None:
    world = shop()
    car, _ = working(world)
    here, spray = mixed(world, car.code)
    here.hears(spray, "20 ml")  # type: ignore[attr-defined]

    assert here.hears("RINSE").endswith("Pour it away and rinse?")  # type: ignore[attr-defined]


def test_an_acid_that_was_declared_and_rinsed_off_stops_no_soap_of_its_step() -> None:
    world = shop()
    car, _ = working(world)
    sour, mild = opened(world, wheel_acid(world)), opened(world, plain(world, "Fenmoor soap", "shampoo"))
    here = desk(world)
    here.hears(car.code, sour, "ALREADY", "10 ml")
    assert here.hears(mild) == "stop: No calcium gluconate gel in date is in reach of Bay 1."

    here.hears("RINSE")

    assert here.hears(mild, "10 ml").startswith("recorded: ")


# The check afterwards


def test_an_acid_that_went_on_last_asks_for_its_rinse_until_one_is_signed_after_it() -> None:
    world = shop()
    car, _ = working(world, touches=["paint"])
    here, sour = desk(world), limed(world)
    assert found(car, "reaction.rinse") == []
    here.hears(car.code, sour, "10 ml")

    asked = found(car, "reaction.rinse")

    assert [one.grade for one in asked] == ["ask"]
    at = f"{Movement.objects.get(kind='use').happened_at:%H:%M}"
    assert asked[0].says == (
        f"Brack lime remover went onto this car on Wednesday {at}, and no rinse was signed since."
    )
    assert asked[0].do == (
        "Rinse car and floor with water to a clear drain, then scan the car and RINSE: before the next step, "
        "and before the car leaves."
    )
    # More of the same needs no rinse first.
    assert here.hears(sour, "10 ml").startswith("recorded: ")
    here.hears("RINSE")
    assert found(car, "reaction.rinse") == []
    here.hears(sour, "10 ml")
    assert len(found(car, "reaction.rinse")) == 1


@pytest.mark.parametrize(
    ("after", "because"), [("soap", "soap went on last, and water with it"), ("plan", "a rinse is planned")]
)
def test_a_wash_after_it_or_a_planned_rinse_asks_nothing(after: str, because: str) -> None:
    world = shop()
    car, _ = working(world)
    here = desk(world)
    here.hears(car.code, limed(world), "10 ml")
    if after == "soap":
        here.hears(opened(world, plain(world, "Fenmoor soap", "shampoo")), "10 ml")
    else:
        rinse = step(car, "Rinse wheels", after_hours=1)
        Step.objects.filter(pk=rinse.pk).update(rinses=True)

    assert found(car, "reaction.rinse") == [], because
