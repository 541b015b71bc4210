"""Limits that only the EU knows: what they decide there, and what they make others ask.

SOR/2015-17 s. 2.5(1): a class below a cut-off that is known still to act is classed. CLP Art 10: a specific
limit replaces the generic one of its own class and category.
"""

import pytest

from safety.hazards.mixtures.rules import classify
from safety.hazards.mixtures.values import Limit
from tests.safety.hazards.mixtures.making import mix, part

ELSEWHERE = ("US", "CA", "UN")
IRRIT, EYE, BURNS = "Skin Irrit. 2 H315", "Eye Irrit. 2 H319", "Skin Corr. 1B H314"
SENSITISER, POISON = "Skin Sens. 1A H317", "Acute Tox. 3 H301"


@pytest.mark.parametrize("regime", ELSEWHERE)
@pytest.mark.parametrize(
    ("percent", "carries", "own", "because"),
    [
        (0.002, SENSITISER, Limit(SENSITISER, 0.0015), "below every cut-off"),
        (0.5, BURNS, Limit(IRRIT, 0.1), "below the cut-off of 1 %"),
        (5, IRRIT, Limit(IRRIT, 3), "above the cut-off, below the generic limit of 10 %"),
        (5, EYE, Limit(EYE, 3), "the same of eyes"),
        (2, BURNS, Limit(BURNS, 2), "irritant by the sum, yet known to burn"),
        (15, IRRIT, Limit(POISON, 10), "a class that its own list lacks"),
        (15, IRRIT, Limit("Flam. Liq. 2 H225", 10), "a physical class"),
    ],
)
def test_a_limit_that_the_eu_knows_is_asked_about_elsewhere(
    regime: str, percent: float, carries: str, own: Limit, because: str
) -> None:
    answer = classify(mix(part("x", percent, carries, limits=(own,)), ph=7), regime)
    said = (
        f"x ({percent:g} %) is below the cut-off, yet the EU classes it {own.hazard} from "
        f"{own.from_percent:g} %: if it is known to act, it counts (SOR/2015-17 s. 2.5(1))."
    )
    assert answer.needs_review.count(said) == 1, because


@pytest.mark.parametrize(
    ("percent", "carries", "own", "because"),
    [
        (12, IRRIT, Limit(IRRIT, 3), "the class stands already"),
        (6, BURNS, Limit(EYE, 1), "what burns skin says more than irritating eyes"),
        (2, IRRIT, Limit(IRRIT, 3), "the limit is not reached"),
        (5, IRRIT, Limit("EUH031", 3), "a statement of the EU alone"),
        (15, IRRIT, Limit("PMT EUH450", 1), "no class in these regimes"),
    ],
)
def test_nothing_is_asked_where_the_limit_says_no_more(
    percent: float, carries: str, own: Limit, because: str
) -> None:
    answer = classify(mix(part("x", percent, carries, limits=(own,)), ph=7), "US")
    assert [said for said in answer.needs_review if "known to act" in said] == [], because


def test_only_the_gravest_limit_of_an_outcome_is_asked_about() -> None:
    bands = (Limit(IRRIT, 0.1, 0.5), Limit(BURNS, 0.5))
    answer = classify(mix(part("x", 0.6, BURNS, limits=bands), ph=7), "CA")
    (said,) = (said for said in answer.needs_review if "Skin" in said and "known to act" in said)
    assert BURNS in said


@pytest.mark.parametrize(
    ("percent", "carries", "own", "classes", "because"),
    [
        (
            1,
            "Repr. 1A H360Df",
            Limit("Repr. 2 H361f", 2.5),
            ["Repr. 1A H360Df"],
            "1A from 0.3 % by the table",
        ),
        (3, "Repr. 1A H360Df", Limit("Repr. 2 H361f", 2.5), ["Repr. 1A H360Df"], "the graver one stands"),
        (
            4,
            "Repr. 1B H360D",
            Limit("Repr. 2 H361f", 0.3),
            ["Repr. 1B H360Df"],
            "both, said in one code",
        ),
        (12, "STOT RE 1 H372", Limit("STOT RE 2 H373", 5, 10), ["STOT RE 1 H372"], "from 10 % by the table"),
        (6, "STOT RE 1 H372", Limit("STOT RE 2 H373", 5, 10), ["STOT RE 2 H373"], "its own band"),
        (2, "STOT RE 1 H372", Limit("STOT RE 2 H373", 5, 10), [], "its own limit replaces the generic 1 %"),
        (0.3, "Resp. Sens. 1 H334", Limit("Resp. Sens. 1 H334", 0.5), [], "its own limit replaces 1.0 %"),
    ],
)
def test_in_the_eu_a_limit_decides_its_own_category_and_no_other(
    percent: float, carries: str, own: Limit, classes: list[str], because: str
) -> None:
    answer = classify(mix(part("x", percent, carries, limits=(own,)), ph=7), "EU")
    assert list(answer.hazards) == classes, because


def test_an_aerosol_says_once_a_route_how_much_is_unknown() -> None:
    gas = part("carbon dioxide", 5, "Press. Gas (Liq.) H280", no_acute_toxicity=True)
    spray = mix(part("x", 50, unknown=frozenset({"oral", "dermal", "inhalation"})), gas, form="aerosol")
    said = [text for text in classify(spray, "EU").supplemental if "unknown acute" in text]
    assert said == [
        "50 % of the mixture consists of ingredient(s) of unknown acute inhalation toxicity",
        "52.63 % of the mixture consists of ingredient(s) of unknown acute dermal toxicity",
        "52.63 % of the mixture consists of ingredient(s) of unknown acute oral toxicity",
    ]
