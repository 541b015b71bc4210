"""In one vessel, bucket, waste can or topped-up bottle: what harms is refused always, the rest asks."""

import pytest

from safety.reactions.values import Substance
from safety.reactions.vessel import in_one_vessel
from tests.safety.reactions.products import (
    ALKALINE,
    BIFLUORIDE,
    BLEACH,
    CITRIC,
    COATING,
    HARDENER,
    IRON,
    PEROXIDE,
    RIM_ACID,
    SHAMPOO,
    STRONG_ALKALI,
    TOWELS,
    WATER,
    WIPE,
    of,
)


def graded(a: Substance, b: Substance, kit_parts: bool = False) -> tuple[str, str] | None:
    found = in_one_vessel(a, b, kit_parts)
    return None if found is None else (found.code, found.grade)


@pytest.mark.parametrize(
    ("a", "b", "because"),
    [
        (BLEACH, RIM_ACID, "chlorine"),
        (BLEACH, CITRIC, "chlorine from a weak acid as well"),
        (IRON, CITRIC, "toxic sulfur gas is possible"),
        (IRON, ALKALINE, "ammonia from the ammonium salt"),
        (BIFLUORIDE, RIM_ACID, "hydrogen fluoride"),
        (PEROXIDE, WIPE, "fire"),
        (HARDENER, WIPE, "hardens violently"),
        (COATING, WATER, "hydrogen, ammonia and pressure"),
        (COATING, TOWELS, "column 107"),
        (of("17"), of("light-metal"), "an explosion in a closed vessel"),
        (of("17"), of("10"), "flammable gas alone"),
    ],
)
def test_toxic_or_flammable_gas_fire_explosion_and_hardening_are_refused(
    a: Substance, b: Substance, because: str
) -> None:
    assert graded(a, b) == ("reaction.vessel", "stop"), because


def test_a_refusal_names_both_products_says_why_and_what_to_do() -> None:
    found = in_one_vessel(RIM_ACID, BLEACH)
    assert found is not None
    assert found.says == (
        "Brightwell mould bleach and Kerbline rim acid never go into one vessel. Hypochlorite "
        "with acid gives "
        "off chlorine, also one after the other on the same floor or drain."
    )
    assert found.because == (
        "House rule S1 (hypochlorite and acid): toxic gas and heat. Also found: label statement EUH031 "
        "(toxic gas with acids): toxic gas; chart, cell 1-104 (mineral acids, non-oxidising with strong "
        "oxidisers): toxic gas and heat; house rule S19 (concentrated acid or alkali and water): heat; "
        "chart, cell 1-10 (mineral acids, non-oxidising with caustics): heat; chart, cell 1-106 (mineral "
        "acids, non-oxidising with water and water-based products): heat."
    )
    assert found.do == "Take another vessel, clean and rinsed; never top up one with the other."
    assert found.source.startswith("house rule S1: CDC MMWR case reports (read); label statement EUH031: ")
    assert "house rule S19: chemistry (from memory: check it)" in found.source
    assert found.about == ("Brightwell mould bleach", "Kerbline rim acid")


@pytest.mark.parametrize(
    ("a", "b", "because"),
    [
        (RIM_ACID, STRONG_ALKALI, "heat and spatter"),
        (RIM_ACID, WATER, "a corrosive acid is a concentrate"),
        (STRONG_ALKALI, WATER, "so is a corrosive alkali"),
        (of("10"), WATER, "nobody knows how strong it is"),
        (HARDENER, WATER, "a can that met water is never closed"),
        (BLEACH, PEROXIDE, "oxygen: pressure"),
        (of("carbonate"), CITRIC, "carbon dioxide: pressure"),
        (of("1"), of("24"), "toxic matter dissolves"),
        (of("7"), of("12"), "the chart's “may be hazardous”"),
    ],
)
def test_heat_pressure_dissolving_and_perhaps_alone_ask(a: Substance, b: Substance, because: str) -> None:
    assert graded(a, b) == ("reaction.vessel_heat", "ask"), because


def test_heat_of_acid_and_water_says_which_goes_into_which() -> None:
    found = in_one_vessel(RIM_ACID, WATER)
    assert found is not None
    assert found.says == (
        "Kerbline rim acid and water react in one vessel. Concentrated acid or caustic with a "
        "water-based product "
        "heats up and spatters: always acid into water, never the reverse."
    )
    assert found.do == "Acid or caustic into water, slowly, never the reverse; close it when it is cool."


def test_what_is_water_based_and_not_corrosive_is_diluted_with_a_note_only() -> None:
    """Daily work: a foam that is no concentrate goes into water."""
    assert graded(ALKALINE, WATER) == ("reaction.vessel_heat", "tell")
    assert graded(ALKALINE, STRONG_ALKALI) == ("reaction.vessel_heat", "ask")


@pytest.mark.parametrize(("a", "b"), [(SHAMPOO, WATER), (CITRIC, SHAMPOO), (IRON, WATER), (WIPE, WATER)])
def test_ordinary_dilution_is_silent(a: Substance, b: Substance) -> None:
    assert graded(a, b) is None


def test_two_parts_of_one_kit_are_meant_to_react() -> None:
    clear_coat = of("4", "Glasswing clear coat")
    assert graded(clear_coat, HARDENER) == ("reaction.vessel", "stop")
    assert graded(clear_coat, HARDENER, kit_parts=True) is None


def test_a_bottle_is_topped_up_with_its_own_product() -> None:
    assert graded(IRON, IRON) is None


def test_a_product_of_unknown_groups_asks_because_nothing_found_is_not_safe() -> None:
    stranger = Substance("Old drum")
    found = in_one_vessel(stranger, SHAMPOO)
    assert found is not None
    assert (found.code, found.grade, found.says) == (
        "reaction.vessel_unknown",
        "ask",
        "Nobody has said which reactivity groups Old drum belongs to, so nothing could be found.",
    )
    assert found.do == "Take another vessel, or let the owner confirm the groups of Old drum."
