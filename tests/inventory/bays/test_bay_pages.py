"""The bays' pages: what is refused first, then what a reading, a source, a place's air leave behind."""

from datetime import timedelta
from decimal import Decimal

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from inventory.models import IgnitionSource, WeatherReading
from tests import world as w
from tests.world import World

pytestmark = pytest.mark.django_db
READING = {"air_c": "19.5", "panel_c": "18.5", "humidity": "54"}


@pytest.fixture
def tomas(client: Client, world: World) -> Client:
    """The browser in which the technician is signed in."""
    client.force_login(world.tomas)
    return client


def page(client: Client, world: World, name: str = "bay") -> str:
    """Return the text of a bay's page."""
    return client.get(reverse(f"bays:{name}", args=[world.bay_2.code])).content.decode()


def lamp(world: World) -> IgnitionSource:
    """Put a lamp into Bay 2."""
    return IgnitionSource.objects.create(place=world.bay_2, name="Lamp")


def test_a_viewer_reads_and_changes_nothing(client: Client, world: World) -> None:
    client.force_login(world.wren)
    source = lamp(world)
    assert "Keep this reading" not in page(client, world)
    assert client.post(reverse("bays:read", args=[world.bay_2.code]), READING).status_code == 403
    said = client.post(reverse("bays:spark", args=[world.bay_2.code, source.pk]), {"state": "off"})
    assert said.status_code == 403
    assert WeatherReading.objects.count() == 0


def test_a_technician_does_not_change_the_air_of_a_place(tomas: Client, world: World) -> None:
    assert tomas.post(reverse("bays:air", args=[world.bay_2.code]), {"volume_m3": 1}).status_code == 403


def test_nothing_is_written_by_looking(tomas: Client, world: World) -> None:
    source = lamp(world)
    assert tomas.get(reverse("bays:read", args=[world.bay_2.code])).status_code == 405
    assert tomas.get(reverse("bays:spark", args=[world.bay_2.code, source.pk])).status_code == 405


def test_another_shop_s_bay_and_step_are_not_here(tomas: Client) -> None:
    other = w.larkmoor("elsewhere")
    step = w.step(w.job(other), bay=other.bay_2)
    assert tomas.get(reverse("bays:bay", args=[other.bay_2.code])).status_code == 404
    assert tomas.get(reverse("bays:step", args=[step.code])).status_code == 404


@pytest.mark.parametrize(
    ("field", "typed", "says"),
    [
        ("humidity", "0", "Ensure this value is greater than or equal to 1."),
        ("humidity", "101", "Ensure this value is less than or equal to 100."),
        ("air_c", "70", "Ensure this value is less than or equal to 60."),
        ("air_c", "warm", "Enter a number."),
        ("air_c", "", "This field is required."),
    ],
)
def test_a_reading_that_cannot_be_is_refused_and_what_was_typed_stays(
    tomas: Client, world: World, field: str, typed: str, says: str
) -> None:
    answer = tomas.post(reverse("bays:read", args=[world.bay_2.code]), READING | {field: typed})
    text = answer.content.decode()
    assert says in text
    assert 'value="18.5"' in text
    assert WeatherReading.objects.count() == 0


def test_a_reading_is_kept_with_who_took_it_and_the_page_says_its_dew_point(
    tomas: Client, world: World
) -> None:
    """19.5 °C and 54 %: g = ln 0.54 + 17.62 · 19.5 / 262.62 = 0.6921; 243.12 g / (17.62 − g) = 9.94 °C."""
    assert "Nobody has measured here in the last two hours." in page(tomas, world)
    tomas.post(reverse("bays:read", args=[world.bay_2.code]), READING)
    [row] = WeatherReading.objects.all()
    assert (row.place, row.by, row.air_c, row.panel_c, row.humidity) == (
        world.bay_2, world.tomas, Decimal("19.5"), Decimal("18.5"), Decimal("54.0")
    )  # fmt: skip
    text = page(tomas, world)
    assert "The weather suits a coat." in text
    assert "<dd>9.9 °C</dd>" in text
    assert "8.6 K above the dew point" in text


def test_a_panel_nobody_measured_may_stay_empty(tomas: Client, world: World) -> None:
    tomas.post(reverse("bays:read", args=[world.bay_2.code]), READING | {"panel_c": ""})
    assert WeatherReading.objects.get().panel_c is None
    assert "The panel was not measured" in page(tomas, world)


