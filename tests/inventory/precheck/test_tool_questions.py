"""What a step is done with: each rule where it speaks, with the nearest case that is left in peace."""

from dataclasses import replace
from datetime import datetime

import pytest

from inventory.models import IgnitionSource, Work
from inventory.precheck.questions.air import what_is_breathed
from inventory.precheck.questions.topics.air import AirStep, AirUse
from inventory.precheck.rules import check_job
from inventory.trade.tools import sorts, source, tools
from tests.inventory.precheck.cases import ML, NOON
from tests.inventory.precheck.tooled import (
    BAY,
    MORNING,
    QUESTIONS,
    another_car,
    found,
    job,
    said,
    sparking,
    step,
)

# The pressure washer


@pytest.mark.parametrize(
    ("products", "tool", "stops", "because"),
    [
        (("XACD",), "pressure_washer", True, "a mineral acid"),
        (("XLME",), "pressure_washer", True, "an organic acid"),
        (("XFLU",), "pressure_washer", True, "a fluoride"),
        (("XSAP",), "pressure_washer", False, "soap is what a pressure washer is for"),
        ((), "pressure_washer", False, "water alone"),
        (("XACD",), "steam", False, "no jet"),
    ],
)
def test_a_pressure_washer_never_meets_an_acid_or_a_fluoride(
    products, tool, stops: bool, because: str
) -> None:
    assert bool(said(step("Rims", *products, tools=(tool,)))) is stops, because


def test_an_acid_that_nobody_planned_for_a_step_with_a_washer_is_told() -> None:
    rims = step("Rims", "XACD", tools=("pressure_washer",))
    beside = replace(rims, uses=tuple(replace(use, need="-1") for use in rims.uses))
    assert [one.grade for one in found(rims)] == ["stop"]
    [one] = found(beside)
    assert (one.code, one.grade) == ("tools.washer", "tell")
    assert one.says == "Rims: a pressure washer never meets Brack wheel acid."


def test_the_washer_s_stop_says_why_and_the_way_out() -> None:
    [one] = found(step("Rims", "XACD", "XSAP", tools=("pressure_washer",)))
    assert (one.code, one.grade, one.about) == ("tools.washer", "stop", ("XACD", "SRIMS"))
    assert one.says == "Rims: a pressure washer never meets Brack wheel acid."
    assert one.because == "The jet makes a mist that is breathed, and drives it into eyes and under gloves."
    assert one.do == (
        "Put it on from a bottle or by hand and rinse without pressure; untick the pressure washer in this "
        "step, and wash under pressure in a step after the rinse."
    )
    assert one.source == (
        "common practice; burns in car and truck washing: CDC MMWR 64(32), 2015 (common practice, no source)"
    )


def test_any_acid_that_no_product_serves_is_an_acid_too() -> None:
    rims = replace(step("Rims", tools=("pressure_washer",)), uses=(AirUse("n", 50 * ML, None, "acid"),))
    facts = job(rims)
    bare = replace(facts, air=replace(facts.air, makeups={}))
    [one] = check_job(bare, NOON, questions=QUESTIONS).findings
    assert one.says == "Rims: a pressure washer never meets an acid."


def test_a_signed_step_is_over() -> None:
    assert said(step("Rims", "XACD", tools=("pressure_washer", "compressed_air"), signed=True)) == []


# Compressed air


@pytest.mark.parametrize(
    ("regime", "most"), [("US", "30 psi"), ("UK", "2 bar (30 psi)"), ("EU", "2 bar (30 psi)")]
)
def test_compressed_air_is_told_once_with_its_pressure(regime: str, most: str) -> None:
    [one] = found(
        step("Blow out", tools=("compressed_air",)),
        step("Dry", hour=2, tools=("compressed_air",)),
        regime=regime,
    )
    assert (one.code, one.grade) == ("tools.compressed_air", "tell")
    assert one.says == (
        f"Blow out: blow below {most}, with a chip guard, and never at skin or clothes that somebody wears."
    )
    assert one.source == "29 CFR 1910.242(b) (the source was read)"


# Chlorinated solvent


@pytest.mark.parametrize(
    ("sort", "state", "at", "grade", "because"),
    [
        ("heater", "on", MORNING, "stop", "a heater that is on"),
        ("lamp", "on", MORNING, "stop", "a lamp that is on"),
        ("welder", "unknown", MORNING, "ask", "nobody said that it is off"),
        ("", "unknown", MORNING, "ask", "nobody said what it is, so it may be a heater"),
        ("heater", "off", MORNING, "tell", "confirmed off this morning"),
        ("heater", "on", NOON, "tell", "Wednesday: Friday's heater is not on yet"),
        ("charger", "on", MORNING, "tell", "a charger neither glows nor shines"),
    ],
)
def test_chlorinated_solvent_and_what_the_bay_lists(sort, state, at, grade: str, because: str) -> None:
    place = sparking(("fan heater", sort, state))
    assert said(step("Tar", "XPER"), at=at, place=place) == [("tools.chlorinated", grade)], because


