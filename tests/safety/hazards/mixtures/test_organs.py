"""Irritated airways and drowsiness (STOT SE 3): summed, each effect for itself.

Expected: Σ ≥ 20 % (CLP Annex I 3.8.3.4.5, SOR/2015-17 s. 8.8); own limits of CLP Annex VI, ATP17 state:
hydrochloric acid H335 ≥ 10 %, ammonia ≥ 5 %, ethanolamine ≥ 5 %.
"""

import pytest

from safety.hazards.mixtures.organs import organs
from safety.hazards.mixtures.values import Limit, Mixture
from tests.safety.hazards.mixtures.making import mix, part

AMMONIA = (Limit("STOT SE 3 H335", 5),)
ACID = (Limit("STOT SE 3 H335", 10),)

SUMS = [
    # regime, mixture, hazards, because
    ("EU", mix(part("a", 19.9, "STOT SE 3 H336")), (), "below 20 %"),
    ("EU", mix(part("a", 20, "STOT SE 3 H336")), ("STOT SE 3 H336",), "at 20 %"),
    ("EU", mix(part("a", 12, "STOT SE 3 H336"), part("b", 7.9, "STOT SE 3 H336")), (), "the sum is 19.9"),
    (
        "EU",
        mix(part("a", 12, "STOT SE 3 H336"), part("b", 8, "STOT SE 3 H336")),
        ("STOT SE 3 H336",),
        "the sum is 20",
    ),
    (
        "US",
        mix(part("a", 12, "STOT SE 3 H336"), part("b", 8, "STOT SE 3 H336")),
        ("STOT SE 3 H336",),
        "as in the EU",
    ),
    ("CA", mix(part("a", 12, "STOT SE 3 H336"), part("b", 7.9, "STOT SE 3 H336")), (), "as in the EU"),
    (
        "UN",
        mix(part("a", 12, "STOT SE 3 H336"), part("b", 8, "STOT SE 3 H336")),
        ("STOT SE 3 H336",),
        "as in the EU",
    ),
    (
        "EU",
        mix(part("a", 15, "STOT SE 3 H336"), part("b", 15, "STOT SE 3 H335")),
        (),
        "effects are never mixed",
    ),
    (
        "EU",
        mix(part("a", 15, "STOT SE 3 H335+H336"), part("b", 5, "STOT SE 3 H335")),
        ("STOT SE 3 H335",),
        "one that has both effects counts in each sum: 20 and 15",
    ),
    ("EU", mix(part("ammonia", 4.9, "Skin Corr. 1B H314", limits=AMMONIA)), (), "below its own limit"),
    (
        "EU",
        mix(part("ammonia", 5, "Skin Corr. 1B H314", limits=AMMONIA)),
        ("STOT SE 3 H335",),
        "its limits name a class that its list lacks",
    ),
    (
        "EU",
        mix(part("ammonia", 2.5, limits=AMMONIA), part("acid", 5, limits=ACID)),
        ("STOT SE 3 H335",),
        "2.5 / 5 + 5 / 10 = 1",
    ),
    (
        "EU",
        mix(part("ammonia", 2.4, limits=AMMONIA), part("acid", 5, limits=ACID)),
        (),
        "2.4 / 5 + 5 / 10 = 0.98",
    ),
    (
        "EU",
        mix(part("acid", 5, "STOT SE 3 H335", limits=ACID), part("x", 10, "STOT SE 3 H335")),
        ("STOT SE 3 H335",),
        "5 / 10 + 10 / 20 = 1: own and generic limits side by side",
    ),
    ("US", mix(part("acid", 19.9, "STOT SE 3 H335", limits=ACID)), (), "own limits are the EU's"),
]


@pytest.mark.parametrize(("regime", "mixture", "hazards", "because"), SUMS)
def test_effects_are_summed_each_for_itself(
    regime: str, mixture: Mixture, hazards: tuple[str, ...], because: str
) -> None:
    assert organs(mixture, regime).hazards == hazards, because


def test_what_the_eu_limits_would_class_is_put_to_review_elsewhere() -> None:
    answer = organs(mix(part("ammonia", 6, "Skin Corr. 1B H314", limits=AMMONIA)), "CA")
    assert answer.hazards == ()
    assert answer.needs_review == (
        "STOT SE 3 H335 stays below 20 %, yet by its ingredients' own limits the EU gives it (ammonia 6 %): "
        "if it is known to act, the class stands (SOR/2015-17 s. 2.5(1)).",
    )
    assert organs(mix(part("ammonia", 4, limits=AMMONIA)), "CA").needs_review == ()
