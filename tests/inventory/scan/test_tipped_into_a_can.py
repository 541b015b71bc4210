"""Tipping a bottle into a waste can: against what went into it since somebody emptied and rinsed it."""

import pytest

from inventory.models import Container, Movement, Place, PlaceCheck, Product
from tests.inventory.scan.desk import desk, kinds
from tests.world import (
    LITRE,
    World,
    bleach,
    bottle,
    larkmoor,
    lime_remover,
    pack,
    reactive,
    soap,
    spray_bottle,
)

pytestmark = pytest.mark.django_db


@pytest.fixture
def world() -> World:
    return larkmoor()


def can(world: World, name: str = "Waste can") -> Place:
    return Place.objects.create(shop=world.shop, name=name, kind="can")


def hardener(world: World) -> Product:
    return reactive(world, "Marl hardener", "other", "18")


def is_here(container: Container) -> bool:
    container.refresh_from_db()
    return container.state != "gone"


def test_acid_is_never_tipped_into_a_can_that_holds_bleach(world: World) -> None:
    there, here = can(world), desk(world)
    white, sour = bottle(world, bleach(world), LITRE), bottle(world, lime_remover(world), LITRE)
    here.hears(white.code, "DISCARD", there.code)

    spoken = [here.say(line) for line in (sour.code, "DISCARD", there.code)][-1]

    assert spoken["grade"] == "stop"
    assert spoken["says"].startswith("Brack bleach and Brack lime remover never go into one vessel.")
    assert spoken["next"] == (
        "Waste can holds Brack bleach. Take another can, or empty and rinse Waste can and scan its code to "
        "say so."
    )
    assert here.hears("YES") == "tell: There is no question to answer."
    assert is_here(sour)


def test_the_same_two_go_into_the_can_where_nobody_knows_what_it_holds(world: World) -> None:
    """The twin: without the first entry nothing would be refused."""
    there, here = can(world), desk(world)
    sour = bottle(world, lime_remover(world), LITRE)

    said = here.hears(sour.code, "DISCARD", there.code)

    assert said == f"recorded: Discarded Brack lime remover {sour.code[:4]} with 1 l in it, into Waste can."
    assert Movement.objects.get(kind="discard").place == there


def test_another_can_is_the_way_out(world: World) -> None:
    there, other, here = can(world), can(world, "Acid can"), desk(world)
    white, sour = bottle(world, bleach(world), LITRE), bottle(world, lime_remover(world), LITRE)
    here.hears(white.code, "DISCARD", there.code)
    here.hears(sour.code, "DISCARD", there.code)

    assert here.hears("DISCARD", other.code).startswith("recorded: Discarded Brack lime remover")
    assert not is_here(sour)


def test_emptying_and_rinsing_it_is_the_other_way_out(world: World) -> None:
    there, here = can(world), desk(world)
    white, sour = bottle(world, bleach(world), LITRE), bottle(world, lime_remover(world), LITRE)
    here.hears(white.code, "DISCARD", there.code)
    here.hears(there.code, "YES")

    assert here.hears(sour.code, "DISCARD", there.code).startswith("recorded: Discarded Brack lime remover")


def test_a_can_says_what_it_holds_and_asks_whether_it_was_emptied(world: World) -> None:
    there, here = can(world), desk(world)
    assert here.hears(there.code) == "tell: Waste can is empty by the book."
    here.hears(bottle(world, soap(world), LITRE).code, "DISCARD", there.code)
    here.hears(
        bottle(world, reactive(world, "Fenmoor foam", "foam", "106"), LITRE).code, "DISCARD", there.code
    )

    asked = here.say(there.code)
    assert asked["says"] == "Waste can holds Fenmoor soap and Fenmoor foam. Was it emptied and rinsed?"
    assert here.hears("NO") == "tell: Nothing was recorded."
    assert not PlaceCheck.objects.exists()

    here.hears(there.code)
    assert here.hears("YES") == "recorded: Waste can is emptied and rinsed. It may take anything now."
    assert PlaceCheck.objects.get().what == "emptied"
    assert here.hears(there.code) == "tell: Waste can is empty by the book."


def test_undo_puts_what_was_in_it_back_into_the_book(world: World) -> None:
    there, here = can(world), desk(world)
    here.hears(bottle(world, bleach(world), LITRE).code, "DISCARD", there.code)
    here.hears(there.code, "YES")

    assert here.hears("UNDO") == "recorded: Taken back: the emptying of Waste can."
    assert here.hears(there.code) == "ask: Waste can holds Brack bleach. Was it emptied and rinsed?"
    here.hears("NO", "UNDO")
    assert here.hears(there.code) == "tell: Waste can is empty by the book."