@pytest.mark.parametrize(
    ("tool", "grade"),
    [("infrared", "stop"), ("uv_lamp", "stop"), ("heat_gun", "stop"), ("vacuum", "tell"), ("steam", "tell")],
)
def test_chlorinated_solvent_and_the_step_s_own_tool(tool: str, grade: str) -> None:
    assert said(step("Tar", "XPER", tools=(tool,))) == [("tools.chlorinated", grade)]


def test_a_lamp_of_another_car_counts_in_the_same_bay_at_the_same_time_alone() -> None:
    lamp = another_car(step("Cure", tools=("infrared",)))
    [one] = found(step("Tar", "XPER"), others=[lamp])
    assert one.says == "Quell tar lifter must not meet the infrared lamp of Cure."
    assert one.do == "Plan it as a step of its own, after the place has been aired."

    for elsewhere in (replace(lamp, bay="PBAYONEX"), another_car(step("Cure", hour=2, tools=("infrared",)))):
        assert said(step("Tar", "XPER"), others=[elsewhere]) == [("tools.chlorinated", "tell")]


def test_a_heater_that_is_on_is_named_and_switched_off() -> None:
    place = sparking(("fan heater", "heater", "on"), ("charger", "charger", "on"))
    [one] = found(step("Tar", "XPER"), at=MORNING, place=place)
    assert one.says == "Quell tar lifter is used at Tar, and fan heater is on."
    assert one.do == "Switch fan heater off, then say so on the bay’s page."
    assert one.about == (BAY.code, "STAR")


def test_a_solvent_without_chlorine_may_stand_beside_a_lamp_for_all_that_it_gives_off() -> None:
    assert said(step("Wipe", "XIPA", tools=("uv_lamp",))) == []


# Dichloromethane


@pytest.mark.parametrize(
    ("product", "mask", "country", "expected", "because"),
    [
        ("XDCM", "none", "GB", [("tools.dichloromethane", "stop")], "no mask"),
        ("XDCM", "full", "GB", [("tools.dichloromethane", "stop")], "no filter holds it back"),
        ("XDCM", "powered_full", "GB", [("tools.dichloromethane", "stop")], "a fan is no supplied air"),
        ("XDCM", "air_fed", "GB", [], "supplied air"),
        ("XDCM", "air_fed", "US", [("tools.dichloromethane_us", "tell")], "in the US its use mostly ended"),
        ("XPER", "none", "GB", [], "another chlorinated solvent"),
    ],
)
def test_dichloromethane_wants_supplied_air(product, mask, country, expected, because: str) -> None:
    got = said(step("Strip", product, respirator=mask), country=country)
    assert [one for one in got if one[0] != "tools.chlorinated"] == expected, because


def test_in_the_us_the_stop_says_what_became_of_its_use() -> None:
    one = next(
        one for one in found(step("Strip", "XDCM"), country="US") if one.code == "tools.dichloromethane"
    )
    assert one.says == "Strip: Quell paint stripper holds dichloromethane, and no filter holds it back."
    assert one.because.endswith("In the US most commercial use of it has ended.")
    assert one.do == "Take a product without it; or plan an air-fed mask for this step."
    assert "89 FR 39254 (the source was read)" in one.source


# What a step is done with lights vapour


def fire(*steps: AirStep, at: datetime = NOON, **facts: object) -> list[str]:
    check = check_job(job(*steps, **facts), at, questions=[what_is_breathed])  # type: ignore[arg-type]
    return [one.says for one in check.findings if one.code == "air.ignition_tool"]


@pytest.mark.parametrize(
    ("tool", "stops"),
    [
        ("infrared", True),
        ("heat_gun", True),
        ("grinder", True),
        ("vacuum", True),
        ("uv_lamp", False),
        ("steam", False),
        ("compressed_air", False),
    ],
)
def test_a_tool_that_lights_vapour_stops_the_step_that_lets_it_go(tool: str, stops: bool) -> None:
    assert bool(fire(step("Wipe", "XIPA", tools=(tool,)))) is stops


def test_it_is_on_by_plan_so_that_it_stops_before_the_day() -> None:
    [says] = fire(step("Wipe", "XIPA", tools=("infrared",)))
    assert says == "Wipe, Bay 2: the infrared lamp of Wipe is planned while isopropanol can catch fire."


def test_the_grinder_of_another_car_counts_in_this_bay_and_not_in_another() -> None:
    grind = another_car(step("Sand", tools=("grinder",)))
    assert len(fire(step("Wipe", "XIPA"), others=[grind])) == 1
    assert fire(step("Wipe", "XIPA"), others=[replace(grind, bay="PBAYONEX")]) == []
    assert fire(step("Wipe", "XIPA"), others=[replace(grind, signed=True)]) == []


def test_soap_catches_no_fire() -> None:
    assert fire(step("Wash", "XSAP", tools=("grinder",))) == []


# The table


def test_every_tool_of_a_step_and_every_sort_of_a_bay_has_its_row() -> None:
    assert set(tools()) == set(Work.Tool.values)
    assert set(sorts()) == set(IgnitionSource.Sort.values)


def test_a_rule_without_a_row_is_no_rule() -> None:
    with pytest.raises(KeyError):
        source("tools.broom")
