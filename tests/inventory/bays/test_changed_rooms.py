"""What was measured in a room ends once the room is another one: by which change, where, and what is said."""

from decimal import Decimal

import pytest
from django.test import Client
from django.urls import reverse

from inventory.models import AirMeasurement, Place, Product
from tests import world as w
from tests.inventory.bays.reports import days, kept
from tests.world import World

pytestmark = pytest.mark.django_db
ROOM = {"volume_m3": "160", "air_m3_h": "960", "mixing_k": "3", "near_radius_m": "0.8", "sources": "Lamp"}
TWO = "2 measurements no longer count: the room changed. Have it measured again."


@pytest.fixture
def wipe(world: World) -> Product:
    """A panel wipe, and Bay 2 as somebody measured it: 160 m³, 960 m³/h, K 3."""
    known = {"volume_m3": 160, "air_m3_h": 960, "mixing_k": Decimal(3), "near_radius_m": Decimal("0.8")}
    Place.objects.filter(pk=world.bay_2.pk).update(**known)
    return w.hollin(world)


def change(client: Client, world: World, **changed: str) -> str:
    """Keep Bay 2's air with what changed, and return the page that follows."""
    at = reverse("bays:air", args=[world.bay_2.code])
    client.post(at, ROOM)
    return client.post(at, ROOM | changed, follow=True).content.decode()


def withdrawn(row: AirMeasurement) -> object:
    """Return on which day a measurement was withdrawn, None while it counts."""
    row.refresh_from_db()
    return row.withdrawn_on


@pytest.mark.parametrize(
    "changed",
    [{"volume_m3": "60"}, {"air_m3_h": "50"}, {"air_m3_h": ""}, {"mixing_k": "5"}, {"enclosed": "on"}],
)
def test_what_was_measured_in_another_room_counts_no_more(
    ines: Client, world: World, wipe: Product, changed: dict[str, str]
) -> None:
    one, two = kept(world, wipe, "49", "48", "47"), kept(world, wipe, "620")
    assert TWO in change(ines, world, **changed)
    assert (withdrawn(one), withdrawn(two)) == (days(0), days(0))


@pytest.mark.parametrize(
    "changed",
    [{}, {"near_radius_m": "0.7"}, {"sources": "Lamp\nHeater"}, {"mixing_k": "3.0"}],
)
def test_what_changes_no_room_ends_no_measurement(
    ines: Client, world: World, wipe: Product, changed: dict[str, str]
) -> None:
    one = kept(world, wipe, "49", "48", "47")
    assert "no longer count" not in change(ines, world, **changed)
    assert withdrawn(one) is None


def test_to_say_for_the_first_time_how_large_it_is_changes_no_room(
    ines: Client, world: World, wipe: Product
) -> None:
    Place.objects.filter(pk=world.bay_2.pk).update(volume_m3=None, air_m3_h=None, mixing_k=None)
    one = kept(world, wipe, "49", "48", "47")
    ines.post(reverse("bays:air", args=[world.bay_2.code]), ROOM)
    assert withdrawn(one) is None


def test_a_room_that_cannot_be_ends_nothing(ines: Client, world: World, wipe: Product) -> None:
    one = kept(world, wipe, "49", "48", "47")
    change(ines, world, volume_m3="0")
    assert withdrawn(one) is None


def test_only_what_counts_in_this_place_ends(ines: Client, world: World, wipe: Product) -> None:
    here, there = kept(world, wipe, "49"), kept(world, wipe, "49", place=world.bay_1)
    old = kept(world, wipe, "49", measured_on=days(-400), until_on=days(-1))
    gone = kept(world, wipe, "49", withdrawn_on=days(-5))
    said = change(ines, world, volume_m3="60")
    assert "1 measurement no longer counts: the room changed. Have it measured again." in said
    assert [withdrawn(row) for row in (here, there, old, gone)] == [days(0), None, None, days(-5)]


def test_the_page_says_before_what_a_change_ends(ines: Client, world: World, wipe: Product) -> None:
    at = [reverse(name, args=[world.bay_2.code]) for name in ("bays:air", "settings:place")]
    assert all("measured again" not in ines.get(one).content.decode() for one in at)
    kept(world, wipe, "49")
    one = (
        "1 measurement counts here: it ends when size, fresh air or mixing change. Then have it measured "
        "again."
    )
    assert all(one in ines.get(each).content.decode() for each in at)
    kept(world, wipe, "49")
    two = "2 measurements count here: they end when size, fresh air or mixing change."
    assert all(two in ines.get(each).content.decode() for each in at)


def test_a_measurement_of_the_changed_room_counts(ines: Client, world: World, wipe: Product) -> None:
    kept(world, wipe, "49")
    change(ines, world, volume_m3="60")
    new = kept(world, wipe, "49")
    ines.post(reverse("bays:air", args=[world.bay_2.code]), ROOM | {"volume_m3": "60"})
    assert withdrawn(new) is None


def test_the_settings_of_a_place_are_no_way_round_it(ines: Client, world: World, wipe: Product) -> None:
    one, two = kept(world, wipe, "49"), kept(world, wipe, "49")
    at = reverse("settings:place", args=[world.bay_2.code])
    form = {"name": "Bay 2", "kind": "bay", "read_at_m": "2", "volume_m3": "160", "air_m3_h": "960"}
    ines.post(at, form | {"task": "Wiping"})
    assert withdrawn(one) is None
    assert TWO in ines.post(at, form | {"air_m3_h": "50"}, follow=True).content.decode()
    assert (withdrawn(one), withdrawn(two)) == (days(0), days(0))
    world.bay_2.refresh_from_db()
    assert world.bay_2.air_m3_h == 50


def test_nor_are_the_tables_of_the_admin(ines: Client, world: World, wipe: Product) -> None:
    one, two = kept(world, wipe, "49"), kept(world, wipe, "49")
    at = reverse("admin:inventory_place_change", args=[world.bay_2.pk])
    page = ines.get(at)
    row = page.context["adminform"].form.initial
    form = {name: value for name, value in row.items() if value not in (None, False)}
    ines.post(at, form | {"task": "Wiping"})
    world.bay_2.refresh_from_db()
    assert (world.bay_2.task, withdrawn(one)) == ("Wiping", None)
    assert TWO in ines.post(at, form | {"volume_m3": "60"}, follow=True).content.decode()
    assert (withdrawn(one), withdrawn(two)) == (days(0), days(0))
