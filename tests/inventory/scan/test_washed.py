"""WASHED at the station: by scanner alone, also with a car in hand, and taken back by UNDO."""

from datetime import timedelta

import pytest

from inventory.codes import code_of
from inventory.models import Container, Movement, Washed
from tests.inventory.scan.desk import desk, kinds
from tests.world import LITRE, NOON, World, bottle, job, product, soap, step

pytestmark = pytest.mark.django_db
WASHED, UNDO = code_of("washed"), code_of("undo")
STAYS = "What single-stage paint, metal or a coating left in it stays."


def pad(world: World, name: str = "Dunnock pad", **facts: object) -> Container:
    made = product(world, name, "pad", dimension="pieces", noun="pad", needs_sheet=False, **facts)
    return bottle(world, made, 1, opened_at=NOON - timedelta(days=20), place=world.bay_1)


def test_a_bottle_is_not_washed_and_nothing_is_kept(world: World) -> None:
    kept = bottle(world, soap(world), LITRE)
    here = desk(world)
    assert here.hears(kept.code, WASHED) == "ask: What was washed?"
    assert here.hears(kept.code) == (
        f"stop: Fenmoor soap {kept.code[:4]} is no pad and no towel, so its washing is not kept."
    )
    assert not Washed.objects.exists()


def test_a_pad_in_hand_is_washed_by_one_card_and_undo_takes_it_back(world: World) -> None:
    kept = pad(world, wear_uses=30)
    here = desk(world)
    spoken = [here.say(line) for line in (kept.code, WASHED)]
    assert "WASHED" in [key["line"] for key in spoken[0]["keys"]]
    assert (spoken[1]["grade"], spoken[1]["says"]) == ("recorded", f"Washed Dunnock pad {kept.code[:4]}.")
    assert spoken[1]["next"] == STAYS
    row = Washed.objects.get()
    assert (row.container, row.by) == (kept, world.tomas)

    assert here.hears(UNDO) == f"recorded: Taken back: the washing of Dunnock pad {kept.code[:4]}."
    assert not Washed.objects.exists()


def test_the_word_that_is_typed_means_the_same(world: World) -> None:
    kept = pad(world, wear_uses=30)
    assert desk(world).hears("washed", kept.code) == f"recorded: Washed Dunnock pad {kept.code[:4]}."


def test_undo_takes_back_one_wash_and_leaves_the_others(world: World) -> None:
    first, second = pad(world, wear_uses=30), pad(world, "Brack pad", wear_uses=30)
    here = desk(world)
    here.hears(WASHED, first.code, WASHED, second.code, UNDO)
    assert [row.container for row in Washed.objects.all()] == [first]
    here.hears(UNDO)
    assert not Washed.objects.exists()


def test_with_a_car_in_hand_the_pad_after_the_card_is_washed_and_not_used(world: World) -> None:
    kept, car = pad(world, wear_uses=30), job(world)
    step(car)
    here = desk(world)
    here.hears(car.code, WASHED)
    spoken = here.say(kept.code)
    assert (spoken["grade"], kinds(spoken)) == ("recorded", [])
    assert Washed.objects.count() == 1
    assert not Movement.objects.filter(kind="use").exists()
    # the twin: without the card before it, the same scan is a use on the car
    assert kinds(here.say(kept.code)) == ["use"]


def test_washed_twice_is_said_and_kept_once(world: World) -> None:
    kept = pad(world, wear_uses=30)
    here = desk(world)
    code = f"{kept.code[:4]} {kept.code[4:]}"
    assert here.hears(WASHED, kept.code, WASHED, kept.code) == (
        f"stop: Dunnock pad {code} was washed already, and not used since. Nothing was added."
    )
    assert Washed.objects.count() == 1


def test_a_pad_that_is_not_used_again_says_why(world: World) -> None:
    kept = pad(world)
    said = desk(world).hears(WASHED, kept.code)
    assert said.startswith(f"stop: Dunnock pad {kept.code[:4]} comes fresh out of its box")
    assert not Washed.objects.exists()
