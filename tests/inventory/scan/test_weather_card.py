"""A reading scanned value by value off the card: in any order, kept once it is whole."""

from decimal import Decimal

import pytest

from inventory.codes import AIR, COMMANDS, HUMIDITY, PANEL, value_code
from inventory.models import Station, WeatherReading
from tests.inventory.scan.desk import Desk, desk
from tests.world import ML, job, larkmoor, pack, step, tidewall

pytestmark = pytest.mark.django_db

AIR_21, AIR_22 = value_code(AIR, Decimal(21)), value_code(AIR, Decimal(22))
PANEL_19, NO_PANEL = value_code(PANEL, Decimal(19)), value_code(PANEL, None)
HUMIDITY_50 = value_code(HUMIDITY, Decimal(50))
NO_PROBE = "recorded: Bay 1: air 21 °C, panel not measured, humidity 50 %."
KEPT = "recorded: Bay 1: air 21 °C, panel 19 °C, humidity 50 %."


@pytest.fixture
def here() -> Desk:
    world = larkmoor()
    return desk(world, place=world.bay_1)


def kept() -> list[tuple[str, Decimal, Decimal | None, Decimal]]:
    rows = WeatherReading.objects.order_by("id")
    return list(rows.values_list("place__name", "air_c", "panel_c", "humidity"))


def test_a_value_without_a_place_asks_where() -> None:
    assert desk(larkmoor()).hears(AIR_21) == "unknown: Measured where? No bay is in hand."


@pytest.mark.parametrize(
    ("line", "says", "because"),
    [
        (value_code(AIR, Decimal(61)), "No bay is like that: air -40 to 60 °C, a panel to 120 °C.", "air"),
        (
            value_code(PANEL, Decimal(121)),
            "No bay is like that: air -40 to 60 °C, a panel to 120 °C.",
            "panel",
        ),
        ("humidity 101", "Humidity lies above 0 and up to 100 %, not 101.", "above all"),
        ("humidity 0", "Humidity lies above 0 and up to 100 %, not 0.", "no bay is that dry"),
    ],
)
def test_a_value_that_cannot_be_is_refused_and_what_was_scanned_before_stays(
    here: Desk, line: str, says: str, because: str
) -> None:
    here.say(AIR_21)

    refused = here.say(line)

    assert (refused["grade"], refused["says"]) == ("unknown", says), because
    assert refused["next"] == "Say it like this: air 21.4 panel 19 humidity 52."
    assert here.hears(PANEL_19, HUMIDITY_50) == KEPT


def test_a_code_that_carries_no_value_is_set_aside_and_the_reading_stays(here: Desk) -> None:
    here.say(AIR_21)
    assert here.hears("RLDCVCVG") == (
        "unknown: RLDC VCVG is not one of our codes: one letter is wrong (these seven would end in D). "
        "Scan it again, or type the eight letters as printed."
    )
    assert here.hears(PANEL_19, HUMIDITY_50) == KEPT


def test_the_station_says_what_is_missing_until_the_reading_is_whole(here: Desk) -> None:
    first, second, third = here.say(AIR_21), here.say(PANEL_19), here.say(HUMIDITY_50)

    assert (first["grade"], first["says"], first["next"]) == (
        "tell", "Bay 1: air 21 °C.", "Now the panel, then humidity.",
    )  # fmt: skip
    assert [key["label"] for key in first["keys"]] == ["Panel not measured"]
    assert (second["says"], second["next"], second["keys"]) == (
        "Bay 1: air 21 °C, panel 19 °C.", "Now humidity.", [],
    )  # fmt: skip
    assert (f"{third['grade']}: {third['says']}", third["next"]) == (
        KEPT, "The check of a coat counts it for two hours.",
    )  # fmt: skip
    assert kept() == [("Bay 1", Decimal(21), Decimal(19), Decimal(50))]


@pytest.mark.parametrize(
    ("lines", "says", "because"),
    [
        ((HUMIDITY_50, PANEL_19, AIR_21), KEPT, "backwards"),
        ((PANEL_19, AIR_21, HUMIDITY_50), KEPT, "the panel first"),
        ((AIR_22, PANEL_19, AIR_21, HUMIDITY_50), KEPT, "the last one scanned counts"),
        (("air 21", PANEL_19, "rh 50 %"), KEPT, "typed and scanned"),
        ((AIR_22, "air 21 panel 19 humidity 50"), KEPT, "a whole line takes its place"),
        ((PANEL_19, "air 21 humidity 50"), KEPT, "the rest in one line"),
        ((AIR_21, NO_PANEL, HUMIDITY_50), NO_PROBE, "no probe"),
        ((AIR_21, NO_PANEL, PANEL_19, HUMIDITY_50), KEPT, "measured after all"),
        (("air 21 humidity 50",), NO_PROBE, "as before"),
        ((value_code(AIR, Decimal("21.5")), NO_PANEL, HUMIDITY_50),
         "recorded: Bay 1: air 21.5 °C, panel not measured, humidity 50 %.", "half a degree"),
    ],
)  # fmt: skip
def test_the_order_is_free_and_a_repeat_replaces(
    here: Desk, lines: tuple[str, ...], says: str, because: str
) -> None:
    assert here.hears(*lines) == says, because
    assert len(kept()) == 1


