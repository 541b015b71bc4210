"""What a measurement ends, and what it does not: refusals first, each beside what is left in peace.

100 ml of wipe reckon to 50.7 % of the 15-minute limit and ask; 234 ml to 119 % and stop (airs.py, by hand).
"""

from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inventory.precheck.questions.topics.air import AirPlace, AirStep
from inventory.precheck.questions.topics.measured import Measurement
from tests.inventory.precheck.airs import BAY_2, HOLLIN, finding, found, said, wiping
from tests.inventory.precheck.measurings import ARM, TWA, bay, measured, samples


def exposed(step: AirStep, place: AirPlace, **more: object) -> str:
    """Return the grade of an exposure, "tell" where the note carries it."""
    return dict(said(step, place=place, **more)).get("air.exposure", "tell")  # type: ignore[arg-type]


UNDER_ARM = measured(exhaust="Extraction arm")
STEP = wiping(100)


@pytest.mark.parametrize(
    ("one", "step", "says"),
    [
        (
            measured(amount=99_000), STEP,
            "the step takes 100 ml and at most 99 ml was measured",
        ),
        (
            measured(minutes=29), STEP,
            "the step takes 30 minutes and 29 were measured",
        ),
        (
            measured(amount=150_000, minutes=60), STEP,
            "the step uses 3.33 ml a minute and 2.5 ml were measured",
        ),
        (
            measured(until_on=date(2026, 11, 26)), STEP,
            "it ended on 26 November 2026",
        ),
        (
            measured(measured_on=date(2026, 11, 28)), STEP,
            "it was made after the step",
        ),
        (
            UNDER_ARM, STEP,
            "it was made under Extraction arm, and the step is not",
        ),
        (
            UNDER_ARM, wiping(100, exhaust=True),
            "it was made under Extraction arm, which is not here",
        ),
    ],
)  # fmt: skip
def test_a_measurement_that_does_not_cover_the_step_ends_nothing_and_says_why(
    one: Measurement, step: AirStep, says: str
) -> None:
    asked = finding("air.exposure", step, place=bay(one))
    assert asked.grade == "ask"
    assert asked.says == (
        "Panel wipe, Bay 2: who works here breathes 50.7 % of the 15-minute limit (isopropanol)."
    )
    on = f"{one.measured_on.day} {one.measured_on:%B %Y}"
    assert f"The measurement of Hollin panel wipe on {on} does not count here: {says}." in asked.because


@pytest.mark.parametrize(
    ("arm", "says"),
    [
        (replace(ARM, until_on=date(2026, 11, 26)), "Extraction arm, examined to 26 November 2026"),
        (replace(ARM, examined_on=date(2026, 11, 28)), "Extraction arm, examined only on 28 November 2026"),
        (
            replace(ARM, ended_on=date(2026, 11, 20)),
            "Extraction arm, which is here no more since 20 November 2026",
        ),
        (replace(ARM, name="Ceiling fan"), "Extraction arm, which is not here"),
    ],
)
def test_what_was_measured_under_an_exhaust_counts_only_while_that_one_is_examined(
    arm: object, says: str
) -> None:
    step = wiping(100, exhaust=True)
    asked = finding("air.exposure", step, place=bay(UNDER_ARM, exhausts=(arm,)))
    assert f"it was made under {says}." in asked.because
    assert exposed(step, bay(UNDER_ARM, exhausts=(ARM,))) == "tell"
    again = replace(ARM, name="extraction ARM", examined_on=date(2026, 11, 27), until_on=date(2028, 1, 1))
    assert exposed(step, bay(UNDER_ARM, exhausts=(again,))) == "tell", "examined again under the same name"


def test_a_wipe_that_was_measured_is_told_with_who_measured_when_and_how_much() -> None:
    assert exposed(STEP, BAY_2) == "ask"
    note = finding("air.note", replace(STEP, ends_at=STEP.ends_at), place=bay(measured()))
    assert "Who works here breathes 9.8 % of the 15-minute limit (isopropanol), as measured." in note.because
    assert (
        "Measured on 2 June 2026 by A. Finch, pumped tubes: Hollin panel wipe, at most 200 ml in 30 minutes, "
        "to 1 June 2027. Isopropanol against the 15-minute limit: 3 results, the largest 49 ppm, 9.8 % of "
        "500 ppm (UK WEL, read in a copy): shown to be below it." in note.because
    )
    assert "Keep to what was measured: Hollin panel wipe, at most 200 ml in 30 minutes" in note.because


@pytest.mark.parametrize(
    ("one", "because"),
    [
        (measured(amount=100_000), "just as much as was measured"),
        (measured(minutes=30), "just as long"),
        (measured(amount=200_000, minutes=60), "just as fast"),
        (measured(until_on=date(2026, 11, 27)), "on its last day"),
        (measured(measured_on=date(2026, 11, 27)), "on its first day"),
    ],
)
def test_a_measurement_counts_up_to_its_own_bounds(one: Measurement, because: str) -> None:
    assert exposed(STEP, bay(one)) == "tell", because


