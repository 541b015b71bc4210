"""What protects people here: what has died, what was run, what gloves stand; and who may say so."""

from datetime import date, timedelta

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from inventory.models import Equipment, GloveMinutes, PlaceCheck, Product
from inventory.stock.rules.acts import Act
from safety.models import DataSheet
from tests.world import NOON, World, bottle, larkmoor, person, product, record

pytestmark = pytest.mark.django_db
HOME = "people:protection"


@pytest.fixture
def tomas(world: World) -> Client:
    client = Client()
    client.force_login(world.tomas)
    return client


@pytest.fixture
def wren(world: World) -> Client:
    client = Client()
    client.force_login(world.wren)
    return client


def serving(world: World, serves: str, name: str = "Ossen item", **facts: object) -> Product:
    made = product(world, name, "protective", dimension="pieces", **facts)
    Equipment.objects.create(product=made, serves=serves)
    return made


def page(client: Client) -> str:
    return client.get(reverse(HOME)).content.decode()


def in_days(days: int) -> date:
    return timezone.localdate() + timedelta(days=days)


@pytest.mark.parametrize(
    ("ends", "says", "because"),
    [
        (-1, "out of date", "yesterday"),
        (0, "ends soon", "today is its last day"),
        (30, "ends soon", "within thirty days"),
        (31, "in date", "after that"),
    ],
)
def test_each_item_stands_with_its_date_and_place(
    wren: Client, world: World, ends: int, says: str, because: str
) -> None:
    bottle(world, serving(world, "gloves"), 5, expires_on=in_days(ends), place=world.bay_1)
    shown = page(wren)
    assert says in shown, because
    assert "Bay 1" in shown
    assert ("Some of it protects nobody any more." in shown) == (ends < 0)


def test_a_cartridge_worn_for_its_minutes_is_worn_out(wren: Client, world: World) -> None:
    made = serving(world, "cartridge", wear_minutes=60)
    box = bottle(world, made, 1, expires_on=in_days(400))
    assert "worn out" not in page(wren)

    record(world, Act("use", NOON, source=box.code, amount=0, facts={"minutes": 60}))

    assert "worn out" in page(wren)


def test_an_eyewash_that_ran_is_kept_with_who_and_when_and_a_double_tap_counts_once(
    tomas: Client, world: World
) -> None:
    world.bay_1.eyewash_at = "left of the door"
    world.bay_1.save()
    assert "Nobody has written down a run." in page(tomas)

    for _ in range(2):
        tomas.post(reverse("people:ran", args=[world.bay_1.code]))

    kept = PlaceCheck.objects.get()
    assert (kept.place, kept.what, kept.by) == (world.bay_1, "eyewash", world.tomas)
    assert "Last run on" in page(tomas)


def test_a_viewer_runs_no_eyewash_and_sees_no_button(wren: Client, world: World) -> None:
    world.bay_1.eyewash_at = "left of the door"
    world.bay_1.save()
    assert "Ran it today" not in page(wren)
    assert wren.post(reverse("people:ran", args=[world.bay_1.code])).status_code == 403
    assert not PlaceCheck.objects.exists()


def test_an_eyewash_is_run_by_a_press_not_by_a_link(tomas: Client, world: World) -> None:
    assert tomas.get(reverse("people:ran", args=[world.bay_1.code])).status_code == 405


def test_an_owner_says_what_a_product_serves_and_how_long_it_is_worn(ines: Client, world: World) -> None:
    made = product(world, "Ossen filter A2", "protective", dimension="pieces")
    assert "Nobody has said what these are for" in page(ines)

    data = {"product": made.pk, "serves": "cartridge", "filters": "A2", "wear_minutes": "480"}
    ines.post(reverse("people:new_equipment"), data)

    made.refresh_from_db()
    assert (made.equipment.serves, made.equipment.filters, made.wear_minutes) == ("cartridge", "A2", 480)
    assert "Nobody has said what these are for" not in page(ines)


def test_what_a_product_serves_is_changed_and_taken_back(ines: Client, world: World) -> None:
    made = serving(world, "cartridge", wear_minutes=480)
    ines.post(reverse("people:equipment", args=[made.code]), {"product": made.pk, "serves": "goggles"})
    made.refresh_from_db()
    assert (made.equipment.serves, made.wear_minutes) == ("goggles", None)

    ines.post(reverse("people:forget_equipment", args=[made.code]))

    assert not Equipment.objects.exists()


def test_a_shampoo_protects_nobody(ines: Client, world: World) -> None:
    soap = product(world, "Fenmoor shampoo", "shampoo")
    ines.post(reverse("people:new_equipment"), {"product": soap.pk, "serves": "gloves"})
    assert not Equipment.objects.exists()


def test_a_gloves_minutes_are_typed_with_their_source_and_said_anew_replace_the_old(
    ines: Client, world: World
) -> None:
    gloves = serving(world, "gloves", "Ossen gloves")
    wipe = product(world, "Hollin panel wipe", "solvent")
    wipe.sheet = DataSheet.objects.create(supplier="Hollin", title="wipe")
    wipe.save()
    for minutes in ("30", "60"):
        data = {"against": wipe.code, "minutes": minutes, "source": "table of May 2026"}
        ines.post(reverse("people:minutes", args=[gloves.code]), data)

    assert GloveMinutes.objects.get().minutes == 60
    assert "table of May 2026" in page(ines)


def test_goggles_have_no_glove_minutes(ines: Client, world: World) -> None:
    made = serving(world, "goggles")
    assert ines.get(reverse("people:minutes", args=[made.code])).status_code == 404


@pytest.mark.parametrize("name", ["new_equipment", "equipment", "forget_equipment", "minutes"])
def test_a_technician_says_nothing_about_equipment(tomas: Client, world: World, name: str) -> None:
    made = serving(world, "gloves")
    address = reverse(f"people:{name}", args=[] if name == "new_equipment" else [made.code])
    assert tomas.post(address, {}).status_code == 403
    assert Equipment.objects.count() == 1


def test_nothing_of_another_shop_is_seen_or_changed(ines: Client, world: World) -> None:
    other = larkmoor("elsewhere")
    made = serving(other, "gloves", "Corrin gloves")
    bottle(other, made, 5)
    person(other.shop, "Pia", "technician")

    assert "Corrin gloves" not in page(ines)
    assert ines.get(reverse("people:equipment", args=[made.code])).status_code == 404
    assert ines.post(reverse("people:forget_equipment", args=[made.code])).status_code == 404
    assert ines.post(reverse("people:ran", args=[other.bay_1.code])).status_code == 404
