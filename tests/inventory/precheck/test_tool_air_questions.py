"""What tools leave in the air: ozone, the gas of dry ice, carbon monoxide; and where nobody is asked."""

from dataclasses import replace

import pytest

from safety.air.values import Place
from tests.inventory.precheck.cases import NOON
from tests.inventory.precheck.tooled import BAY, MORNING, another_car, found, said, sparking, step

# Ozone


@pytest.mark.parametrize(
    ("machine", "other", "expected", "because"),
    [
        ({}, {"hour": 0.5}, [("tools.ozone", "stop")], "in the bay while it runs"),
        ({}, {"hour": 1}, [("tools.ozone_air", "ask")], "right after it"),
        ({}, {"hour": 1.9}, [("tools.ozone_air", "ask")], "54 minutes after it"),
        ({}, {"hour": 2}, [("tools.ozone", "tell")], "an hour to air it"),
        ({}, {"hour": -2}, [("tools.ozone", "tell")], "done before it"),
        ({}, {"hour": 0.5, "bay": "PBAYONEX"}, [("tools.ozone", "tell")], "another bay"),
        ({"signed": True}, {"hour": 1}, [("tools.ozone_air", "ask")], "done, but is it aired?"),
        ({"signed": True}, {"hour": 2}, [], "done and aired"),
        ({"inside": True}, {"hour": 0.5}, [("tools.ozone", "stop")], "work on the car whose cabin it is"),
    ],
)
def test_nobody_is_in_ozone_and_air_comes_first(machine, other, expected, because: str) -> None:
    ozone = step("Ozone", tools=("ozone",), **machine)
    assert said(ozone, step("Polish", **other)) == expected, because


def test_another_car_in_the_bay_stops_and_beside_a_closed_cabin_it_does_not() -> None:
    polish = another_car(step("Polish", hour=0.5))
    [one] = found(step("Ozone", tools=("ozone",)), others=[polish])
    assert one.says == "Polish is planned in Bay 2 while the ozone machine of Ozone runs."
    assert one.do == (
        "Move one of them to another hour or another bay; Bay 2 is aired before anybody goes in."
    )
    assert one.about == ("SPOLISH", "SOZONE")
    assert said(step("Ozone", tools=("ozone",), inside=True), others=[polish]) == [("tools.ozone", "tell")]


def test_the_other_car_s_check_says_it_too() -> None:
    ozone = another_car(step("Ozone", tools=("ozone",)))
    [one] = found(step("Polish", hour=1), others=[ozone])
    assert one.says == "Polish begins right after the ozone machine of Ozone: is Bay 2 aired by then?"
    assert one.do == (
        "Open Bay 2 from outside and go in only where a meter reads below 0.1 ppm; or begin Polish 60 "
        "minutes after it."
    )
    assert one.source == "an hour with doors open is this shop's own estimate (from memory)"


# Dry ice: 1 kg is 0.556 m³, 5556 ppm in 100 m³ (exposure.md section 4; 24.45 l/mol, 44.01 g/mol)


@pytest.mark.parametrize(
    ("grams", "volume", "inside", "expected", "because"),
    [
        (500, 100.0, False, [], "2778 ppm, below 5000"),
        (1000, 100.0, False, [("tools.dry_ice", "ask")], "5556 ppm, above the 8-hour 5000"),
        (2700, 100.0, False, [("tools.dry_ice", "stop")], "15 000 ppm, the UK's 15 minutes"),
        (100, 100.0, True, [("tools.dry_ice", "stop")], "18 519 ppm in a cabin's 3 m³"),
        (None, 100.0, False, [("tools.dry_ice_unknown", "ask")], "nobody says how much"),
        (1000, None, False, [("tools.dry_ice_unknown", "ask")], "nobody measured the room"),
    ],
)
def test_dry_ice_against_its_room(grams, volume, inside, expected, because: str) -> None:
    place = replace(BAY, place=Place(volume, 960.0, 3.0))
    blast = step("Blast", tools=("dry_ice",), dry_ice_g=grams, inside=inside)
    assert said(blast, place=place) == expected, because


def test_dry_ice_says_its_figures_and_what_is_missing() -> None:
    [one] = found(step("Blast", tools=("dry_ice",), dry_ice_g=3000))
    assert one.says == "Blast, Bay 2: 3 kg of dry ice make 16667 ppm of carbon dioxide in 100 m³."
    assert one.because.endswith("It is heavier than air; no fan is counted.")

    [unknown] = found(step("Blast", tools=("dry_ice",)), place=replace(BAY, place=Place(None, None, 1.0)))
    assert unknown.says == (
        "What the dry ice of Blast leaves in the air is not known: its weight and the size of Bay 2 are "
        "missing."
    )
    assert unknown.source == "29 CFR 1910.134(d)(1)(iii) (the source was read)"


def test_dry_ice_without_the_blaster_is_nothing() -> None:
    assert said(step("Blast", dry_ice_g=3000)) == []


# Carbon monoxide


@pytest.mark.parametrize(
    ("sort", "state", "at", "expected", "because"),
    [
        ("fuel_heater", "on", MORNING, "stop", "it burns fuel now"),
        ("engine", "on", MORNING, "stop", "so does an engine"),
        ("fuel_heater", "unknown", MORNING, "ask", "nobody said that it is off"),
        ("fuel_heater", "off", MORNING, "", "confirmed off"),
        ("fuel_heater", "on", NOON, "", "it is not that day yet"),
        ("heater", "on", MORNING, "", "an electric heater burns nothing"),
        ("", "on", MORNING, "", "what nobody sorted is asked about as a spark, not as a flame"),
    ],
)
def test_what_burns_fuel_in_the_bay(sort, state, at, expected: str, because: str) -> None:
    got = said(step("Polish"), at=at, place=sparking(("big heater", sort, state)))
    assert got == ([("tools.carbon_monoxide", expected)] if expected else []), because


def test_carbon_monoxide_is_asked_once_a_bay_with_its_limit() -> None:
    place = sparking(("big heater", "fuel_heater", "on"))
    [one] = found(step("Polish"), step("Wax", hour=2), at=MORNING, place=place, regime="US")
    assert one.says == "Big heater is on in Bay 2: it burns fuel."
    assert one.because.startswith(
        "It gives off carbon monoxide, which nobody smells; its limit here is OSHA PEL"
    )
    assert one.do == "Switch big heater off, air Bay 2, then say so on its page."

    [british] = found(step("Polish"), at=MORNING, place=place, regime="UK")
    assert british.because.endswith("no limit found in the UK lists.")
