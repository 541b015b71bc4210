"""A step that names no bay and lets something go is stopped at the station: leaving it empty ends nothing."""

import pytest

from inventory.models import Movement, Step
from tests.inventory.scan.desk import desk, kinds
from tests.inventory.scan.unplanned import kept, opened, plain, shop, wipe, working
from tests.world import ML, World, need

pytestmark = pytest.mark.django_db
NO_BAY = "stop: Nobody named the bay of Wheels."


def planned(world: World, ml: int = 60, **work: object) -> tuple[str, str]:
    """Return a car's code and a bottle of the wipe that its step plans."""
    made = wipe(world)
    car, now = working(world, **work)
    need(now, made, ml * ML)
    return car.code, opened(world, made)


@pytest.mark.parametrize("ml", [60, 400])
def test_a_planned_wipe_without_a_bay_is_stopped_before_its_amount_is_known(ml: int) -> None:
    world = shop()
    car, full = planned(world, ml, bay=None)
    here = desk(world)
    here.say(car)

    spoken = here.say(full)

    assert f"{spoken['grade']}: {spoken['says']}" == NO_BAY
    assert spoken["next"] == (
        "Name the bay of Wheels: change the step on the job's page. That ends this question. "
        "Then scan it again."
    )
    assert here.hears("YES") == "tell: There is no question to answer."
    assert not Movement.objects.filter(kind="use").exists()


def test_the_same_with_its_bay_named_is_recorded() -> None:
    world = shop()
    car, full = planned(world)
    assert desk(world).hears(car, full).startswith("recorded: Hollin panel wipe ")


def test_naming_the_bay_ends_it() -> None:
    world = shop()
    car, full = planned(world, bay=None)
    here = desk(world)
    assert here.hears(car, full) == NO_BAY
    Step.objects.update(bay=world.bay_1)
    assert here.hears(car, full).startswith("recorded: Hollin panel wipe ")


def test_what_nobody_planned_is_stopped_as_well() -> None:
    world = shop()
    car, _ = working(world, bay=None)
    assert desk(world).hears(car.code, opened(world, wipe(world))) == NO_BAY


def test_soap_in_the_same_step_lets_nothing_go_and_is_left_in_peace() -> None:
    world = shop()
    car, _ = planned(world, bay=None)
    soap = plain(world, "Fenmoor soap", "shampoo")
    need(Step.objects.get(), soap, 20 * ML)
    assert desk(world).hears(car, opened(world, soap)).startswith("recorded: Fenmoor soap ")


def test_what_is_on_the_car_already_is_written_down_all_the_same() -> None:
    world = shop()
    car, full = planned(world, bay=None)
    here = desk(world)
    here.hears(car, full, "ALREADY")
    assert kinds(here.say("60 ml")) == ["use"]
    assert kept(full).content == 940 * ML
