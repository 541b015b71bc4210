"""Eye damage and irritation of a mixture, from both sides of every cut-off.

Sums: SOR/2015-17 s. 8.3.11 (read); CLP, US and UN tables say the same. pH of the whole: CLP
3.2.3.1.2, s. 8.3.5.
Limits of hydrogen peroxide and hydrofluoric acid: CLP Annex VI, from memory but for H318 from 8 %.
"""

import pytest

from safety.hazards.classes import REGIMES
from safety.hazards.mixtures.eye import eye
from safety.hazards.mixtures.values import Ingredient, Limit
from tests.safety.hazards.mixtures.making import mix, part

DAM, IRRIT, A2, B2 = "Eye Dam. 1 H318", "Eye Irrit. 2 H319", "Eye Irrit. 2A H319", "Eye Irrit. 2B H320"
CORR = "Skin Corr. 1B H314"


def p(percent: float, *hazards: str, **more: object) -> Ingredient:
    return part(f"{' '.join(hazards) or 'other'} {percent}", percent, *hazards, **more)


@pytest.mark.parametrize("regime", REGIMES)
@pytest.mark.parametrize(
    ("ingredients", "expected", "because"),
    [
        ((p(3, DAM),), (DAM,), "Σ (Dam. + Corr.) ≥ 3"),
        ((p(2.9, DAM),), (IRRIT,), "1 ≤ Σ < 3"),
        ((p(3, CORR),), (DAM,), "Skin Corr. 1 counts as well"),
        ((p(2.9, CORR),), (IRRIT,), "just below"),
        ((p(1.5, CORR), p(1.5, DAM)), (DAM,), "both sum"),
        ((p(1.5, CORR, DAM), p(1.4, DAM)), (IRRIT,), "what is both counts once: 2.9"),
        ((p(1, DAM),), (IRRIT,), "1 % is included"),
        ((p(0.9, DAM),), (), "below the cut-off"),
        ((p(10, IRRIT),), (IRRIT,), "Σ Irrit. 2 ≥ 10"),
        ((p(9.9, IRRIT),), (), "just below"),
        ((p(5, IRRIT), p(5, A2)), (IRRIT,), "2 and 2A are one"),
        ((p(1, DAM, additive=False),), (DAM,), "not additive, from 1 %"),
        ((p(0.9, DAM, additive=False),), (), "just below"),
        ((p(1, CORR, ph=12),), (DAM,), "a base of pH ≥ 11.5"),
        ((p(1, CORR, ph=11.4),), (IRRIT,), "below it the sums apply"),
        ((p(3, IRRIT, additive=False),), (IRRIT,), "irritant and not additive, from 3 %"),
        ((p(2.9, IRRIT, additive=False),), (), "just below"),
    ],
)
def test_the_sums_of_every_regime(
    regime: str, ingredients: tuple[Ingredient, ...], expected: tuple[str, ...], because: str
) -> None:
    assert eye(mix(*ingredients, ph=7), regime).hazards == expected, because


@pytest.mark.parametrize("regime", ["US", "CA", "UN"])
def test_nothing_but_2b_gives_2b_outside_the_eu(regime: str) -> None:
    assert eye(mix(p(10, B2)), regime).hazards == (B2,)
    assert eye(mix(p(9, B2), p(1, A2)), regime).hazards == (IRRIT,)
    assert eye(mix(p(10, B2)), "EU").hazards == (IRRIT,), "the EU has one category 2"


@pytest.mark.parametrize("regime", REGIMES)
@pytest.mark.parametrize(("ph", "expected"), [(2.0, (DAM,)), (2.1, ()), (11.4, ()), (11.5, (DAM,))])
def test_an_extreme_ph_of_the_whole_damages_eyes(regime: str, ph: float, expected: tuple[str, ...]) -> None:
    assert eye(mix(p(100), ph=ph), regime).hazards == expected