def test_undo_takes_a_whole_reading_back_as_it_does_a_typed_line(here: Desk) -> None:
    here.hears(AIR_21, PANEL_19, HUMIDITY_50)
    assert here.hears(COMMANDS["undo"]) == "recorded: Taken back: the reading in Bay 1."
    assert kept() == []


def test_two_stations_hold_a_reading_each() -> None:
    world = larkmoor()
    one, other = desk(world, place=world.bay_1), desk(world, place=world.bay_2, name="Other screen")

    one.say(AIR_21)
    assert other.hears(AIR_22, PANEL_19) == "tell: Bay 2: air 22 °C, panel 19 °C."

    assert one.hears(PANEL_19, HUMIDITY_50) == KEPT
    assert other.hears(HUMIDITY_50) == "recorded: Bay 2: air 22 °C, panel 19 °C, humidity 50 %."


def test_values_scanned_before_a_badge_wait_for_it_and_make_one_reading() -> None:
    world = larkmoor()
    here = Desk(Station.objects.create(shop=world.shop, name="Bay screen", place=world.bay_1))
    here.hears(AIR_21, PANEL_19, HUMIDITY_50)
    assert here.hears(world.tomas.code) == KEPT
    assert WeatherReading.objects.get().by == world.tomas


@pytest.mark.parametrize(
    ("line", "says", "next"),
    [
        ("52", "52 of what?", "Scan it off the card, or type panel 52."),
        ("DONE", "The reading is not whole yet.", "Now the panel, then humidity."),
        ("YES", "That needs more than a yes.", "Answer it, or NO to let it go."),
    ],
)
def test_what_is_no_value_leaves_it_under_way_and_says_the_way_out(
    here: Desk, line: str, says: str, next: str
) -> None:
    here.say(AIR_21)
    answer = here.say(line)
    assert (answer["grade"], answer["says"], answer["next"]) == ("ask", says, next)
    assert here.hears(PANEL_19, HUMIDITY_50) == KEPT


def test_the_car_in_hand_says_which_bay_and_stays_in_hand() -> None:
    world = larkmoor()
    car = job(world)
    step(car, "Coating", bay=world.bay_2)
    here = desk(world, place=world.bay_1)

    said = here.hears(car.code, AIR_21, PANEL_19, HUMIDITY_50)

    assert said == "recorded: Bay 2: air 21 °C, panel 19 °C, humidity 50 %."
    assert here.heard[-1]["bar"]["car"] == here.heard[0]["bar"]["car"] != ""


def test_a_shop_in_the_united_states_hears_fahrenheit_and_keeps_celsius() -> None:
    """70 °F are 21.1 °C, 66 °F are 18.9 °C (from memory; pint converts the same in the tests of heat)."""
    world = larkmoor()
    world.shop.system = "us"
    world.shop.save()
    here = desk(world, place=world.bay_1)

    assert here.hears("air 70") == "unknown: Is air 70 in °F or in °C?"
    assert [key["line"] for key in here.heard[-1]["keys"]] == ["air 70 F", "air 70 C"]
    assert here.hears("air 150 F") == "unknown: No bay is like that: air -40 to 140 °F, a panel to 248 °F."
    said = here.hears(value_code(AIR, Decimal("21.1")), "panel 66 F", HUMIDITY_50)

    assert said == "recorded: Bay 1: air 70 °F (21.1 °C), panel 66 °F (18.9 °C), humidity 50 %."
    assert kept() == [("Bay 1", Decimal("21.1"), Decimal("18.9"), Decimal(50))]


def test_a_half_said_receipt_is_not_lost_to_a_value_off_the_card() -> None:
    world = larkmoor()
    pack(tidewall(world), 30 * ML, gtin="04006381333931")
    here = desk(world, place=world.bay_1)
    here.hears("4006381333931", "3")
    assert here.hears(AIR_21) == "ask: Tidewall coating is not received yet: the lot is missing."
