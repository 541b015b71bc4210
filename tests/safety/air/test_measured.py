"""What results of a measurement show: refusals first, each figure worked by hand from the published limit.

Isopropanol: OSHA PEL and NIOSH REL 400 ppm (980 mg/m³), WEL 400 ppm (exposure.md section 2). A tenth is 40,
15 % is 60, a fifth is 80 ppm. The preliminary test is EN 689:2018, 5.5.2, from memory.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from safety.air.measured import (
    BELOW,
    NOT_JUDGED,
    OPEN,
    OVER,
    bar,
    in_words,
    judged,
    not_measured,
    still_wanted,
    verdict,
)
from safety.air.values import Limit
from tests.safety.air.results import CEILING, ON, SHORT, TWA, samples


def one(*values: float, regime: str = "US", typed: dict[str, tuple[Limit, ...]] | None = None, **more: str):
    """Return the judgement of results of one substance against one kind of limit."""
    [found] = judged(samples(*values, **more), regime, ON, typed or {})
    return found


@pytest.mark.parametrize(
    ("values", "shown", "because"),
    [
        ((39, 38, 400), OVER, "400 is the limit itself"),
        ((400,), OVER, "one result at the limit is enough"),
        ((39, 38), OPEN, "two results are no test"),
        ((39, 38, 41), OPEN, "41 is 10.25 %, and three want 10 %"),
        ((39, 38, 40), OPEN, "40 is a tenth, not below it"),
        ((39, 38, 41, 60), OPEN, "60 is 15 %, not below it"),
        ((39, 38, 41, 59, 80), OPEN, "80 is a fifth, not below it"),
        ((1, 1, 1, 1, 1, 81), OPEN, "one of six above a fifth wants a statistician"),
        ((39, 38, 35), BELOW, "three below 40"),
        ((39, 38, 41, 59), BELOW, "four below 60"),
        ((39, 38, 41, 59, 79), BELOW, "five below 80"),
        ((0, 0, 0), OPEN, "no method finds nothing: it finds less than its reporting limit"),
        ((39, 38, 0), OPEN, "one result of nothing"),
        ((400, 0, 0), OVER, "400 is the limit, whatever else was typed"),
        ((0.1, 0.1, 0.1), BELOW, "the reporting limit, three times"),
    ],
)
def test_what_results_of_isopropanol_show_against_400_ppm(
    values: tuple[float, ...], shown: str, because: str
) -> None:
    assert verdict(one(*values)) == shown, because


@pytest.mark.parametrize(
    ("values", "wanted"),
    [
        ((20,), "2 more results are needed, and all 3 below 10 %."),
        ((39, 38), "One more result is needed, and all 3 below 10 %."),
        ((39, 38, 41), "One more result is needed, and all 4 below 15 %."),
        (
            (0, 0, 0),
            "Type the reporting limit of the method where nothing was found: a result of 0 shows nothing.",
        ),
        ((39, 38, 61), "2 more results are needed, and all 5 below 20 %."),
        (
            (39, 38, 90),
            "The preliminary test cannot decide it: six results or more and a statistician's test can.",
        ),
    ],
)
def test_what_is_open_says_what_would_decide_it(values: tuple[float, ...], wanted: str) -> None:
    assert still_wanted(one(*values)) == wanted


def test_a_result_in_a_unit_that_the_limit_is_not_published_in_is_not_judged() -> None:
    """Trap 9: the OSHA PEL of hydrogen fluoride is 3 ppm, without mg/m³; none is made from the other."""
    found = one(0.1, 0.1, 0.1, cas="7664-39-3", unit="mg_m3", regime="US")
    assert verdict(found) == NOT_JUDGED
    assert in_words(found).startswith(
        "Hydrogen fluoride against the 8-hour limit cannot be judged: it was measured in mg/m³, and OSHA PEL"
    )


def test_a_kind_of_limit_that_no_list_holds_is_not_judged() -> None:
    found = one(10, 10, 10, kind=CEILING, regime="UK")
    assert in_words(found) == (
        "Isopropanol against the ceiling cannot be judged: no ceiling of isopropanol is listed in UK WEL."
    )


def test_the_lowest_limit_of_the_regime_judges() -> None:
    """Acetone: OSHA 1000 ppm, NIOSH 250: 24 ppm are 9.6 % of the lower, 26 are 10.4 %."""
    assert verdict(one(24, 24, 24, cas="67-64-1")) == BELOW
    assert verdict(one(26, 26, 26, cas="67-64-1")) == OPEN
    assert one(26, cas="67-64-1").limit.source == "NIOSH REL"  # type: ignore[union-attr]


def test_the_limit_that_the_shop_typed_judges_in_the_eu() -> None:
    """200 ppm typed: 19 ppm are 9.5 %; the EU itself lists none of isopropanol."""
    typed = {"67-63-0": (Limit("national list, 2026", TWA, 200.0, None, "typed"),)}
    assert verdict(one(19, 19, 19, regime="EU", typed=typed)) == BELOW
    assert verdict(one(21, 19, 19, regime="EU", typed=typed)) == OPEN
    assert verdict(one(19, 19, 19, regime="EU")) == NOT_JUDGED


def test_what_is_said_of_results_holds_the_numbers_and_the_list() -> None:
    assert in_words(one(39, 38, 35, regime="UK")) == (
        "Isopropanol against the 8-hour limit: 3 results, the largest 39 ppm, 9.75 % of 400 ppm (UK WEL, "
        "read in a copy): shown to be below it."
    )
    assert in_words(one(400, regime="UK")) == (
        "Isopropanol against the 8-hour limit: 1 result, 400 ppm, 100 % of 400 ppm (UK WEL, read in a "
        "copy): at or above it."
    )


def test_the_letter_before_a_hyphen_stays_small_in_a_sentence() -> None:
    found = one(10, regime="UK", cas="123-86-4")
    assert in_words(found).startswith(
        "n-butyl acetate against the 8-hour limit: 1 result, 10 ppm, 6.67 % of 150 ppm"
    )


def test_a_kind_of_limit_that_exists_and_was_not_measured_is_named() -> None:
    """The WEL of isopropanol has 8 hours and 15 minutes; only 8 hours were measured."""
    found = judged(samples(39, 38, 35), "UK", ON, {})
    assert not_measured(found, "UK", ON, {}) == (("isopropanol", SHORT),)
    both = judged(samples(39, 38, 35) + samples(49, 48, 47, kind=SHORT), "UK", ON, {})
    assert not_measured(both, "UK", ON, {}) == ()


@given(st.lists(st.floats(0, 1000), min_size=1, max_size=8), st.floats(0, 1000))
def test_a_larger_result_never_makes_the_judgement_lighter(values: list[float], more: float) -> None:
    order = [BELOW, OPEN, OVER]
    raised = [values[0] + more, *values[1:]]
    assert order.index(verdict(one(*raised))) >= order.index(verdict(one(*values)))


@pytest.mark.parametrize(("results", "below"), [(0, 0.0), (2, 0.0), (3, 0.1), (4, 0.15), (5, 0.2), (8, 0.2)])
def test_the_bar_by_the_number_of_results(results: int, below: float) -> None:
    assert bar(results) == below
