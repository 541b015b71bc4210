"""What a mixture's document says: what is missing, what adds up, what stands apart."""

import pytest

from safety.hazards.mixtures.fields import MixtureError
from safety.hazards.mixtures.reading import read_mixture
from safety.hazards.mixtures.values import Limit
from tests.safety.hazards.mixtures.making import Document, alcohol, document, limits


def test_missing_keys_and_null_mean_unknown() -> None:
    bare = read_mixture({"ingredients": [{"name": "x", "percent": 5}]})
    null = read_mixture(
        document(
            {
                "name": "x", "percent": 5, "cas": None, "hazards": None, "limits": None,
                "ate": {"oral": None},
                "unknown": None, "m_acute": None, "m_chronic": None, "ph": None, "additive": None,
                "no_acute_toxicity": None,
            },
            form=None, ph=None, flash_point_c=None, boiling_point_c=None, viscosity_mm2_s_40c=None,
        )
    )  # fmt: skip
    assert bare == null
    assert (bare.form, bare.ph, bare.ingredients[0].hazards) == ("", None, None)


def test_upper_ends_may_sum_above_100_and_count() -> None:
    read = read_mixture(document(alcohol(percent=[50, 90]), alcohol(name="b", cas=None, percent=[10, 50])))
    assert [(one.least, one.percent) for one in read.ingredients] == [(50, 90), (10, 50)]


def test_percentages_that_are_100_in_decimals_are_100() -> None:
    thirds = [
        alcohol(name=f"x{at}", cas=None, percent=percent) for at, percent in enumerate((33.3, 33.3, 33.4))
    ]
    assert len(read_mixture(document(*thirds)).ingredients) == 3


UNKNOWN = [
    # what is given, routes that are unknown, because
    ({"hazards": None}, {"oral", "dermal", "inhalation"}, "nobody looked, no value"),
    ({"hazards": None, "ate": {"oral": 300}}, {"dermal", "inhalation"}, "a value makes its route known"),
    ({"hazards": None, "ate": {"dust_mist": 3}}, {"oral", "dermal"}, "any inhaled form is a value"),
    ({"hazards": []}, set(), "looked at and not classified"),
    ({"hazards": [], "unknown": ["oral"]}, {"oral"}, "named"),
    ({"hazards": None, "no_acute_toxicity": True}, set(), "marked"),
    ({"hazards": None, "no_acute_toxicity": True, "unknown": ["dermal"]}, {"dermal"}, "named all the same"),
    ({"hazards": None, "name": "Water"}, set(), "water is known"),
    ({"hazards": None, "cas": "7732-18-5"}, set(), "water by its number"),
]


@pytest.mark.parametrize(("given", "routes", "because"), UNKNOWN)
def test_a_route_is_unknown_if_named_or_never_looked_at(
    given: Document, routes: set[str], because: str
) -> None:
    assert read_mixture(document(alcohol(**given))).ingredients[0].unknown == routes, because


def test_statements_among_the_hazards_stand_apart() -> None:
    one = read_mixture(document(alcohol(hazards=["Flam. Liq. 2, H225", "EUH066"]))).ingredients[0]
    assert [str(hazard) for hazard in one.hazards or ()] == ["Flam. Liq. 2 H225"]
    assert one.supplemental == ("EUH066",)


def test_limits_of_different_outcomes_may_overlap() -> None:
    """CLP Annex VI, 7722-84-1 in part: skin, eyes and airways each have rows of their own."""
    rows = limits(
        (50, 70, "Skin Corr. 1B H314"), (35, 50, "Skin Irrit. 2 H315"), (8, 50, "Eye Dam. 1 H318"),
        (5, 8, "Eye Irrit. 2 H319"), (35, None, "STOT SE 3 H335"), (5, None, "EUH031"),
    )  # fmt: skip
    read = read_mixture(document(rows)).ingredients[0].limits
    assert len(read) == 6
    assert read[0] == Limit("Skin Corr. 1B H314", 50, 70)


def test_one_substance_in_two_lines_is_added_up() -> None:
    """A cut-off is the substance's own: half of it in each of two lines must not slip below."""
    twice = read_mixture(document(alcohol(percent=4), alcohol(name="isopropyl alcohol", percent=[3, 5])))
    assert [(one.name, one.least, one.percent) for one in twice.ingredients] == [("propan-2-ol", 7, 9)]
    named = read_mixture(document({"name": "Soap", "percent": 4}, {"name": "soap", "percent": 5}))
    assert [one.percent for one in named.ingredients] == [9], "without a CAS number its name tells"


def test_one_substance_in_two_lines_with_unlike_facts_is_refused() -> None:
    with pytest.raises(MixtureError) as refused:
        read_mixture(document(alcohol(percent=4), alcohol(percent=5, hazards=["Eye Irrit. 2 H319"])))
    assert str(refused.value) == (
        "The mixture: “propan-2-ol” and “propan-2-ol” are one substance (67-63-0) with unlike facts. "
        "Cut-offs are a substance's own: write it on one line."
    )


@pytest.mark.parametrize("cas", ["67-63-0", "67-64-1", "7732-18-5", "1310-73-2", "78-10-4"])
def test_true_cas_numbers_pass(cas: str) -> None:
    """Numbers of CLP Annex VI entries, and of water."""
    assert read_mixture(document(alcohol(cas=cas))).ingredients[0].cas == cas
