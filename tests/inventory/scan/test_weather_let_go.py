"""A reading of which values are missing is let go aloud: by UNDO, by another scan, by a badge, by time."""

from datetime import timedelta
from decimal import Decimal

import pytest

from inventory.codes import AIR, COMMANDS, HUMIDITY, PANEL, value_code
from inventory.models import WeatherReading
from tests.inventory.scan.desk import Desk, desk
from tests.world import GRAM, NOON, bottle, larkmoor, marl

pytestmark = pytest.mark.django_db

AIR_21, PANEL_19 = value_code(AIR, Decimal(21)), value_code(PANEL, Decimal(19))
HUMIDITY_50 = value_code(HUMIDITY, Decimal(50))
KEPT = "recorded: Bay 1: air 21 °C, panel 19 °C, humidity 50 %."


@pytest.fixture
def here() -> Desk:
    world = larkmoor()
    return desk(world, place=world.bay_1)


@pytest.mark.parametrize("command", ["undo", "no"])
def test_a_reading_under_way_is_let_go_by_undo_and_by_no(here: Desk, command: str) -> None:
    here.hears(AIR_21, PANEL_19)

    let_go = here.say(COMMANDS[command])

    assert let_go["says"] == "Nothing was recorded."
    assert let_go["next"].startswith("The reading begun in Bay 1 is dropped without humidity.")
    assert here.hears(HUMIDITY_50) == "tell: Bay 1: humidity 50 %.", "it begins anew"
    assert not WeatherReading.objects.exists()


def test_another_scan_goes_its_way_and_says_that_the_reading_is_dropped() -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM)
    here = desk(world, place=world.bay_1)
    here.say(AIR_21)

    other = here.say(world.bay_2.code)

    assert (other["says"], other["next"]) == (
        "You are at Bay 2.",
        "The reading begun in Bay 1 is dropped without the panel and humidity. Scan a car or a bottle.",
    )
    here.hears(compound.code, AIR_21, PANEL_19)
    assert here.say(compound.code)["next"].startswith(
        "The reading begun in Bay 2 is dropped without humidity."
    )
    assert here.hears(HUMIDITY_50) == "tell: Bay 2: humidity 50 %."
    assert not WeatherReading.objects.exists()


def test_another_badge_drops_it_aloud_and_leaves_nothing_to_the_next_person() -> None:
    world = larkmoor()
    here = desk(world, place=world.bay_1)
    here.say(AIR_21)

    greeted = here.say(world.ines.code)

    assert (greeted["says"], greeted["next"]) == (
        "Hello Ines.",
        "The reading begun in Bay 1 is dropped without the panel and humidity. "
        "Scan a car, a bottle, or what came.",
    )


@pytest.mark.parametrize(
    ("minutes", "says", "because"),
    [
        (10, KEPT, "ten minutes after the first value they still belong together"),
        (11, "tell: Bay 1: humidity 50 %.", "eleven minutes after, it is another reading"),
    ],
)
def test_a_reading_is_finished_within_ten_minutes_of_its_first_value(
    minutes: int, says: str, because: str
) -> None:
    world = larkmoor()
    here = desk(world, place=world.bay_1)
    begun = NOON - timedelta(minutes=30)
    here.say(AIR_21, at=begun)
    here.say(PANEL_19, at=begun)

    last = here.say(HUMIDITY_50, at=begun + timedelta(minutes=minutes))

    assert f"{last['grade']}: {last['says']}" == says, because
    if minutes > 10:
        assert last["next"] == (
            "The reading begun in Bay 1 is dropped after 10 minutes without humidity. "
            "Now air, then the panel."
        )


@pytest.mark.parametrize(
    ("command", "says", "next"),
    [
        ("undo", "Nothing was recorded.",
         "The reading begun in Bay 1 is dropped without the panel and humidity. What was asked is let go. "
         "UNDO again takes back the act before."),
        ("emergency", "Emergency.", "Look after yourself first, then the other person, then call."),
    ],
)  # fmt: skip
def test_hours_later_undo_still_means_the_reading_and_an_emergency_comes_first(
    here: Desk, command: str, says: str, next: str
) -> None:
    here.say("air 20 humidity 50", at=NOON - timedelta(hours=3))
    here.say(AIR_21, at=NOON - timedelta(hours=2))

    answer = here.say(COMMANDS[command])

    assert (answer["says"], answer["next"]) == (says, next)
    assert WeatherReading.objects.count() == 1, "what was kept before is not taken back"
