"""Pouring something onto what it must not meet, in one bottle."""

import pytest

from inventory.models import Container, KitPart, Place
from safety.models import DataSheet, SheetVersion
from tests.inventory.scan.desk import desk
from tests.world import (
    LITRE,
    NOON,
    World,
    bleach,
    bottle,
    larkmoor,
    lime_remover,
    pack,
    product,
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
        (
            ("13", "water-sensitive"),
            "1:10",
            "stop: Tidewall coating and water never go",
            "alkoxysilane: GF, GT",
        ),
        (("18",), "1:10", "ask: Tidewall coating and water react in one vessel.", "an isocyanate: H, G"),
        (("18",), "neat", "recorded: Filled", "no water goes in"),
        (("18", "106"), "1:10", "recorded: Filled", "a hardener that is sold in water has met it"),
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


def test_a_hardener_that_is_thinned_with_water_is_asked_for_each_bottle() -> None:
    world = larkmoor()
    drum = bottle(world, reactive(world, "Marl hardener", "other", "18"), LITRE)
    one, other, here = spray_bottle(world), spray_bottle(world), desk(world)

    spoken = [here.say(line) for line in (drum.code, "FILL", "1:10", "100 ml", one.code)][-1]

    assert spoken["grade"] == "ask"
    assert spoken["says"] == (
        "Marl hardener and water react in one vessel. Isocyanate with water gives off carbon dioxide: never "
        "close a can that met water."
    )
    assert spoken["next"] == (
        "Fill it neat, or thin it with what its label names. Where its maker wants water: YES, and use it "
        "up; never close a bottle that holds both."
    )
    assert here.hears("YES").startswith(f"recorded: Filled {one.code[:4]}")
    assert here.hears(other.code).startswith("ask: Marl hardener and water react")
    assert here.hears("NO") == "tell: Nothing was recorded."


BONDED = "Join nozzle and container by a bonding wire before you pour; no pouring beside an ignition source."


@pytest.mark.parametrize(
    ("hazard", "flash", "told", "because"),
    [
        ("Flam. Liq. 2 H225", 12, True, "category 2"),
        ("Flam. Liq. 1 H224", -20, True, "category 1"),
        ("Flam. Liq. 3 H226", 30, True, "category 3 below 37.8 °C"),
        ("Flam. Liq. 3 H226", 45, False, "category 3 from 37.8 °C on"),
        ("Skin Irrit. 2 H315", None, False, "it does not burn"),
    ],
)
def test_who_pours_what_lights_is_told_to_bond_before(hazard, flash, told: bool, because: str) -> None:
    world = larkmoor()
    wipe = product(world, "Panel wipe", "solvent")
    wipe.sheet = DataSheet.objects.create(supplier="Fenmoor", title="Panel wipe")
    wipe.save()
    SheetVersion.objects.create(
        sheet=wipe.sheet,
        revision_on=NOON.date(),
        typed_on=NOON.date(),
        hazards=[hazard],
        flash_point_c=flash,
    )
    drum, spray, here = bottle(world, wipe, LITRE), spray_bottle(world), desk(world)

    begun = [here.say(line) for line in (drum.code, "FILL")][-1]

    assert (BONDED in begun["next"]) is told, because
    assert here.hears("neat", "100 ml", spray.code).startswith("recorded: Filled")
