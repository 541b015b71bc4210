"""What a weather station's code or a person says in one line is kept for the bay, and taken back by UNDO."""

from decimal import Decimal

import pytest

from inventory.codes import AIR, HUMIDITY, PANEL, value_code
from inventory.models import WeatherReading
from inventory.stock.conversation.lines import read_line
from tests.inventory.scan.desk import desk
from tests.world import TODAY, job, larkmoor, step

pytestmark = pytest.mark.django_db


@pytest.mark.parametrize(
    ("line", "read", "because"),
    [
        ("air 21.4 panel 19 humidity 52", "air 21.4, panel 19, humidity 52", "as a person says it"),
        ("AIR 21,4 °C, PANEL 19,0 °C, RH 52 %", "air 21.4 C, panel 19.0 C, humidity 52", "as printed"),
        ("air 70 °F panel 66f humidity 50", "air 70 F, panel 66 F, humidity 50", "as in the United States"),
        ("air -3 humidity 80", "air -3, humidity 80", "nobody measured the panel"),
        ("humidity 52 air 21", "humidity 52, air 21", "in any order"),
        ("air 21.4 panel 19", "air 21.4, panel 19", "the humidity comes with the next line"),
        ("air 21", "air 21", "one value by itself"),
        ("panel 19", "panel 19", "one value by itself"),
        ("panel not measured", "panel None", "there was no probe"),
        ("humidity 52 %", "humidity 52", "one value by itself"),
        (value_code(AIR, Decimal("21.1")), "air 21.1 C", "off the card: always °C"),
        (value_code(HUMIDITY, Decimal(55)).lower(), "humidity 55", "off the card, with caps lock"),
        (value_code(PANEL, None), "panel None", "off the card"),
        ("air 21 air 22", "", "twice: nobody knows which was meant"),
        ("humidity 52 C", "", "humidity has no degrees"),
        ("air 21 %", "", "air is no share"),
        ("air not measured", "", "only a panel may stay unmeasured"),
        ("humidity -5", "", "below nothing"),
        ("air tool 3", "", "words that begin alike"),
        ("air", "", "no value"),
    ],
)
def test_a_line_is_a_reading_or_it_is_not(line: str, read: str, because: str) -> None:
    found = read_line(line, today=TODAY).measured
    assert ", ".join(f"{one.quantity} {one.amount} {one.unit}".strip() for one in found) == read, because


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
