"""A product in water.

Expected percentages: parts by volume times density over the whole, worked by hand.
"""

import pytest

from safety.hazards.mixtures.dilution import diluted
from safety.hazards.mixtures.fields import MixtureError
from tests.safety.hazards.mixtures.making import mix, part

ACID = part("acid", 12, "Skin Corr. 1B H314")

SHARES = [
    # parts of product, of water, density in kg/l, percent of 12, because
    (1, 0, None, 12, "no water: as it is"),
    (1, 1, None, 6, "half"),
    (1, 3, None, 3, "a quarter"),
    (1, 1, 1.5, 7.2, "1.5 kg of product in 2.5 kg: 12 × 1.5 / 2.5"),
    (1, 1, 0.8, 5.333333, "0.8 kg in 1.8 kg"),
    (2, 10, 1.2, 2.322581, "2.4 kg in 12.4 kg"),
]


@pytest.mark.parametrize(("product", "water", "density", "percent", "because"), SHARES)
def test_percentages_by_weight_follow_from_parts_by_volume(
    product: float, water: float, density: float | None, percent: float, because: str
) -> None:
    assert diluted(mix(ACID), product, water, density).ingredients[0].percent == pytest.approx(percent), (
        because
    )


def test_a_range_is_thinned_at_both_ends() -> None:
    one = diluted(mix(part("x", 20)), 1, 3).ingredients[0]
    assert (one.least, one.percent) == (5, 5)


@pytest.mark.parametrize(
    ("product", "water", "density", "sentence"),
    [
        (0, 1, None, "Parts of product: a number above 0 was expected, not 0."),
        (-1, 1, None, "Parts of product: a number above 0 was expected, not -1."),
        (1, -1, None, "Parts of water: a number from 0 to 1e+12 was expected, not -1."),
        (1, True, None, "Parts of water: a number from 0 to 1e+12 was expected, not true."),
        (1, 1, 0, "Density: a number above 0 was expected, not 0."),
        (1, 1, float("nan"), "Density: a number above 0 was expected, not nan."),
    ],
)
def test_parts_that_are_no_amounts_are_refused(
    product: float, water: float, density: float | None, sentence: str
) -> None:
    with pytest.raises(MixtureError) as refused:
        diluted(mix(ACID), product, water, density)
    assert str(refused.value) == sentence


def test_an_unknown_density_counts_as_water_and_says_so() -> None:
    said = "The product's density is not known: 1 part by volume counted as 1 part by weight (1 kg/l)."
    assert diluted(mix(ACID), 1, 10).assumptions == (said,)
    assert diluted(mix(ACID), 1, 10, 1.1).assumptions == ()
    assert diluted(mix(ACID), 1, 0).assumptions == (), "nothing was reckoned with"


def test_what_was_measured_on_the_concentrate_is_kept_and_said() -> None:
    strong = diluted(mix(ACID, ph=1.2, flash_point_c=45, boiling_point_c=99), 1, 10, 1)
    assert (strong.ph, strong.flash_point_c, strong.boiling_point_c) == (1.2, 45, 99)
    assert strong.assumptions == (
        "pH 1.2 is the concentrate's: it is kept until the dilution's is measured.",
        "Flash point 45 °C is the concentrate's: water lowers no flammable category until the dilution's is "
        "measured.",
    )


@pytest.mark.parametrize(("ph", "said"), [(2, 1), (2.1, 0), (11.4, 0), (11.5, 1), (None, 0)])
def test_only_an_extreme_ph_is_worth_saying(ph: float | None, said: int) -> None:
    assert len(diluted(mix(ACID, ph=ph), 1, 10, 1).assumptions) == said


def test_a_thick_concentrate_is_thin_in_water_for_all_anybody_knows() -> None:
    assert diluted(mix(ACID, viscosity_mm2_s_40c=30), 1, 1, 1).viscosity_mm2_s_40c is None
    assert diluted(mix(ACID, viscosity_mm2_s_40c=5), 1, 1, 1).viscosity_mm2_s_40c == 5


def test_a_dilution_diluted_again_keeps_what_was_said() -> None:
    again = diluted(diluted(mix(ACID), 1, 1), 1, 1, 1)
    assert again.ingredients[0].percent == 3
    assert len(again.assumptions) == 1
