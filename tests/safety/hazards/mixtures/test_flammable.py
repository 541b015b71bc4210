"""What burns, and the other physical hazards: measured, kept from an ingredient, or asked.

Expected: SOR/2015-17 s. 7.6.1(2) and 29 CFR 1910.1200 Table B.6.1 (flash and boiling point), SOR/2015-17 s.
7.3.1(3) and CLP Annex I 2.3.2 (aerosols).
"""

from dataclasses import replace

import pytest

from safety.hazards.mixtures.flammable import flammable
from safety.hazards.mixtures.physical import physical, unread_limits
from safety.hazards.mixtures.values import Found, Limit, Mixture
from tests.safety.hazards.mixtures.making import mix, part

ALL = ("EU", "US", "CA", "UN")
ALCOHOL = part("alcohol", 70, "Flam. Liq. 2 H225")
THINNER = part("thinner", 30, "Flam. Liq. 3 H226")
GAS = part("propane", 30, "Flam. Gas 1A H220", "Press. Gas (Liq.) H280")
F1, F2, F3, F4 = "Flam. Liq. 1 H224", "Flam. Liq. 2 H225", "Flam. Liq. 3 H226", "Flam. Liq. 4 H227"

POINTS = [
    # flash point, boiling point, class in US CA UN, class in EU, because
    (22.9, 35, F1, F1, "boils at 35 °C"),
    (22.9, 35.1, F2, F2, "boils above 35 °C"),
    (-20, 30, F1, F1, "far below zero"),
    (23, 30, F3, F3, "from 23 °C the boiling point is nothing"),
    (60, 150, F3, F3, "60 °C is still 3"),
    (60.1, 150, F4, "", "the EU has no category 4"),
    (93, 150, F4, "", "93 °C is still 4"),
    (93.1, 150, "", "", "above 93 °C nothing"),
]


@pytest.mark.parametrize("regime", ALL)
@pytest.mark.parametrize(("flash", "boils", "elsewhere", "in_the_eu", "because"), POINTS)
def test_a_measured_flash_point_decides(
    regime: str, flash: float, boils: float, elsewhere: str, in_the_eu: str, because: str
) -> None:
    answer = flammable(mix(ALCOHOL, flash_point_c=flash, boiling_point_c=boils), regime)
    assert " ".join(answer.hazards) == (in_the_eu if regime == "EU" else elsewhere), because
    assert answer.needs_review == ()


def test_a_measured_flash_point_overrules_the_ingredients() -> None:
    assert flammable(mix(ALCOHOL, flash_point_c=40), "EU").hazards == (F3,)


@pytest.mark.parametrize("regime", ALL)
@pytest.mark.parametrize("form", ["liquid", "spray", ""])
def test_without_a_flash_point_the_gravest_ingredient_is_kept_and_put_to_review(
    regime: str, form: str
) -> None:
    answer = flammable(mix(THINNER, ALCOHOL, form=form), regime)
    assert answer.hazards == (F2,)
    assert answer.needs_review == (
        "alcohol (70 %) is Flam. Liq. 2 H225 and no flash point of the mixture is given: "
        "the class is kept until one is measured.",
    )


def test_a_product_of_one_substance_has_the_substances_class() -> None:
    answer = flammable(mix(part("alcohol", 100, F2)), "EU")
    assert (answer.hazards, answer.needs_review) == ((F2,), ())


BOILING = [
    # mixture, class, reviews, because
    (mix(ALCOHOL, flash_point_c=14), F2, 0, "no ingredient of category 1 boils that early"),
    (mix(part("ether", 5, F1), ALCOHOL, flash_point_c=-5), F1, 1, "an ingredient of category 1 may"),
    (mix(flash_point_c=-5), F2, 1, "nobody says what is in it"),
]


@pytest.mark.parametrize(("mixture", "hazard", "reviews", "because"), BOILING)
def test_a_missing_boiling_point_is_asked_for_where_it_could_matter(
    mixture: Mixture, hazard: str, reviews: int, because: str
) -> None:
    answer = flammable(mixture, "US")
    assert (answer.hazards, len(answer.needs_review)) == ((hazard,), reviews), because


AEROSOLS = [
    # mixture, class, reviews, because
    (mix(GAS, form="aerosol"), "Aerosol 1 H222+H229", 0, "flammable propellant, no test"),
    (mix(part("propane", 1.1, "Flam. Gas 1A H220"), form="aerosol"), "Aerosol 1 H222+H229", 0, "above 1 %"),
    (mix(part("propane", 1, "Flam. Gas 1A H220"), form="aerosol"), "Aerosol 3 H229", 1, "1 %: heat decides"),
    (mix(part("wax", 5), form="aerosol"), "Aerosol 3 H229", 1, "every dispenser is at least category 3"),
    (
        mix(part("wax", 5), form="aerosol", flash_point_c=93),
        "Aerosol 1 H222+H229",
        0,
        "a liquid of 93 °C counts",
    ),
    (mix(part("wax", 5), form="aerosol", flash_point_c=94), "Aerosol 3 H229", 1, "one of 94 °C does not"),
    (mix(part("a", 0.6, F3), part("b", 0.6, F2), form="aerosol"), "Aerosol 1 H222+H229", 0, "1.2 % together"),
]


