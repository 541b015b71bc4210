"""Specific concentration limits of one ingredient.

Limits: CLP Annex VI table 3, ATP17 state (© European Union, CC BY 4.0).
"""

import pytest

from safety.hazards.classes import UnknownHazard, read_hazard
from safety.hazards.mixtures.limits import (
    Of,
    cut_off_for,
    has,
    limit_for,
    own_limit,
    own_statements,
    reaches,
    share,
)
from safety.hazards.mixtures.values import Ingredient, Limit

CORROSIVE = Of("Skin Corr.")
AIRWAYS = Of("STOT SE", ("3",), "H335")
DROWSY = Of("STOT SE", ("3",), "H336")

# The entry's own list has Skin Corr. 1B and Aquatic Acute 1: H335 stands in its limits alone.
AMMONIA = Ingredient(
    "ammonia solution",
    percent=6.0,
    cas="1336-21-6",
    hazards=(read_hazard("Skin Corr. 1B H314"), read_hazard("Aquatic Acute 1 H400")),
    limits=(Limit("STOT SE 3 H335", 5.0),),
)
HYPOCHLORITE = Ingredient(
    "sodium hypochlorite, active chlorine",
    percent=5.0,
    cas="7681-52-9",
    hazards=(read_hazard("Skin Corr. 1B H314"),),
    limits=(Limit("EUH031", 5.0),),
)


def test_a_limit_for_an_unknown_class_is_refused_by_name() -> None:
    strange = Ingredient("x", 5.0, limits=(Limit("Skin Burn 1 H314", 5.0),))
    with pytest.raises(UnknownHazard, match="skin burn 1"):
        own_limit(strange, "EU", CORROSIVE)


@pytest.mark.parametrize(
    ("regime", "limit", "because"),
    [
        ("EU", 5.0, "the limit names a class that the list lacks"),
        ("US", None, "HazCom knows no specific limits, and the list lacks the class"),
        ("CA", None, "SOR/2015-17 knows none either"),
        ("UN", None, "nor does the GHS"),
    ],
)
def test_a_limit_may_name_a_class_the_list_lacks_and_only_in_the_eu(
    regime: str, limit: float | None, because: str
) -> None:
    assert limit_for(AMMONIA, regime, 20.0, AIRWAYS) == limit, because


def test_one_effect_of_a_class_does_not_lend_its_limit_to_the_other() -> None:
    assert limit_for(AMMONIA, "EU", 20.0, DROWSY) is None


def test_a_class_without_a_limit_of_its_own_keeps_the_generic_one() -> None:
    assert has(AMMONIA, CORROSIVE)
    assert limit_for(AMMONIA, "EU", 5.0, CORROSIVE) == 5.0


@pytest.mark.parametrize(
    ("own", "cut_off", "because"),
    [
        (0.5, 0.5, "below the generic cut-off the limit is the cut-off"),
        (10.0, 1.0, "above it nothing changes"),
    ],
)
def test_a_limit_below_the_cut_off_is_the_cut_off(own: float, cut_off: float, because: str) -> None:
    limited = Ingredient("x", 1.0, limits=(Limit("Skin Corr. 1A H314", own),))
    assert cut_off_for(limited, "EU", 1.0, CORROSIVE) == cut_off, because


def test_more_than_the_end_of_a_band_still_gives_its_class_at_least() -> None:
    banded = Ingredient("x", 60.0, limits=(Limit("Eye Dam. 1 H318", 8.0, 50.0),))
    assert share(banded, "EU", 3.0, Of("Eye Dam.")) == 7.5


def test_shares_below_the_cut_off_do_not_count() -> None:
    trace = Ingredient("x", 0.9, hazards=(read_hazard("Skin Corr. 1B H314"),))
    assert share(trace, "EU", 5.0, CORROSIVE, cut_off=1.0) == 0.0
    assert share(trace, "EU", 5.0, CORROSIVE) == 0.18


@pytest.mark.parametrize(
    ("percent", "statements"), [(5.0, ("EUH031",)), (4.9, ())], ids=["from 5 %", "below 5 %"]
)
def test_a_statement_comes_from_the_ingredients_own_limit(
    percent: float, statements: tuple[str, ...]
) -> None:
    bleach = Ingredient("hypochlorite", percent, limits=HYPOCHLORITE.limits)
    assert own_statements(bleach, "EU") == statements
    assert own_statements(bleach, "US") == ()


def test_sums_of_decimals_reach_their_limit() -> None:
    assert 0.1 + 0.7 < 0.8  # what a bare comparison would see
    assert reaches(0.1 + 0.7, 0.8)
    assert not reaches(0.7999, 0.8)
