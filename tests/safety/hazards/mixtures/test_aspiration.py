"""Thin liquids that reach the lungs.

Expected: SOR/2015-17 s. 8.10 (read: each ≥ 1 %, Σ ≥ 10 %, ≤ 20.5 mm²/s at 40 °C), CLP Annex I 3.10.3.3; UN
category 2: 14 mm²/s (from memory).
"""

import pytest

from safety.hazards.mixtures.aspiration import aspiration
from safety.hazards.mixtures.values import Mixture
from tests.safety.hazards.mixtures.making import mix, part

THIN, EDGE, THICK = 5.0, 20.5, 20.6
ONE, TWO = "Asp. Tox. 1 H304", "Asp. Tox. 2 H305"

SUMS = [
    # regime, mixture, hazards, because
    ("EU", mix(part("a", 9.9, ONE), viscosity_mm2_s_40c=THIN), (), "below 10 %"),
    ("EU", mix(part("a", 10, ONE), viscosity_mm2_s_40c=THIN), (ONE,), "at 10 %"),
    ("US", mix(part("a", 10, ONE), viscosity_mm2_s_40c=EDGE), (ONE,), "20.5 still flows thin"),
    ("CA", mix(part("a", 10, ONE), viscosity_mm2_s_40c=THICK), (), "20.6 does not"),
    (
        "EU",
        mix(part("a", 9.1, ONE), part("b", 0.9, ONE), viscosity_mm2_s_40c=THIN),
        (),
        "0.9 % does not count",
    ),
    ("EU", mix(part("a", 9, ONE), part("b", 1, ONE), viscosity_mm2_s_40c=THIN), (ONE,), "1 % does"),
    ("UN", mix(part("a", 10, TWO), viscosity_mm2_s_40c=14), (TWO,), "category 2 at 14 mm²/s"),
    ("UN", mix(part("a", 10, TWO), viscosity_mm2_s_40c=14.1), (), "above 14"),
    ("EU", mix(part("a", 50, TWO), viscosity_mm2_s_40c=THIN), (), "category 2 is the UN's alone"),
    ("EU", mix(part("a", 50, ONE), form="gas"), (), "a gas is not swallowed"),
]


@pytest.mark.parametrize(("regime", "mixture", "hazards", "because"), SUMS)
def test_ingredients_of_one_percent_sum_where_the_whole_is_thin(
    regime: str, mixture: Mixture, hazards: tuple[str, ...], because: str
) -> None:
    answer = aspiration(mixture, regime)
    assert answer.hazards == hazards, because
    assert answer.needs_review == ()


@pytest.mark.parametrize("regime", ["EU", "US", "CA", "UN"])
def test_a_missing_viscosity_is_never_passed_in_silence(regime: str) -> None:
    answer = aspiration(mix(part("naphtha", 10, ONE)), regime)
    assert answer.hazards == ()
    assert answer.needs_review == (
        "Its ingredients of Asp. Tox. 1 H304 sum to 10 %, and its viscosity at 40 °C is not known: "
        "at or below 20.5 mm²/s the class stands.",
    )
    assert aspiration(mix(part("naphtha", 9.9, ONE)), regime).needs_review == ()