@pytest.mark.parametrize("regime", ALL)
@pytest.mark.parametrize(("mixture", "hazard", "reviews", "because"), AEROSOLS)
def test_an_aerosol_burns_unless_shown_otherwise(
    regime: str, mixture: Mixture, hazard: str, reviews: int, because: str
) -> None:
    answer = flammable(mixture, regime)
    assert (answer.hazards, len(answer.needs_review)) == ((hazard,), reviews), because


@pytest.mark.parametrize("regime", ALL)
def test_a_liquid_of_60_to_93_degrees_counts_in_an_aerosol_in_the_eu_too(regime: str) -> None:
    """SOR/2015-17 s. 7.3.1(3), CLP 2.3.2: flammable parts, liquids up to 93 °C among them."""
    assert flammable(mix(part("oil", 40, F4), form="aerosol"), regime).hazards == ("Aerosol 1 H222+H229",)
    bare = flammable(mix(part("oil", 40), form="aerosol"), regime)
    assert bare.hazards == ("Aerosol 3 H229",)
    assert "though EU lists do not show those above 60 °C" in bare.needs_review[0]


@pytest.mark.parametrize("regime", ALL)
def test_a_part_that_nobody_looked_at_counts_as_one_that_burns_in_an_aerosol(regime: str) -> None:
    unknown = replace(part("secret", 50), hazards=None)
    assert flammable(mix(unknown, form="aerosol"), regime).hazards == ("Aerosol 1 H222+H229",)
    named = mix(part("spray", 60, "Aerosol 1 H222+H229"), form="aerosol")
    assert flammable(named, regime).hazards == ("Aerosol 1 H222+H229",)


@pytest.mark.parametrize(("form", "because"), [("solid", "not a flammable solid"), ("gas", "not a gas")])
def test_a_pure_liquid_in_another_form_is_asked_about(form: str, because: str) -> None:
    answer = flammable(mix(part("thinner", 100, "Flam. Liq. 3 H226"), form=form), "EU")
    assert (answer.hazards, len(answer.needs_review)) == ((), 1), because


@pytest.mark.parametrize("regime", ALL)
def test_a_gas_keeps_its_classes_until_it_is_tested(regime: str) -> None:
    mixture = mix(GAS, part("nitrogen", 70, "Press. Gas (Comp.) H280"), form="gas")
    assert flammable(mixture, regime).hazards == ("Flam. Gas 1A H220",)
    assert set(physical(mixture, regime).hazards) == {"Press. Gas (Liq.) H280", "Press. Gas (Comp.) H280"}
    assert flammable(mixture, regime).needs_review
    assert physical(mixture, regime).needs_review


def test_a_paste_with_solvent_is_asked_about() -> None:
    answer = flammable(mix(THINNER, form="solid"), "EU")
    assert answer == Found(
        needs_review=("thinner (30 %) is Flam. Liq. 3 H226: whether this solid or paste burns needs a test.",)
    )


OTHERS = [
    "Met. Corr. 1 H290",
    "Ox. Liq. 2 H272",
    "Ox. Sol. 3 H272",
    "Org. Perox. EF H242",
    "Self-heat. 1 H251",
    "Water-react. 2 H261",
    "Pyr. Liq. 1 H250",
    "Aerosol 1 H222+H229",
    "Self-react. CD H242",
]


@pytest.mark.parametrize("regime", ALL)
@pytest.mark.parametrize("hazard", OTHERS)
def test_other_physical_hazards_are_asked_never_summed_nor_dropped(regime: str, hazard: str) -> None:
    answer = physical(mix(part("x", 12, hazard)), regime)
    assert answer.hazards == ()
    assert answer.needs_review == (f"x (12 %) is {hazard}: whether the mixture still is needs a test.",)
    assert physical(mix(part("x", 100, hazard)), regime).hazards == (hazard,), "the substance itself"
    assert physical(mix(part("x", 12)), regime) == Found()


PEROXIDE = (
    Limit("Ox. Liq. 1 H271", 70), Limit("Ox. Liq. 2 H272", 50, 70),
)  # fmt: skip


@pytest.mark.parametrize(
    ("percent", "hazards", "because"),
    [
        (49.9, (), "below its own limits it is no oxidiser"),
        (50, ("Ox. Liq. 2 H272",), "from 50 %"),
        (69.9, ("Ox. Liq. 2 H272",), "up to 70 %"),
        (70, ("Ox. Liq. 1 H271",), "from 70 %"),
    ],
)
def test_hydrogen_peroxide_oxidises_by_its_own_limits(
    percent: float, hazards: tuple[str, ...], because: str
) -> None:
    """CLP Annex VI, 7722-84-1: category 1 from 70 %, 2 from 50 %, both to be confirmed (from memory)."""
    answer = physical(mix(part("peroxide", percent, "Ox. Liq. 1 H271", limits=PEROXIDE)), "EU")
    assert answer.hazards == hazards, because
    assert len(answer.needs_review) == len(hazards), "each is to be confirmed by a test"
    assert (
        len(physical(mix(part("peroxide", percent, "Ox. Liq. 1 H271", limits=PEROXIDE)), "US").needs_review)
        == 1
    )


def test_a_limit_of_a_class_that_is_reckoned_otherwise_is_not_passed_in_silence() -> None:
    odd = mix(part("x", 5, limits=(Limit("Aquatic Chronic 3 H412", 2.5),)))
    assert unread_limits(odd, "EU").needs_review == (
        "x (5 %) has a limit for Aquatic Chronic 3 H412, that is not reckoned with.",
    )
    assert unread_limits(odd, "US") == Found()
