"""Putting something where it must not stand, or pouring it onto what it must not meet."""

import pytest

from inventory.models import Container, Movement, Place
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
)

pytestmark = pytest.mark.django_db


def cabinet(world: World, **facts: object) -> Place:
    return Place.objects.create(shop=world.shop, name="Cabinet A", kind="cabinet", **facts)


def where(container: Container) -> Place | None:
    container.refresh_from_db()
    return container.place


BOTH = "Brack bleach and Brack lime remover"
NEVER = f"{BOTH} never stand in one cabinet, on one shelf or tray: bleach beside acid."


def test_acid_is_not_put_beside_bleach() -> None:
    world = larkmoor()
    there = cabinet(world)
    bottle(world, bleach(world), LITRE, place=there)
    sour = bottle(world, lime_remover(world), LITRE)
    here = desk(world)

    spoken = [here.say(line) for line in (sour.code, "MOVE", there.code)][-1]

    assert spoken["grade"] == "stop"
    assert spoken["says"].startswith(NEVER)
    assert spoken["next"] == "Move one of them to another cabinet before anything else."
    assert where(sour) == world.store
    assert here.hears("YES") == "tell: There is no question to answer."


def test_it_is_stopped_without_a_command_too() -> None:
    world = larkmoor()
    there = cabinet(world)
    bottle(world, bleach(world), LITRE, place=there)

    assert (
        desk(world)
        .hears(bottle(world, lime_remover(world), LITRE).code, there.code)
        .startswith("stop: Brack")
    )


def test_soap_stands_beside_bleach_and_acid_stands_where_no_bleach_is() -> None:
    world = larkmoor()
    there, other = cabinet(world), Place.objects.create(shop=world.shop, name="Cabinet B", kind="cabinet")
    bottle(world, bleach(world), LITRE, place=there)
    here = desk(world)

    mild, sour = bottle(world, soap(world), LITRE), bottle(world, lime_remover(world), LITRE)

    assert here.hears(mild.code, there.code) == f"recorded: Moved Fenmoor soap {mild.code[:4]} to Cabinet A."
    assert here.hears(sour.code, other.code).startswith("recorded: Moved Brack lime remover")


@pytest.mark.parametrize(
    ("to", "heard", "because"),
    [
        ("Tray 2", f"stop: {NEVER}", "another tray of the same cabinet is the same air"),
        ("Cabinet A", f"stop: {NEVER}", "so is the cabinet itself"),
        ("Tray of B", "recorded: Moved Brack lime remover", "another cabinet is the way out"),
    ],
)
def test_a_tray_of_its_own_does_not_part_bleach_and_acid_in_one_cabinet(to, heard, because) -> None:
    world = larkmoor()
    there, other = cabinet(world), Place.objects.create(shop=world.shop, name="Cabinet B", kind="cabinet")
    first, *_ = (
        Place.objects.create(shop=world.shop, name=name, kind="tray", within=within)
        for name, within in (("Tray 1", there), ("Tray 2", there), ("Tray of B", other))
    )
    bottle(world, bleach(world), LITRE, place=first)

    said = desk(world).hears(bottle(world, lime_remover(world), LITRE).code, Place.objects.get(name=to).code)

    assert said.startswith(heard), because


def test_a_tray_of_its_own_is_enough_for_what_only_asks() -> None:
    world = larkmoor()
    there = cabinet(world)
    tray = Place.objects.create(shop=world.shop, name="Tray 1", kind="tray", within=there)
    bottle(world, reactive(world, "Fenmoor iron remover", "iron", "20", "106"), LITRE, place=there)
    sour = bottle(world, lime_remover(world), LITRE)

    assert desk(world).hears(sour.code, tray.code).startswith("recorded: Moved Brack lime remover")


@pytest.mark.parametrize("kind", ["waste", "van"])
def test_where_things_are_for_a_while_only_it_is_asked_so_that_they_can_leave(kind: str) -> None:
    world = larkmoor()
    there = Place.objects.create(shop=world.shop, name="There", kind=kind)
    bottle(world, bleach(world), LITRE, place=there)
    here = desk(world)

    assert here.hears(bottle(world, lime_remover(world), LITRE).code, there.code).startswith(f"ask: {BOTH}")
    assert here.hears("YES").startswith("recorded: Moved Brack lime remover")