@pytest.mark.parametrize(
    ("first", "second", "heard", "because"),
    [
        (("104", "hypochlorite", "10"), ("1",), "stop: ", "chlorine: GT"),
        (("18",), ("7",), "stop: ", "it hardens violently, and no maker's ratio holds in a can: P"),
        (("104",), ("29",), "stop: ", "fire: F"),
        (("107",), ("106",), "stop: ", "flammable gas: GF"),
        (("18",), ("106",), "ask: ", "pressure of gas: G"),
        (("1",), ("10",), "ask: ", "heat: H"),
        (("106",), ("106", "4"), "recorded: ", "nothing is found"),
        (
            (),
            ("1",),
            "ask: Nobody has said which reactivity groups First belongs to",
            "unknown is not nothing",
        ),
    ],
)
def test_what_it_does_in_one_vessel_decides(world: World, first, second, heard: str, because: str) -> None:
    there, here = can(world), desk(world)
    one = bottle(world, reactive(world, "First", "other", *first), LITRE)
    other = bottle(world, reactive(world, "Second", "other", *second), LITRE)
    here.hears(one.code, "DISCARD", there.code)

    assert here.hears(other.code, "DISCARD", there.code).startswith(heard), because
    if heard.startswith("ask"):
        assert here.hears("YES").startswith("recorded: Discarded Second")


def test_the_water_of_a_mix_is_in_the_can_too(world: World) -> None:
    there, here = can(world), desk(world)
    drum, spray = bottle(world, soap_concentrate(world), LITRE), spray_bottle(world)
    here.hears(drum.code, "FILL", "1:10", "100 ml", spray.code, "DONE")
    here.hears(spray.code, "DISCARD", there.code)

    said = here.hears(bottle(world, hardener(world), LITRE).code, "DISCARD", there.code)

    assert said.startswith("ask: Marl hardener and Neat oil react in one vessel. Isocyanate with water gives")


def soap_concentrate(world: World) -> Product:
    """Nothing in it meets an isocyanate but the water that it is mixed with."""
    return reactive(world, "Neat oil", "other", "29")


def test_pads_and_towels_are_not_judged(world: World) -> None:
    there, here = can(world), desk(world)
    here.hears(bottle(world, bleach(world), LITRE).code, "DISCARD", there.code)
    pad = bottle(world, reactive(world, "Yellow pad", "pad"), 1)

    assert here.hears(pad.code, "DISCARD", there.code).startswith("recorded: Discarded Yellow pad")


def test_a_can_scanned_with_a_bottle_in_hand_asks_before_it_is_tipped_in(world: World) -> None:
    there, here = can(world), desk(world)
    mild = bottle(world, soap(world), LITRE)

    asked = [here.say(line) for line in (mild.code, there.code)][-1]
    assert (asked["grade"], asked["says"]) == (
        "ask",
        f"Tip Fenmoor soap {mild.code[:4]} into Waste can, 1 l?",
    )
    assert is_here(mild)
    assert kinds(here.say("YES")) == ["discard"]
    assert not is_here(mild)


def test_move_to_a_can_is_tipping_it_in(world: World) -> None:
    there, here = can(world), desk(world)
    mild = bottle(world, soap(world), LITRE)
    assert here.hears(mild.code, "MOVE", there.code).startswith("ask: Tip Fenmoor soap")


def test_where_there_is_no_can_discard_says_what_it_always_said(world: World) -> None:
    here, mild = desk(world), bottle(world, soap(world), LITRE)
    assert (
        here.hears(mild.code, "DISCARD")
        == f"recorded: Discarded Fenmoor soap {mild.code[:4]} with 1 l in it."
    )


def test_what_leaves_in_its_own_bottle_goes_into_no_can(world: World) -> None:
    there, here = can(world), desk(world)
    white = bottle(world, bleach(world), LITRE)

    asked = [here.say(line) for line in (white.code, "DISCARD")][-1]
    assert asked["says"] == f"Into which can does Brack bleach {white.code[:4]} go, with 1 l in it?"
    assert here.hears("DONE").startswith("recorded: Discarded Brack bleach")
    assert Movement.objects.get(kind="discard").place is None
    assert here.hears(there.code) == "tell: Waste can is empty by the book."


def test_a_store_is_no_can(world: World) -> None:
    can(world)
    here, mild = desk(world), bottle(world, soap(world), LITRE)
    assert here.hears(mild.code, "DISCARD", world.store.code) == "ask: Store is no can."
    assert is_here(mild)


def test_a_delivery_is_not_kept_in_a_can(world: World) -> None:
    there, here = can(world), desk(world)
    of = pack(soap(world), LITRE)

    said = here.hears("RECEIVE", of.product.code, "1", "NO LOT", "NO DATE", there.code)

    assert said == "ask: Waste can is a can: nothing is kept in it."
    assert here.hears(world.store.code).startswith("recorded: Received 1 bottle of Fenmoor soap")