def test_a_reading_of_this_morning_is_no_longer_the_air_of_now(tomas: Client, world: World) -> None:
    old = timezone.now() - timedelta(hours=3)
    WeatherReading.objects.create(
        place=world.bay_2, taken_at=old, air_c=20, panel_c=20, humidity=50, by=world.tomas
    )
    text = page(tomas, world)
    assert "Nobody has measured here in the last two hours." in text
    assert "Last reading" in text
    assert "Air now" not in text


def test_who_says_that_a_source_is_off_is_kept(tomas: Client, world: World) -> None:
    source = lamp(world)
    assert "Not confirmed off." in page(tomas, world)
    tomas.post(reverse("bays:spark", args=[world.bay_2.code, source.pk]), {"state": "off"})
    source.refresh_from_db()
    assert (source.state, source.said_by) == ("off", world.tomas)
    assert source.said_at is not None
    tomas.post(reverse("bays:spark", args=[world.bay_2.code, source.pk]), {"state": "unknown"})
    source.refresh_from_db()
    assert source.state == "off"


def test_the_owner_says_the_air_of_a_place_and_what_may_spark_there(ines: Client, world: World) -> None:
    source = lamp(world)
    source.state = "off"
    source.save()
    typed = {"volume_m3": "160", "air_m3_h": "0", "mixing_k": "3", "sources": "Lamp\n\n Heater \nLamp"}
    ines.post(reverse("bays:air", args=[world.bay_2.code]), typed)
    world.bay_2.refresh_from_db()
    assert (world.bay_2.volume_m3, world.bay_2.air_m3_h) == (160, 0)
    kept = world.bay_2.ignition_sources.order_by("name").values_list("name", "state")
    assert list(kept) == [("Heater", "unknown"), ("Lamp", "off")]
    ines.post(reverse("bays:air", args=[world.bay_2.code]), typed | {"sources": "Heater"})
    assert list(world.bay_2.ignition_sources.values_list("name", flat=True)) == ["Heater"]


def test_the_owner_says_what_each_source_is_and_is_asked_for_a_new_one(ines: Client, world: World) -> None:
    source, address = lamp(world), reverse("bays:air", args=[world.bay_2.code])
    asked = ines.post(address, {"sources": "Lamp\nBig heater"}, follow=True).content.decode()
    assert "Say of each new source what it is, and keep it once more." in asked
    assert "Big heater is" in asked

    big = world.bay_2.ignition_sources.get(name="Big heater")
    sorts = {f"sort_{source.pk}": "lamp", f"sort_{big.pk}": "fuel_heater"}
    page = ines.post(address, {"sources": "Lamp\nBig heater", **sorts}, follow=True).content.decode()
    assert dict(world.bay_2.ignition_sources.values_list("name", "sort")) == {
        "Lamp": "lamp",
        "Big heater": "fuel_heater",
    }
    assert "heater that burns fuel" in page


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ({"volume_m3": "0"}, "A room has at least 1 m³. Leave it empty if nobody measured it."),
        ({"mixing_k": "0.5"}, "K lies between 1, perfect, and 20."),
        ({"near_radius_m": "9"}, "Work reaches between 0.1 and 5 m."),
        ({"near_speed_m_min": "0"}, "Air drifts by at 0.1 to 100 m a minute."),
        ({"volume_m3": "2", "near_radius_m": "2"}, "Half a ball of 2 m is larger than the room of 2 m³."),
        ({"sources": "x" * 41}, "is longer than 40 letters. Shorten it."),
    ],
)
def test_air_that_cannot_be_is_refused(ines: Client, world: World, typed: dict[str, str], says: str) -> None:
    answer = ines.post(reverse("bays:air", args=[world.bay_2.code]), typed)
    assert answer.status_code == 200
    assert says in answer.content.decode()
    world.bay_2.refresh_from_db()
    assert world.bay_2.volume_m3 is None


def test_the_list_shows_every_bay_with_its_newest_reading(tomas: Client, world: World) -> None:
    tomas.post(reverse("bays:read", args=[world.bay_2.code]), READING)
    text = tomas.get(reverse("bays:list")).content.decode()
    assert "Bay 1" in text
    assert "19.5 °C" in text
    assert "Store" not in text


def test_a_panel_below_the_dew_point_is_called_wet(tomas: Client, world: World) -> None:
    tomas.post(reverse("bays:read", args=[world.bay_2.code]), READING | {"panel_c": "8"})
    assert "below the dew point, so it is wet or will be" in page(tomas, world)
    tomas.post(reverse("bays:read", args=[world.bay_2.code]), READING | {"panel_c": "10"})
    assert "0.1 K above the dew point (1 K is 1 °C), at least 3 above is wanted" in page(tomas, world)
