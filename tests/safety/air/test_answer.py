"""The answer of a task: its keys, its nulls, what is summed, and what never depends on order or on more."""

import math
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.safety.air.tasks import (
    ACETONE,
    AMMONIA,
    BUTANE,
    ETHANOL,
    FLUORIDE,
    ISOPROPANOL,
    METHANOL,
    NAPHTHA,
    QUARTZ,
    XYLENE,
    answer,
    judged,
)

KEYS = [
    "findings", "contaminants", "index", "lel_percent", "needed_m3_h", "needed_m3_h_breathing_zone",
    "clear_after_min",
]  # fmt: skip
OF_ONE = [
    "name", "cas", "room_ppm", "breathing_zone_ppm", "limit_ppm", "room_mg_m3", "breathing_zone_mg_m3",
    "limit_mg_m3", "limit_from", "mark",
]  # fmt: skip
OF_A_FINDING = ["code", "grade", "says", "because", "do", "source", "about"]
POOL = [ISOPROPANOL, XYLENE, ACETONE, AMMONIA, ETHANOL, METHANOL, BUTANE, NAPHTHA, FLUORIDE, QUARTZ]
EMISSIONS = st.lists(
    st.builds(lambda each, grams: each | {"grams": grams}, st.sampled_from(POOL), st.floats(0.01, 500)),
    min_size=1,
    max_size=4,
)
REGIMES = st.sampled_from(["US", "EU", "UK"])


def test_an_answer_has_these_keys() -> None:
    document = answer(ISOPROPANOL | {"grams": 785})
    assert list(document) == KEYS
    assert [list(one) for one in document["contaminants"]] == [OF_ONE]
    assert {tuple(one) for one in document["findings"]} == {tuple(OF_A_FINDING)}


def test_one_task_number_by_number() -> None:
    """785 g/h of isopropanol into 600 m³/h and 100 m³, by hand; clear: ln(530.9/40) at 6 changes/h."""
    document = answer(ISOPROPANOL | {"grams": 785})
    one = document["contaminants"][0]
    assert one["room_ppm"] == pytest.approx(530.9, abs=0.1)
    assert one["breathing_zone_ppm"] == pytest.approx(1192.9, abs=0.2)
    assert one["room_mg_m3"] == pytest.approx(785_000 / 600 * (1 - math.exp(-6)))
    assert document["index"] == pytest.approx(1192.9 / 400, rel=0.001)
    assert document["lel_percent"] == pytest.approx(530.9 / 20_000 * 100, rel=0.001)
    assert document["clear_after_min"] == pytest.approx(10 * math.log(530.9 / 40), rel=0.001)


def test_a_room_without_air_never_clears_by_itself() -> None:
    assert answer(ISOPROPANOL | {"grams": 100}, place={"air_m3_h": 0})["clear_after_min"] is None


def test_a_room_that_never_held_a_tenth_of_a_limit_is_clear_at_once() -> None:
    assert answer(ISOPROPANOL | {"grams": 1})["clear_after_min"] == 0


def test_one_substance_in_two_lines_is_one_contaminant_and_an_unknown_amount_makes_both_unknown() -> None:
    twice = answer(ISOPROPANOL | {"grams": 60}, ISOPROPANOL | {"grams": 40, "name": "wipe"})
    assert twice == answer(ISOPROPANOL | {"grams": 100})
    [one] = answer(ISOPROPANOL | {"grams": 60}, ISOPROPANOL | {"grams": None})["contaminants"]
    assert one["room_ppm"] is None


def test_a_dust_has_no_ppm() -> None:
    one = answer(QUARTZ | {"grams": 0.001})["contaminants"][0]
    assert (one["room_ppm"], one["limit_ppm"], one["limit_mg_m3"]) == (None, None, 0.05)


def test_what_has_no_limit_at_all_still_says_its_mass() -> None:
    one = answer({"name": "fume", "grams": 1})["contaminants"][0]
    assert (one["room_ppm"], one["limit_from"]) == (None, None)
    assert one["room_mg_m3"] > 0


@given(EMISSIONS, REGIMES)
@settings(max_examples=60)
def test_the_order_of_emissions_is_nothing(emissions: list[dict[str, Any]], regime: str) -> None:
    one, other = answer(*emissions, regime=regime), answer(*reversed(emissions), regime=regime)
    for key in KEYS[2:]:
        assert one[key] == (None if other[key] is None else pytest.approx(other[key], rel=1e-12)), key
    assert sorted((each["code"], each["grade"]) for each in one["findings"]) == sorted(
        (each["code"], each["grade"]) for each in other["findings"]
    )


@given(EMISSIONS, REGIMES, st.floats(1, 500), st.integers(0, 3))
@settings(max_examples=60)
def test_more_grams_never_lower_a_figure(
    emissions: list[dict[str, Any]], regime: str, more: float, which: int
) -> None:
    at = which % len(emissions)
    heavier = [
        one | {"grams": one["grams"] + more} if place == at else one for place, one in enumerate(emissions)
    ]
    before, after = answer(*emissions, regime=regime), answer(*heavier, regime=regime)
    for key in ("index", "lel_percent", "needed_m3_h", "clear_after_min"):
        if before[key] is not None and after[key] is not None:
            assert after[key] >= before[key] * (1 - 1e-9), key


@given(EMISSIONS, REGIMES, st.floats(0, 3000), st.floats(1, 5000))
@settings(max_examples=60)
def test_more_air_never_raises_the_room(
    emissions: list[dict[str, Any]], regime: str, air: float, more: float
) -> None:
    little, much = (answer(*emissions, regime=regime, place={"air_m3_h": each}) for each in (air, air + more))
    for one, other in zip(little["contaminants"], much["contaminants"], strict=True):
        for key in ("room_ppm", "room_mg_m3", "breathing_zone_ppm"):
            assert other[key] is None or other[key] <= one[key] * (1 + 1e-9)


@given(EMISSIONS, REGIMES)
@settings(max_examples=60)
def test_the_technicians_figure_is_never_below_the_rooms_and_the_gravest_finding_is_first(
    emissions: list[dict[str, Any]], regime: str
) -> None:
    found = judged(*emissions, regime=regime)
    for one in found.as_json()["contaminants"]:
        for unit in ("ppm", "mg_m3"):
            nose, room = one[f"breathing_zone_{unit}"], one[f"room_{unit}"]
            assert (nose is None) == (room is None)
            assert nose is None or nose >= room
    grades = [["stop", "ask", "tell"].index(each.grade) for each in found.findings]
    assert grades == sorted(grades)
