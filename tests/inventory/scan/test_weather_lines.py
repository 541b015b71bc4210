"""What a weather station's code or a person says in one line is kept for the bay, and taken back by UNDO."""

from decimal import Decimal

import pytest

from inventory.models import WeatherReading
from inventory.stock.conversation.lines import read_line
from tests.inventory.scan.desk import desk
from tests.world import TODAY, job, larkmoor, step

pytestmark = pytest.mark.django_db


@pytest.mark.parametrize(
    ("line", "read", "because"),
    [
        ("air 21.4 panel 19 humidity 52", ("21.4", "19", "52"), "as a person says it"),
        ("AIR 21,4 °C, PANEL 19,0 °C, RH 52 %", ("21.4", "19.0", "52"), "as an instrument prints it"),
        ("air -3 humidity 80", ("-3", "", "80"), "nobody measured the panel"),
        ("air 21.4 panel 19", None, "without its humidity it is no reading"),
        ("air tool 3", None, "words that begin alike"),
    ],
)
def test_a_line_is_a_reading_or_it_is_not(line: str, read, because: str) -> None:
    assert read_line(line, today=TODAY).weather == read, because


def test_a_reading_without_a_place_asks_where() -> None:
    assert desk(larkmoor()).hears("air 21 humidity 50") == "unknown: Measured where? No bay is in hand."
    assert not WeatherReading.objects.exists()


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("air 21 humidity 101", "Humidity lies above 0 and up to 100 %, not 101."),
        ("air 75 humidity 50", "No bay is like that: air -40 to 60 °C, a panel to 120 °C."),
        ("air 21 panel 121 humidity 50", "No bay is like that: air -40 to 60 °C, a panel to 120 °C."),
    ],
)
def test_what_cannot_be_is_refused_and_nothing_is_kept(line: str, says: str) -> None:
    world = larkmoor()

    assert desk(world, place=world.bay_1).hears(line) == f"unknown: {says}"
    assert not WeatherReading.objects.exists()


def test_it_is_kept_for_the_bay_of_the_car_in_hand() -> None:
    world = larkmoor()
    car = job(world)
    step(car, "Coating", bay=world.bay_2)
    here = desk(world, place=world.bay_1)

    said = here.hears(car.code, "air 21.4 panel 19 humidity 52")

    assert said == "recorded: Bay 2: air 21.4 °C, panel 19 °C, humidity 52 %."
    kept = WeatherReading.objects.get()
    assert (kept.place, kept.by) == (world.bay_2, world.tomas)
    assert (kept.air_c, kept.panel_c, kept.humidity) == (Decimal("21.4"), Decimal(19), Decimal(52))


def test_without_a_car_it_is_the_station_s_own_place_and_undo_takes_it_back() -> None:
    world = larkmoor()
    here = desk(world, place=world.bay_1)
    here.hears("air 21 humidity 50")
    assert WeatherReading.objects.get().place == world.bay_1

    assert here.hears("UNDO") == "recorded: Taken back: the reading in Bay 1."
    assert not WeatherReading.objects.exists()
