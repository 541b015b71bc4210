"""What a product gives off by its sheet and its density: a least, never a guess."""

from typing import Any

import chemicals
import pytest
from chemicals.elements import simple_formula_parser
from chemicals.identifiers import search_chemical

from safety.hazards.tables import rows
from safety.voc.product import compounds, voc_told

WIPE: dict[str, Any] = {"name": "Propan-2-ol", "cas": "67-63-0", "percent": 70}
WATER: dict[str, Any] = {"name": "Water", "cas": "7732-18-5", "percent": 20}
ESTER: dict[str, Any] = {"name": "n-Butyl acetate", "cas": "123-86-4", "percent": [15, 25]}
ACID: dict[str, Any] = {"name": "Hydrofluoric acid", "cas": "7664-39-3", "percent": 8}
HDI: dict[str, Any] = {"name": "HDI", "cas": "822-06-0", "percent": 0.4}
SECRET: dict[str, Any] = {"name": "Solvent, trade secret", "percent": 40}
# No one substance, so that no library has a formula of it.
MIXTURES = {"1330-20-7", "8052-41-3", "8002-05-9", "68476-85-7"}


def told(
    *composition: dict[str, Any], weighs: float | None = 880, regime: str = "EU", cleans: bool = True
) -> tuple[Any, ...]:
    return voc_told("Hollin panel wipe", composition, weighs, regime, cleans)


@pytest.mark.parametrize(
    ("composition", "regime", "because"),
    [
        ((), "EU", "nobody typed in what it is made of"),
        ((ACID,), "EU", "hydrogen fluoride boils at 20 °C and holds no carbon"),
        ((HDI,), "EU", "it boils above 250 °C"),
        ((SECRET,), "EU", "nobody knows whether it counts"),
        (({**ESTER, "percent": [0, 5]},), "EU", "less than 5 % may be none"),
        ((WIPE,), "US", "its limits and its list of exempt compounds are others"),
    ],
)
def test_nothing_is_told_where_nothing_is_known_to_count(
    composition: tuple[dict[str, Any], ...], regime: str, because: str
) -> None:
    assert told(*composition, regime=regime) == (), because


def test_without_a_density_it_says_what_is_missing() -> None:
    [one] = told(WIPE, weighs=None)
    assert (one.code, one.grade) == ("voc.content", "tell")
    assert one.says == (
        "Hollin panel wipe gives off volatile organic compounds; how many g/l is not known without its "
        "density."
    )
    assert one.because == "Its sheet names Propan-2-ol 70 %."
    assert one.do == "Type in the density from section 9 of its data sheet."


@pytest.mark.parametrize("regime", ["EU", "UK"])
def test_a_panel_wipe_says_its_least_content_and_what_its_label_decides(regime: str) -> None:
    """By hand: 70 % of 880 g/l are 616 g/l. 2004/42/CE Annex II B (a): 200 and 850 g/l."""
    [one] = told(WIPE, SECRET, regime=regime)
    assert one.grade == "tell"
    assert one.says == (
        "Hollin panel wipe gives off at least 616 g/l of volatile organic compounds, as it is sold."
    )
    assert one.because == (
        "Its sheet names Propan-2-ol 70 %, and it weighs 880 g/l. Counted is what is organic and boils at "
        "250 °C or below; what the sheet does not name may add to it. Its sheet names no water, so the "
        "content without water is not known. Which compounds a country exempts is not known here: none is "
        "taken out."
    )
    assert one.do == (
        "Read on its label what it is: for vehicle refinishing it may hold at most 200 g/l as a pre-cleaner "
        "and 850 g/l as a preparatory product. As a pre-cleaner it is over that: ask its supplier."
    )
    assert one.source == (
        "2004/42/CE Annex II B (a) (read); what counts: 2004/42/CE Art. 2, boiling points of "
        "safety/tables/volatiles.csv (from memory: check it)"
    )


@pytest.mark.parametrize(
    ("percent", "weighs", "over", "because"),
    [
        (22, 900, "", "198 g/l keep both limits"),
        (25, 800, "", "200 g/l is the limit itself"),
        (26, 800, " As a pre-cleaner it is over that: ask its supplier.", "208 g/l"),
        (
            100,
            900,
            " As a pre-cleaner and as a preparatory product it is over that: ask its supplier.",
            "900 g/l",
        ),
    ],
)
def test_it_is_over_a_limit_only_above_it(percent: int, weighs: int, over: str, because: str) -> None:
    [one] = told({**WIPE, "percent": percent}, weighs=weighs)
    allowed = (
        "for vehicle refinishing it may hold at most 200 g/l as a pre-cleaner and 850 g/l as a "
        "preparatory product."
    )
    assert one.do == f"Read on its label what it is: {allowed}{over}", because


def test_where_water_is_named_the_content_without_it_is_said_too() -> None:
    """By hand: 616 g and 176 g of water, 176 / 998.2 = 0.1763 l; 616 / 0.8237 = 747.9."""
    [one] = told(WIPE, WATER)
    assert " Without its water it is at least 748 g/l. " in one.because


def test_of_a_range_the_low_end_counts() -> None:
    """By hand: 15 % of 900 g/l are 135 g/l, what may be 25 % is not said."""
    [one] = told(ESTER, weighs=900)
    assert one.says.startswith("Hollin panel wipe gives off at least 135 g/l ")
    assert one.because.startswith("Its sheet names n-Butyl acetate from 15 %, and it weighs 900 g/l. ")


def test_water_that_its_density_has_no_room_for_is_said_so() -> None:
    [one] = told({**WIPE, "percent": 5}, {**WATER, "percent": 95}, weighs=1100)
    assert "Its water and its density do not fit each other" in one.because


def test_what_cleans_no_paint_is_held_to_no_limit_of_cleaners() -> None:
    [one] = told(WIPE, cleans=False)
    assert one.do == (
        "It is the figure for the record of what the shop gives off, where your authority asks for one."
    )
    assert "Annex II B" not in one.source


def test_what_counts_is_organic_and_boils_at_250_degrees_or_below_by_an_outside_library() -> None:
    """`chemicals` (formula, boiling point by CAS number); what it has and we do not count stands by name."""
    single = {row["cas"] for row in rows("volatiles")} - MIXTURES
    outside = set()
    for cas in single:
        formula, boils = search_chemical(cas).formula, chemicals.Tb(cas)
        organic = "C" in simple_formula_parser(formula) and formula not in {"CO", "CO2"}
        if organic and boils is not None and boils - 273.15 <= 250:
            outside.add(cas)
    assert compounds() - MIXTURES - outside == set()
    assert outside - compounds() == {
        "68-11-1",  # thioglycolic acid: our table knows no boiling point
        "1338-23-4",  # MEK peroxide: it falls apart before it boils
        "822-06-0",  # hexamethylene diisocyanate: 255 °C at 1 atm in ours, theirs is under vacuum
    }
