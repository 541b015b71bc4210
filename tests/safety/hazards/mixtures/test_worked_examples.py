"""Mixtures that others have worked out, and boundary arithmetic on Annex VI limits.

UN worked mixture: ST/SG/AC.10/C.4/2008/23 Annex 2, example 4. ECHA mixture exercises of 5 Mar 2012. Limits of
lyes and acids: CLP Annex VI table 3, ATP17 state (© European Union, CC BY 4.0).
"""

import pytest

from safety.hazards.classes import REGIMES
from safety.hazards.mixtures.acute import acute_toxicity
from safety.hazards.mixtures.eye import eye
from safety.hazards.mixtures.skin import skin
from safety.hazards.mixtures.supplemental import supplemental
from safety.hazards.mixtures.values import Ingredient, Limit, Mixture
from tests.safety.hazards.mixtures.making import mix, part

UN_EXAMPLE_4 = mix(
    part("first", 26, ate={"oral": 2737, "vapour": 11}),
    part("second", 23, ate={"oral": 4500, "vapour": 19}),
    part("third", 11, ate={"oral": 5001}, unknown=frozenset({"inhalation"})),
    part("fourth", 40, ate={"oral": 400, "vapour": 4}),
)
LYE_LIMITS = (
    Limit("Skin Corr. 1A H314", 5),
    Limit("Skin Corr. 1B H314", 2, 5),
    Limit("Skin Irrit. 2 H315", 0.5, 2),
    Limit("Eye Irrit. 2 H319", 0.5, 2),
)
ACID_LIMITS = (
    Limit("Skin Corr. 1B H314", 25),
    Limit("Skin Irrit. 2 H315", 10, 25),
    Limit("Eye Irrit. 2 H319", 10, 25),
)
BURNS, IRRITATES = "Skin Corr.", "Skin Irrit. 2 H315"


def lye(percent: float) -> Ingredient:
    return part("sodium hydroxide", percent, "Skin Corr. 1A H314", limits=LYE_LIMITS, cas="1310-73-2")


def potash(percent: float) -> Ingredient:
    return part("potassium hydroxide", percent, "Skin Corr. 1A H314", limits=LYE_LIMITS, cas="1310-58-3")


def phosphoric(percent: float) -> Ingredient:
    return part("phosphoric acid", percent, "Skin Corr. 1B H314", limits=ACID_LIMITS, cas="7664-38-2")


def skin_and_eye(whole: Mixture, regime: str = "EU") -> str:
    return " + ".join((*skin(whole, regime).hazards, *eye(whole, regime).hazards))


@pytest.mark.parametrize(("regime", "oral"), [("EU", 1000), ("US", 873), ("CA", 873), ("UN", 873)])
def test_the_un_worked_mixture(regime: str, oral: int) -> None:
    found = acute_toxicity(UN_EXAMPLE_4, regime)
    assert found.hazards == ("Acute Tox. 4 H302", "Acute Tox. 3 H331")
    assert (round(found.ate["oral"]), round(found.ate["vapour"], 1)) == (oral, 6.6)
    assert found.unknown_percent == {"inhalation": 11}
    assert found.supplemental == (
        "11 % of the mixture consists of ingredient(s) of unknown acute inhalation toxicity",
    )


@pytest.mark.parametrize(
    ("percent", "regime", "expected", "because"),
    [
        (0.8, "EU", (), "below the cut-off of 1 %"),
        (0.8, "UN", (), "below the cut-off of 1 % too"),
        (1.8, "EU", (), "it counts, and stays below 10 %"),
        (1.8, "US", (), "no category 3"),
        (1.8, "CA", (), "no category 3"),
        (1.8, "UN", ("Skin Irrit. 3 H316",), "the UN's category 3 from 1 %"),
    ],
)
def test_the_echa_exercise_on_a_skin_irritant(
    percent: float, regime: str, expected: tuple[str, ...], because: str
) -> None:
    assert skin(mix(part("x", percent, IRRITATES)), regime).hazards == expected, because


