"""Pouring something onto what it must not meet, in one bottle."""

import pytest

from inventory.models import Container, KitPart, Place
from tests.inventory.scan.desk import desk
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


def cabinet(world: World, **facts: object) -> Place:
    return Place.objects.create(shop=world.shop, name="Cabinet A", kind="cabinet", **facts)


def where(container: Container) -> Place | None:
    container.refresh_from_db()
    return container.place


def test_acid_is_not_poured_into_a_bottle_that_held_bleach_until_that_is_rinsed() -> None:
    world = larkmoor()
    white, sour = bottle(world, bleach(world), LITRE), bottle(world, lime_remover(world), LITRE)
    spray = spray_bottle(world)
    here = desk(world)
    here.hears(white.code, "FILL", "1:10", "100 ml", spray.code, "DONE")

    spoken = [here.say(line) for line in (sour.code, "FILL", "1:10", spray.code)][-1]

    assert spoken["grade"] == "stop"
    assert "Brack bleach and Brack lime remover never go into one vessel." in spoken["says"]
    assert spoken["next"] == "Take a new bottle."
    assert [key["line"] for key in spoken["keys"]] == []
    assert here.hears("RINSE", "YES").startswith("recorded: ")
    assert here.hears(sour.code, "FILL", "1:10", "100 ml", spray.code).startswith("recorded: Filled")


def test_soap_into_a_bottle_that_held_another_soap_is_still_only_a_rinse_away() -> None:
    world = larkmoor()
    one, other = bottle(world, soap(world), LITRE), reactive(world, "Fenmoor foam", "foam", "106")
    spray = spray_bottle(world)
    here = desk(world)
    here.hears(one.code, "FILL", "1:10", "100 ml", spray.code, "DONE")

    spoken = [here.say(line) for line in (bottle(world, other, LITRE).code, "FILL", "1:10", spray.code)][-1]

    assert spoken["next"] == "RINSE it first, then fill it. Or take a new bottle."
    assert here.hears("RINSE", "YES").startswith("recorded: ")  # the bottle, not the drum it was poured from


def test_the_two_parts_of_one_kit_are_refused_for_the_rinse_alone() -> None:
    world = larkmoor()
    base, hardener = (
        reactive(world, "Marl base", "other", "7"),
        reactive(world, "Marl part B", "other", "18"),
    )
    spray, here = spray_bottle(world), desk(world)
    first, second = bottle(world, base, LITRE), bottle(world, hardener, LITRE)
    here.hears(first.code, "FILL", "neat", "100 ml", spray.code, "DONE")

    apart = [here.say(line) for line in (second.code, "FILL", "neat", spray.code)][-1]
    assert "never go into one vessel" in apart["says"]

    KitPart.objects.create(pack=pack(base, LITRE), product=hardener, amount=LITRE)
    together = [here.say(line) for line in (second.code, "FILL", "neat", spray.code)][-1]
    assert together["next"] == "RINSE it first, then fill it. Or take a new bottle."


@pytest.mark.parametrize(
    ("groups", "ratio", "heard", "because"),
    [
        (("107",), "1:10", "stop: Tidewall coating and water never go into one vessel.", "it gives off gas"),
        (("107",), "neat", "recorded: Filled", "no water goes in"),
        (("13", "water-sensitive", "106"), "1:10", "recorded: Filled", "it holds water already"),
        (("1", "2"), "1:10", "recorded: Filled", "an acid only warms up"),
    ],
)
def test_what_reacts_with_water_is_not_thinned_with_it(groups, ratio, heard, because) -> None:
    world = larkmoor()
    drum = bottle(world, reactive(world, "Tidewall coating", "coating", *groups), LITRE)
    spray, here = spray_bottle(world), desk(world)

    said = here.hears(drum.code, "FILL", ratio, "100 ml", spray.code)

    assert said.startswith(heard), because
