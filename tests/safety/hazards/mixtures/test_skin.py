"""Skin corrosion and irritation of a mixture, from both sides of every cut-off.

Sums: SOR/2015-17 s. 8.2.11 (read); CLP, US and UN tables say the same. Sub-categories of a sum and UN
category 3 from memory. Not additive: CLP 3.2.3.3.4, s. 8.2.11(3). pH of the whole: CLP 3.2.3.1.2, s. 8.2.5.
"""

import pytest

from safety.hazards.classes import REGIMES
from safety.hazards.mixtures.skin import skin
from safety.hazards.mixtures.values import Ingredient, Limit
from tests.safety.hazards.mixtures.making import mix, part

CORR = "Skin Corr. 1 H314"
A, B, C = "Skin Corr. 1A H314", "Skin Corr. 1B H314", "Skin Corr. 1C H314"
IRRIT, MILD = "Skin Irrit. 2 H315", "Skin Irrit. 3 H316"


def p(percent: float, *hazards: str, **more: object) -> Ingredient:
    return part(f"{' '.join(hazards) or 'other'} {percent}", percent, *hazards, **more)


@pytest.mark.parametrize("regime", REGIMES)
@pytest.mark.parametrize(
    ("ingredients", "expected", "because"),
    [
        ((p(5, CORR),), CORR, "Σ Corr. 1 ≥ 5"),
        ((p(4.9, CORR),), IRRIT, "1 ≤ Σ Corr. 1 < 5"),
        ((p(2.5, CORR), p(2.5, CORR)), CORR, "the sum counts, not the single one"),
        ((p(1, CORR),), IRRIT, "1 % is included"),
        ((p(10, IRRIT),), IRRIT, "Σ Irrit. 2 ≥ 10"),
        ((p(6, IRRIT), p(4, IRRIT)), IRRIT, "6 + 4 = 10"),
        ((p(6, IRRIT), p(0.9, CORR), p(4, IRRIT)), IRRIT, "the trace changes nothing"),
        ((p(5, A),), A, "Σ 1A ≥ 5"),
        ((p(5, B),), B, "1A + 1B ≥ 5"),
        ((p(5, C),), C, "1A + 1B + 1C ≥ 5"),
        ((p(5, A), p(5, CORR)), CORR, "one without sub-category makes it plain category 1"),
    ],
)
def test_the_sums_of_every_regime(
    regime: str, ingredients: tuple[Ingredient, ...], expected: str, because: str
) -> None:
    assert skin(mix(*ingredients), regime).hazards == (expected,), because


@pytest.mark.parametrize(
    ("ingredients", "un", "because"),
    [
        ((p(0.9, CORR),), (), "below the cut-off of 1 %"),
        ((p(9.9, IRRIT),), (MILD,), "below 10, and from 1"),
        ((p(0.9, IRRIT),), (), "below the cut-off"),
        ((p(1, IRRIT),), (MILD,), "10·Σ Corr. + Σ Irrit. 2 ≥ 1"),
        ((p(10, MILD),), (MILD,), "Σ Irrit. 3 ≥ 10"),
        ((p(9.9, MILD),), (), "just below"),
        ((p(3, MILD, additive=False),), (MILD,), "not additive, from 3 %"),
        ((p(2.9, MILD, additive=False),), (), "just below"),
        ((p(100),), (), "looked at and not classified"),
    ],
)
def test_what_is_no_class_is_category_3_in_the_un_alone(
    ingredients: tuple[Ingredient, ...], un: tuple[str, ...], because: str
) -> None:
    whole = mix(*ingredients, ph=7)
    assert skin(whole, "UN").hazards == un, because
    assert [skin(whole, regime).hazards for regime in ("EU", "US", "CA")] == [(), (), ()], because


@pytest.mark.parametrize(
    ("ingredients", "others", "ca", "because"),
    [
        ((p(4.9, A), p(0.9, B)), IRRIT, IRRIT, "0.9 % is below the cut-off"),
        ((p(4, A), p(1, B)), B, CORR, "1A + 1B ≥ 5; CA asks all to share one sub-category"),
        ((p(5, A), p(1, B)), A, CORR, "Σ 1A ≥ 5; CA likewise"),
        ((p(3, B), p(2, C)), C, CORR, "only all three sum to 5"),
        ((p(3, B), p(2, B)), B, B, "they share it"),
    ],
)
def test_sub_categories_of_a_sum(
    ingredients: tuple[Ingredient, ...], others: str, ca: str, because: str
) -> None:
    whole = mix(*ingredients)
    assert [skin(whole, regime).hazards for regime in ("EU", "US", "UN")] == [(others,)] * 3, because
    assert skin(whole, "CA").hazards == (ca,), because