@pytest.mark.parametrize(
    ("ingredients", "expected", "because"),
    [
        ((lye(6),), "Skin Corr. 1A H314 + Eye Dam. 1 H318", "6 % is above 5 %"),
        ((lye(5),), "Skin Corr. 1A H314 + Eye Dam. 1 H318", "5 % is included"),
        ((lye(4.9),), "Skin Corr. 1B H314 + Eye Dam. 1 H318", "below 5 %"),
        ((lye(3),), "Skin Corr. 1B H314 + Eye Dam. 1 H318", "from 2 to 5 %"),
        ((lye(2),), "Skin Corr. 1B H314 + Eye Dam. 1 H318", "2 % is included"),
        ((lye(1.9),), "Skin Irrit. 2 H315 + Eye Irrit. 2 H319", "below 2 %"),
        ((lye(1),), "Skin Irrit. 2 H315 + Eye Irrit. 2 H319", "irritant to skin and eye"),
        ((lye(0.5),), "Skin Irrit. 2 H315 + Eye Irrit. 2 H319", "its limit is its cut-off"),
        ((lye(0.4),), "", "below its limits; its pH is asked, see below"),
        ((lye(1.2),), "Skin Irrit. 2 H315 + Eye Irrit. 2 H319", "alone only irritant"),
        ((potash(1.2),), "Skin Irrit. 2 H315 + Eye Irrit. 2 H319", "alone only irritant"),
        ((lye(1.2), potash(1.2)), "Skin Corr. 1B H314 + Eye Dam. 1 H318", "1.2/2 + 1.2/2 = 1.2"),
        ((lye(0.9), potash(0.9)), "Skin Irrit. 2 H315 + Eye Irrit. 2 H319", "0.9/2 + 0.9/2 = 0.9"),
        ((phosphoric(25),), "Skin Corr. 1B H314 + Eye Dam. 1 H318", "25 % is included"),
        ((phosphoric(24.9),), "Skin Irrit. 2 H315 + Eye Irrit. 2 H319", "its limits, not the 5 and the 3 %"),
        ((phosphoric(10),), "Skin Irrit. 2 H315 + Eye Irrit. 2 H319", "10 % is included"),
        ((phosphoric(9.9),), "", "not H318: eye limits replace the eye rule"),
    ],
)
def test_specific_limits_of_lyes_and_acids(
    ingredients: tuple[Ingredient, ...], expected: str, because: str
) -> None:
    assert skin_and_eye(mix(*ingredients)) == expected, because


@pytest.mark.parametrize("weak", [lye(0.4), lye(1), phosphoric(9.9)], ids=str)
@pytest.mark.parametrize("regime", ["EU"])
def test_what_specific_limits_let_pass_is_asked_for_its_ph(weak: Ingredient, regime: str) -> None:
    """CLP 3.2.3.1.2: sodium hydroxide at 0.4 % has a pH near 13."""
    asked = (*skin(mix(weak), regime).needs_review, *eye(mix(weak), regime).needs_review)
    assert len(asked) == 2
    assert all("The pH of the whole is not stated" in said for said in asked)


def test_where_its_ph_is_measured_it_speaks() -> None:
    assert skin_and_eye(mix(lye(0.4), ph=12.9)) == "Skin Corr. 1 H314 + Eye Dam. 1 H318"


@pytest.mark.parametrize("regime", ["US", "CA", "UN"])
def test_outside_the_eu_the_same_lye_has_no_limits_of_its_own(regime: str) -> None:
    assert skin_and_eye(mix(lye(1)), regime) == "Skin Corr. 1 H314 + Eye Dam. 1 H318"
    assert skin_and_eye(mix(phosphoric(9.9)), regime) == "Skin Corr. 1B H314 + Eye Dam. 1 H318"


@pytest.mark.parametrize(("percent", "statements"), [(5, ("EUH031",)), (4.9, ())])
def test_hypochlorite_frees_gas_with_acid_from_five_percent(
    percent: float, statements: tuple[str, ...]
) -> None:
    bleach = part(
        "sodium hypochlorite",
        percent,
        "Skin Corr. 1B H314",
        "Aquatic Acute 1 H400",
        limits=(Limit("EUH031", 5),),
    )
    assert supplemental(mix(bleach), "EU", ("Skin Corr. 1B H314",)).supplemental == statements
    assert [supplemental(mix(bleach), regime, ()).supplemental for regime in REGIMES[1:]] == [(), (), ()]


def test_hypochlorite_of_five_percent_burns() -> None:
    bleach = part("sodium hypochlorite", 5, "Skin Corr. 1B H314", cas="7681-52-9")
    assert [skin(mix(bleach), regime).hazards for regime in REGIMES] == [("Skin Corr. 1B H314",)] * 4
