"""Volatile organic compounds: content with and without water, units, record, limits."""

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from safety.voc.content import (
    Sample,
    VocError,
    actual_content,
    content_less_water,
    emitted_g,
    g_l,
    lb_gal,
    limits,
    litre,
    over_limit,
)


@pytest.mark.parametrize(
    ("amounts", "sentence"),
    [
        ((0, 10), "litres: more than 0 was expected, and no amount below 0."),
        ((1, 10, -1), "litres: more than 0 was expected, and no amount below 0."),
        ((1, 10, 8, 0.008, 3), "volatile_g: at least water and exempt compounds together were expected."),
    ],
)
def test_amounts_that_cannot_be_are_refused(amounts: tuple[float, ...], sentence: str) -> None:
    with pytest.raises(VocError) as refused:
        Sample(*amounts)
    assert str(refused.value) == sentence


def test_more_than_all_of_a_litre_is_refused() -> None:
    with pytest.raises(VocError, match="at most 100 % together"):
        litre(1000, 60, 41)
    with pytest.raises(VocError, match="less than all of the litres"):
        content_less_water(Sample(1, 1010, 1000, 1.0))


def test_a_lubricant_of_53_percent_water_is_2_23_pounds_a_gallon_and_4_87_less_water() -> None:
    """Published question and answer on a coating's content: 8.52 lb/gal, 20.8 % solids, water 8.33 lb/gal."""
    product = litre(g_l(8.52), 20.8, 53.0, g_l(8.33))
    assert lb_gal(actual_content(product)) == pytest.approx(2.23, abs=0.005)
    assert lb_gal(content_less_water(product)) == pytest.approx(4.87, abs=0.005)


def test_water_at_20_degrees_gives_the_same_figure_to_its_last_digit() -> None:
    """The same product with water of 998.2 g/l, the density of our own default."""
    assert lb_gal(content_less_water(litre(g_l(8.52), 20.8, 53.0))) == pytest.approx(4.87, abs=0.005)


def test_exempt_compounds_leave_mass_and_volume() -> None:
    """By hand: 1 l, 700 g volatile, of it 200 g (0.2 l) water, 158 g (0.2 l) exempt: 342 / 0.6 = 570."""
    product = Sample(1, 700, 200, 0.2, 158, 0.2)
    assert actual_content(product) == pytest.approx(342)
    assert content_less_water(product) == pytest.approx(570)


def test_a_pound_a_gallon_is_119_826_grams_a_litre() -> None:
    """453.59237 g in 3.785411784 l."""
    assert g_l(1) == pytest.approx(119.826, abs=0.0005)
    assert lb_gal(119.826) == pytest.approx(1, abs=1e-5)


def test_water_alone_holds_none() -> None:
    assert content_less_water(litre(998.2, 0, 100)) == 0


def test_what_is_given_off_is_what_was_used_less_the_waste_and_never_less_than_nothing() -> None:
    """By hand: 2 l of 700 g/l and 5 l of 40 g/l are 1600 g; 300 g left as waste."""
    assert emitted_g([(2, 700), (5, 40)], 300) == pytest.approx(1300)
    assert emitted_g([(1, 40)], 300) == 0


@pytest.mark.parametrize("regime", ["EU", "UK"])
def test_a_pre_cleaner_may_hold_200_and_a_preparatory_product_850(regime: str) -> None:
    """2004/42/CE Annex II B, subcategory (a)."""
    assert {kind: limit for kind, (limit, _) in limits(regime).items()} == {
        "pre-cleaner": 200,
        "preparatory": 850,
    }


def test_a_panel_wipe_over_its_limit_is_asked_about_and_one_at_it_is_not() -> None:
    [told] = over_limit("panel wipe", "pre-cleaner", 620, "EU")
    assert (told.code, told.grade) == ("voc.limit", "ask")
    assert told.says == "panel wipe holds 620 g/l of volatile organic compounds; a pre-cleaner may hold 200."
    assert told.because == "Ready for use it is 420 g/l over the limit."
    assert told.source == "2004/42/CE Annex II B (a) (read)"
    assert over_limit("panel wipe", "pre-cleaner", 200, "EU") == ()
    assert over_limit("stripper", "preparatory", 620, "EU") == ()
    assert over_limit("panel wipe", "pre-cleaner", 620, "US") == ()


@example(600.0, 100.0, 1.4453095592351017e-291)  # less than nothing, by rounding
@given(st.floats(600, 1400), st.floats(0, 100), st.floats(0, 60))
def test_taking_the_water_out_never_lowers_a_content(density: float, solids: float, water: float) -> None:
    if solids + water > 100:
        return
    product = litre(density, solids, water)
    if product.water_l < 0.99:
        assert content_less_water(product) >= actual_content(product) * (1 - 1e-12)


def test_a_content_is_a_litres_whatever_was_sampled() -> None:
    """By hand: 5 l with 3500 g volatile, of it 1000 g (1 l) water: 500 g/l, 625 g/l less water."""
    can = Sample(5, 3500, 1000, 1.0)
    assert actual_content(can) == pytest.approx(500)
    assert content_less_water(can) == pytest.approx(625)


def test_what_is_more_than_a_litre_names_its_sum() -> None:
    with pytest.raises(VocError) as refused:
        litre(1000, 60, 41)
    assert str(refused.value) == "solids and water: at most 100 % together were expected, not 101."