@pytest.mark.parametrize("regime", REGIMES)
@pytest.mark.parametrize(
    ("one", "expected", "because"),
    [
        (p(1, B, additive=False), (CORR,), "corrosive and not additive, from 1 %"),
        (p(0.9, B, additive=False), (), "just below"),
        (p(1, B, ph=1.5), (CORR,), "an acid of pH ≤ 2"),
        (p(1, B, ph=2.0), (CORR,), "pH 2 is included"),
        (p(1, B, ph=2.1), (IRRIT,), "beyond it the sums apply"),
        (p(1, B, ph=11.5), (CORR,), "a base of pH ≥ 11.5"),
        (p(1, B, ph=11.4), (IRRIT,), "below it the sums apply"),
        (p(1, B, additive=True), (IRRIT,), "known to be additive"),
        (p(3, IRRIT, additive=False), (IRRIT,), "irritant and not additive, from 3 %"),
        (p(1, B, cas="1310-73-2"), (CORR,), "a strong base, its pH not stated"),
        (p(1, B, cas="1336-21-6"), (IRRIT,), "a base that is weaker at 1 %"),
    ],
)
def test_what_is_not_additive_acts_alone(
    regime: str, one: Ingredient, expected: tuple[str, ...], because: str
) -> None:
    assert skin(mix(one, ph=7), regime).hazards == expected, because


@pytest.mark.parametrize(("percent", "because"), [(2.9, "just below 3 %")])
def test_less_of_an_irritant_that_is_not_additive_is_no_class(percent: float, because: str) -> None:
    assert skin(mix(p(percent, IRRIT, additive=False)), "EU").hazards == (), because


def test_a_specific_limit_comes_before_the_rule_for_what_is_not_additive() -> None:
    weak = p(5, B, ph=1.0, limits=(Limit(B, 25), Limit(IRRIT, 10, 25)))
    assert skin(mix(weak, ph=3), "EU").hazards == ()
    assert skin(mix(weak, ph=3), "US").hazards == (B,), "which only the EU knows"


@pytest.mark.parametrize("regime", REGIMES)
@pytest.mark.parametrize(
    ("ph", "expected"), [(2.0, (CORR,)), (2.1, ()), (11.4, ()), (11.5, (CORR,)), (-1.0, (CORR,))]
)
def test_an_extreme_ph_of_the_whole_is_corrosive(regime: str, ph: float, expected: tuple[str, ...]) -> None:
    assert skin(mix(p(100), ph=ph), regime).hazards == expected


def test_a_limit_of_its_own_may_name_a_class_that_the_list_lacks() -> None:
    unlisted = p(12, limits=(Limit(IRRIT, 12),))
    assert skin(mix(unlisted), "EU").hazards == (IRRIT,)
    assert skin(mix(unlisted), "US").hazards == ()


def test_a_limit_above_the_generic_one_is_milder_and_counts_in_sums() -> None:
    acid = part("acid", 20, B, limits=(Limit(B, 25), Limit(IRRIT, 10, 25)))
    assert skin(mix(acid, ph=3), "EU").hazards == (IRRIT,)
    assert skin(mix(acid, p(1, B), ph=3), "EU").hazards == (B,), "20/25 + 1/5 = 1"
    assert skin(mix(acid, p(0.9, B), ph=3), "EU").hazards == (IRRIT,), "0.9 % is below its cut-off"


ASKED = "The pH of the whole is not stated"


@pytest.mark.parametrize(
    ("one", "asked", "because"),
    [
        (p(0.4, A), True, "corrosive, and nobody said that it is no acid or base"),
        (p(0.4, A, additive=True), False, "known to be additive"),
        (p(0.4, A, ph=9), False, "its pH is known and not extreme"),
        (p(0.4, A, ph=13), True, "its pH is extreme"),
        (p(0.4, IRRIT, cas="5329-14-6"), True, "a strong acid, though only an irritant"),
        (p(0.01, A), True, "from 0.01 %"),
        (p(0.009, A), False, "too little for any pH"),
        (p(50, IRRIT), False, "no acid or base is known"),
    ],
)
@pytest.mark.parametrize("regime", REGIMES)
def test_a_missing_ph_beside_a_strong_acid_or_base_is_asked(
    regime: str, one: Ingredient, asked: bool, because: str
) -> None:
    assert any(said.startswith(ASKED) for said in skin(mix(one), regime).needs_review) is asked, because
    assert not any(said.startswith(ASKED) for said in skin(mix(one, ph=7), regime).needs_review), "measured"


def test_nothing_is_asked_where_the_gravest_class_stands() -> None:
    assert skin(mix(p(5, A)), "EU").needs_review == ()


def test_the_answer_shows_its_rule_source_mark_and_numbers() -> None:
    (reason,) = skin(mix(part("x", 12, IRRIT)), "CA").because
    assert (reason.hazard, reason.source, reason.mark) == (IRRIT, "SOR/2015-17 s. 8.2.11", "S")
    assert reason.numbers == {"counted": [{"name": "x", "percent": 12, "limit": 10.0}], "shares": 1.2}
    (reason,) = skin(mix(part("x", 5, A)), "EU").because
    assert reason.mark == "M", "sub-categories are from memory"
