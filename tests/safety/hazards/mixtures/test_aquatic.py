"""Harm to water life: weighed by M factors, summed.

Expected: CLP Annex I Tables 4.1.1 and 4.1.2 (from memory), 4.1.3.1 (relevant from 0.1 %/M, else 1 %: read
in a copy, reachlex.eu, 2026-11-25); sodium hypochlorite 5 % active: CLP Annex VI M = 10, chronic M = 1,
derived Aquatic Acute 1 and Chronic 2.
"""

import pytest

from safety.hazards.mixtures.aquatic import aquatic
from safety.hazards.mixtures.values import Found, Mixture
from tests.safety.hazards.mixtures.making import mix, part

A1, A2, A3 = "Aquatic Acute 1 H400", "Aquatic Acute 2 H401", "Aquatic Acute 3 H402"
C1, C2, C3, C4 = (
    "Aquatic Chronic 1 H410", "Aquatic Chronic 2 H411", "Aquatic Chronic 3 H412", "Aquatic Chronic 4 H413"
)  # fmt: skip


def acute(percent: float, m: float = 1, name: str = "a") -> Mixture:
    return part(name, percent, A1, m_acute=m)


def chronic(percent: float, hazard: str, m: float = 1, name: str = "c") -> Mixture:
    return part(name, percent, hazard, m_chronic=m)


SUMS = [
    # regime, mixture, hazards, because
    ("EU", mix(acute(24.9)), (), "below 25"),
    ("EU", mix(acute(25)), (A1,), "at 25"),
    ("EU", mix(acute(2.4, 10)), (), "2.4 × 10 = 24"),
    ("EU", mix(acute(2.5, 10)), (A1,), "2.5 × 10 = 25"),
    ("EU", mix(acute(12.5), acute(12.5, name="b")), (A1,), "two sum to 25"),
    (
        "EU",
        mix(*(acute(0.099, 1, f"a{at}") for at in range(300))),
        (),
        "each below 0.1 %: 29.7 is not summed",
    ),
    ("EU", mix(*(acute(0.1, 1, f"a{at}") for at in range(250))), (A1,), "each at 0.1 %: 25"),
    ("EU", mix(*(acute(0.0099, 10, f"a{at}") for at in range(300))), (), "each below 0.1 % / 10"),
    ("EU", mix(*(acute(0.01, 10, f"a{at}") for at in range(250))), (A1,), "each at 0.1 % / 10"),
    ("EU", mix(chronic(24.9, C1)), (C2,), "not 25, but ten times that"),
    ("EU", mix(chronic(25, C1)), (C1,), "at 25"),
    ("EU", mix(chronic(2.49, C1)), (C3,), "24.9 for Chronic 2, 249 for Chronic 3"),
    ("EU", mix(chronic(2.5, C1)), (C2,), "10 × 2.5"),
    ("EU", mix(chronic(0.249, C1)), (), "100 × 0.249 = 24.9"),
    ("EU", mix(chronic(0.25, C1)), (C3,), "100 × 0.25"),
    ("EU", mix(chronic(24.9, C2)), (C3,), "below 25 for Chronic 2, 249 for Chronic 3"),
    ("EU", mix(chronic(25, C2)), (C2,), "at 25"),
    ("EU", mix(chronic(2.49, C2)), (), "10 × 2.49"),
    ("EU", mix(chronic(2.5, C2)), (C3,), "10 × 2.5"),
    ("EU", mix(chronic(1, C1), chronic(15, C2, name="d")), (C2,), "10 × 1 + 15 = 25"),
    ("EU", mix(chronic(1, C1), chronic(14.9, C2, name="d")), (C3,), "24.9 is not enough for Chronic 2"),
    ("EU", mix(chronic(24.9, C3)), (), "below 25"),
    ("EU", mix(chronic(25, C3)), (C3,), "at 25"),
    ("EU", mix(chronic(24.9, C4)), (), "below 25"),
    ("EU", mix(chronic(25, C4)), (C4,), "at 25"),
    ("EU", mix(chronic(15, C3), chronic(10, C4, name="d")), (C4,), "15 + 10 of all four"),
    ("EU", mix(chronic(24.5, C4), chronic(0.9, C3, name="d")), (), "0.9 % of Chronic 3 is not relevant"),
    ("EU", mix(acute(30)), (A1,), "Acute 1 alone is not Chronic 1"),
    ("EU", mix(part("a", 50, A2)), (), "Acute 2 is the UN's alone"),
    ("UN", mix(acute(2.5)), (A2,), "10 × 2.5"),
    ("UN", mix(acute(2.4)), (A3,), "24 is not enough for Acute 2, 240 is for Acute 3"),
    ("UN", mix(acute(0.25)), (A3,), "100 × 0.25"),
    ("UN", mix(acute(0.24)), (), "100 × 0.24 = 24"),
    ("UN", mix(part("a", 25, A2)), (A2,), "at 25"),
    ("UN", mix(part("a", 24.9, A2)), (A3,), "249 for Acute 3"),
    ("UN", mix(part("a", 25, A3)), (A3,), "at 25"),
    ("UN", mix(part("a", 24.9, A3)), (), "below 25"),
    ("US", mix(acute(25)), (A1,), "optional in the US: the fuller label stands"),
]


@pytest.mark.parametrize(("regime", "mixture", "hazards", "because"), SUMS)
def test_weighed_percentages_are_summed(
    regime: str, mixture: Mixture, hazards: tuple[str, ...], because: str
) -> None:
    assert aquatic(mixture, regime).hazards == hazards, because


def test_canada_has_no_such_classes() -> None:
    assert aquatic(mix(part("a", 100, A1, C1)), "CA") == Found()


def test_a_missing_m_factor_counts_as_1_and_is_put_to_review() -> None:
    answer = aquatic(mix(part("bleach", 30, A1, C1)), "EU")
    assert answer.hazards == (A1, C1)
    assert answer.needs_review == (
        "bleach (30 %) is Aquatic Acute 1 and its acute M factor is not known: it counted as 1.",
        "bleach (30 %) is Aquatic Chronic 1 and its chronic M factor is not known: it counted as 1.",
    )


def test_a_missing_m_factor_is_asked_for_even_where_nothing_is_classed() -> None:
    assert len(aquatic(mix(part("trace", 0.05, A1)), "EU").needs_review) == 1
    assert aquatic(mix(part("x", 5, C2)), "EU").needs_review == (), "only category 1 has M factors"


def test_hypochlorite_of_5_percent_is_acute_1_and_chronic_2() -> None:
    bleach = part("sodium hypochlorite", 5, A1, C1, m_acute=10, m_chronic=1)
    assert aquatic(mix(bleach), "EU").hazards == (A1, C2)


def test_the_us_answer_says_that_it_is_optional() -> None:
    assert "optional in the US" in aquatic(mix(acute(25)), "US").because[0].rule