PEROXIDE = (
    Limit("Skin Corr. 1A H314", 70), Limit("Skin Corr. 1B H314", 50, 70), Limit("Skin Irrit. 2 H315", 35, 50),
    Limit("Eye Dam. 1 H318", 8, 50), Limit("Eye Irrit. 2 H319", 5, 8),
)  # fmt: skip


@pytest.mark.parametrize(
    ("percent", "expected", "because"),
    [
        (4.9, (), "below 5 %, although the generic rule would give H318 from 3 %"),
        (5, (IRRIT,), "from 5 %"),
        (7.9, (IRRIT,), "below 8 %"),
        (8, (DAM,), "H318 from 8 %, which its list lacks"),
        (60, (DAM,), "what burns skin damages eyes"),
    ],
)
def test_hydrogen_peroxide_by_its_own_eye_limits(
    percent: float, expected: tuple[str, ...], because: str
) -> None:
    peroxide = part("hydrogen peroxide", percent, "Skin Corr. 1A H314", limits=PEROXIDE)
    assert eye(mix(peroxide, ph=4), "EU").hazards == expected, because


def test_what_burns_skin_below_the_eye_rules_three_percent_damages_eyes() -> None:
    """From memory. Without eye limits of its own 2.5 % would be Eye Irrit. 2 by the generic rule."""
    strong = part("lye", 2.5, CORR, limits=(Limit(CORR, 2),))
    (reason,) = eye(mix(strong), "EU").because
    assert (reason.hazard, reason.rule, reason.mark) == (DAM, f"what is {CORR} damages eyes", "M")


def test_a_limit_below_the_cut_off_is_the_cut_off() -> None:
    limits = (
        Limit("Skin Corr. 1A H314", 7), Limit("Skin Corr. 1B H314", 1, 7), Limit("Eye Irrit. 2 H319", 0.1, 1),
    )  # fmt: skip
    fluoride = [
        part("hydrofluoric acid", percent, "Skin Corr. 1A H314", limits=limits) for percent in (0.1, 0.09)
    ]
    assert [eye(mix(one), "EU").hazards for one in fluoride] == [(IRRIT,), ()]


def test_eye_limits_of_several_ingredients_are_summed() -> None:
    half = (Limit("Skin Corr. 1B H314", 25), Limit("Eye Irrit. 2 H319", 10, 25))
    one, other = (part(name, 12.5, CORR, limits=half) for name in ("a", "b"))
    assert eye(mix(one, ph=3), "EU").hazards == (IRRIT,)
    assert eye(mix(one, other, ph=3), "EU").hazards == (DAM,), "12.5/25 + 12.5/25 = 1"


@pytest.mark.parametrize(
    ("end", "because"),
    [(None, "an open band ends where its skin limit burns"), (12, "a skin limit speaks before a band's end")],
)
def test_without_an_eye_limit_for_damage_it_begins_where_the_skin_limit_burns(
    end: float | None, because: str
) -> None:
    own = (Limit("Skin Corr. 1B H314", 25), Limit("Eye Irrit. 2 H319", 10, end))
    half = [part(name, 12.5, CORR, limits=own) for name in ("a", "b")]
    assert eye(mix(half[0], ph=3), "EU").hazards == (IRRIT,), because
    assert eye(mix(*half, ph=3), "EU").hazards == (DAM,), because


@pytest.mark.parametrize("regime", REGIMES)
def test_a_missing_ph_is_asked_until_the_gravest_class_stands(regime: str) -> None:
    (said,) = eye(mix(p(0.5, CORR)), regime).needs_review
    assert said.startswith("The pH of the whole is not stated")
    assert eye(mix(p(5, CORR)), regime).needs_review == ()


def test_the_answer_shows_its_rule_source_mark_and_numbers() -> None:
    reason = eye(mix(part("x", 3, DAM)), "CA").because[0]
    assert (reason.hazard, reason.source, reason.mark) == (DAM, "SOR/2015-17 s. 8.3.11", "S")
    assert reason.numbers == {"counted": [{"name": "x", "percent": 3, "limit": 3.0}], "shares": 1.0}