def test_an_empty_bottle_of_bleach_harms_nobody() -> None:
    world = larkmoor()
    there = cabinet(world)
    gone = bottle(world, bleach(world), LITRE, place=there)
    Container.objects.filter(pk=gone.pk).update(content=0, state="empty")

    assert (
        desk(world).hears(bottle(world, lime_remover(world), LITRE).code, there.code).startswith("recorded: ")
    )


def test_in_a_bay_closed_bottles_are_told_and_recorded() -> None:
    world = larkmoor()
    bottle(world, bleach(world), LITRE, place=world.bay_1)
    here = desk(world)

    spoken = [here.say(line) for line in (bottle(world, lime_remover(world), LITRE).code, world.bay_1.code)][
        -1
    ]

    assert spoken["grade"] == "recorded"
    assert spoken["next"].startswith("Brack bleach and Brack lime remover share a bay.")


def test_an_ask_is_asked_once_and_a_yes_puts_it_there() -> None:
    world = larkmoor()
    there = cabinet(world)
    bottle(world, reactive(world, "Fenmoor iron remover", "iron", "20", "106"), LITRE, place=there)
    sour = bottle(world, lime_remover(world), LITRE)
    here = desk(world)

    assert here.hears(sour.code, there.code).startswith(
        "ask: Brack lime remover and Fenmoor iron remover stand together, and harm if they leak."
    )
    assert where(sour) == world.store
    assert here.hears("YES").startswith("recorded: Moved Brack lime remover")
    assert where(sour) == there
    assert Movement.objects.last().facts["answered"] == ["beside.reaction.place"]


def test_what_comes_in_is_not_put_beside_it_either_and_another_place_is_scanned_for_it() -> None:
    world = larkmoor()
    there, other = cabinet(world), Place.objects.create(shop=world.shop, name="Cabinet B", kind="cabinet")
    bottle(world, bleach(world), LITRE, place=there)
    sour = lime_remover(world)
    sour.dated = False
    sour.save()
    case = pack(sour, LITRE, gtin="09520000001148")
    here = desk(world)

    spoken = [here.say(line) for line in (case.gtin, "1", "NO LOT", there.code)][-1]

    assert spoken["grade"] == "stop"
    assert spoken["says"].startswith(NEVER)
    assert spoken["next"].endswith("Scan the place where it goes instead.")
    assert not Container.objects.filter(product=sour).exists()
    assert here.hears(other.code).startswith("recorded: Received 1 bottle of Brack lime remover")
    assert where(Container.objects.get(product=sour)) == other


def test_more_that_burns_than_the_fire_area_may_hold_is_asked_with_both_amounts() -> None:
    world = larkmoor()
    hall = Place.objects.create(shop=world.shop, name="Shelf", kind="shelf", fire_area="hall",
                                fire_area_limit_l=5)  # fmt: skip
    wipe = product(world, "Hollin panel wipe", "solvent", needs_sheet=False)
    sheet = DataSheet.objects.create(supplier="Hollin", title="Panel wipe")
    SheetVersion.objects.create(
        sheet=sheet, revision_on=NOON.date(), hazards=["Flam. Liq. 2 H225"], typed_on=NOON.date(),
        confirmed_on=NOON.date(), confirmed_by="Ines", flash_point_c=12,
    )  # fmt: skip
    wipe.sheet = sheet
    wipe.save()
    world.shop.country = "DE"
    world.shop.save()
    bottle(world, wipe, 3 * LITRE, place=hall)
    here = desk(world)

    assert here.hears(bottle(world, wipe, 2 * LITRE).code, hall.code).startswith("recorded: ")
    spoken = [here.say(line) for line in (bottle(world, wipe, LITRE).code, hall.code)][-1]

    assert spoken["grade"] == "ask"
    assert "holds 6 l of what burns" in spoken["says"]
    assert "at most 5 l may be there" in spoken["says"]
    assert here.hears("YES").startswith("recorded: ")