def test_a_step_that_would_stop_by_the_model_goes_on_where_it_was_measured() -> None:
    wipe = wiping(234)
    assert exposed(wipe, BAY_2) == "stop"
    assert exposed(wipe, bay(measured(amount=234_000))) == "tell"
    assert "No air flow is enough" in finding("air.exposure", wipe, place=BAY_2).because
    note = finding("air.note", wipe, place=bay(measured(amount=234_000)))
    assert "No air flow is enough" not in note.because, "who measured has answered it"
    assert "A respirator would be needed" not in note.because


def test_a_result_at_the_limit_stops_with_its_numbers_whatever_the_model_says() -> None:
    small = wiping(10)
    assert exposed(small, BAY_2) == "tell"
    stop = finding("air.exposure", small, place=bay(measured(*samples(500, 20, 20))))
    assert (stop.grade, stop.says) == (
        "stop",
        "Panel wipe, Bay 2: who works here breathes 100 % of the 15-minute limit (isopropanol), as measured.",
    )
    assert "3 results, the largest 500 ppm, 100 % of 500 ppm" in stop.because
    assert "As planned here" not in stop.do, "the model's own way out does not follow what was measured"


@pytest.mark.parametrize(
    ("one", "grade", "because"),
    [
        (measured(*samples(500), amount=50_000), "stop", "twice of what reached the limit already"),
        (measured(*samples(500), exhaust="Extraction arm"), "stop", "it reached the limit under exhaust"),
        (measured(*samples(500), minutes=10, amount=100_000), "ask", "three times slower than was measured"),
        (measured(*samples(500), until_on=date(2026, 11, 1)), "ask", "it is no longer in date"),
    ],
)
def test_what_reached_the_limit_counts_where_the_step_is_no_better(
    one: Measurement, grade: str, because: str
) -> None:
    assert exposed(STEP, bay(one)) == grade, because


@pytest.mark.parametrize(
    ("results", "grade", "because"),
    [
        (samples(49, 48), "ask", "two results are no test, and the 8 hours stay with the model"),
        (samples(49, 48, 51), "ask", "51 is 10.2 % of 500"),
        (samples(49, 48, 51, 74), "tell", "four below 75, and the model's 8-hour figure is below a tenth"),
        (samples(39, 38, 35, kind=TWA), "ask", "15 minutes were not measured: the model's 50.7 % stand"),
        (samples(1, 1, 1, cas="67-64-1", name="Acetone"), "ask", "another substance"),
    ],
)
def test_what_results_of_the_wipe_end(results: tuple, grade: str, because: str) -> None:
    assert exposed(STEP, bay(measured(*results))) == grade, because


def test_the_newest_measurement_that_covers_the_step_counts() -> None:
    newer = measured(*samples(500), measured_on=date(2026, 10, 1))
    assert exposed(STEP, bay(newer, measured())) == "stop"
    assert exposed(STEP, bay(measured(), newer)) == "tell"
    small = measured(*samples(20), measured_on=date(2026, 10, 1), amount=20_000)
    assert exposed(STEP, bay(small, measured())) == "tell", "the newer one covers 20 ml alone"


@pytest.mark.parametrize(
    ("place", "step", "because"),
    [
        (bay(measured(product="XOTRKLNB")), STEP, "of another product"),
        (bay(), STEP, "nothing was measured"),
        (bay(measured(*samples(1, 1, 1))), wiping(100, bay=None), "measured in a bay, and the step has none"),
        (bay(measured()), wiping(5, inside=True), "measured in the bay, and the step is in the car's cabin"),
    ],
)
def test_a_measurement_of_another_product_or_place_changes_nothing(
    place: AirPlace, step: AirStep, because: str
) -> None:
    assert found(step, place=place) == found(step, place=replace(place, measurements=())), because


@given(
    st.floats(1, 400), st.lists(st.floats(0, 1000), min_size=1, max_size=8), st.integers(1, 10**6),
    st.integers(1, 960), st.sampled_from([BAY_2.code, "POTHKLNB"]), st.booleans(),
)  # fmt: skip
@settings(max_examples=100, deadline=None)
def test_whatever_was_measured_of_another_product_or_elsewhere_the_check_says_the_same(
    ml: float, ppm: list[float], amount: int, minutes: int, where: str, exhaust: bool
) -> None:
    here = where == BAY_2.code
    product = "XOTRKLNB" if here else HOLLIN.code
    one = measured(*samples(*ppm), product=product, amount=amount, minutes=minutes)
    other = replace(BAY_2, code="POTHKLNB", name="Bay 3", measurements=() if here else (one,))
    place = bay(*([one] if here else []))
    step = wiping(ml, exhaust=exhaust)
    places = {place.code: place, other.code: other}
    assert found(step, places=places) == found(step)
