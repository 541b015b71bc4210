"""What a newer measurement over a limit says against an older one below it, and of work that is no better.

WEL of isopropanol: 500 ppm in 15 minutes (exposure.md section 2), so 620 ppm are 124 % and 600 ppm are 120 %.
By the model 234 ml are 119 % and stop, 100 ml are 50.7 % and ask (airs.py, by hand).
"""

from dataclasses import replace
from datetime import date

import pytest

from inventory.precheck.questions.coverage import Lists, Work
from inventory.precheck.questions.measured import standing
from inventory.precheck.questions.topics.air import AirPlace, AirStep
from inventory.precheck.questions.topics.measured import Measurement
from tests.inventory.precheck.airs import HOLLIN, finding, said, wiping
from tests.inventory.precheck.cases import ML
from tests.inventory.precheck.measurings import ARM, SHORT, TWA, bay, measured, samples

SEPTEMBER = measured(*samples(49, 48, 47), amount=300 * ML, measured_on=date(2026, 9, 2))
NOVEMBER = measured(
    *samples(600, 620, 610), amount=150 * ML, minutes=15, measured_on=date(2026, 11, 20),
)  # fmt: skip
OVER_100 = measured(*samples(600), amount=100 * ML, minutes=15)


def exposed(step: AirStep, place: AirPlace) -> str:
    """Return the grade of an exposure, "tell" where the note carries it."""
    return dict(said(step, place=place)).get("air.exposure", "tell")


def test_a_newer_measurement_over_the_limit_stops_what_an_older_one_shows_to_be_kept() -> None:
    stop = finding("air.exposure", wiping(234), place=bay(NOVEMBER, SEPTEMBER))
    assert (stop.grade, stop.says) == (
        "stop",
        "Panel wipe, Bay 2: who works here breathes 124 % of the 15-minute limit (isopropanol), as measured.",
    )
    assert (
        "The measurement of Hollin panel wipe on 20 November 2026 reached a limit, and the step is no better"
        ": the step takes 234 ml and at most 150 ml was measured; the step takes 30 minutes and 15 were "
        "measured." in stop.because
    )


def test_without_the_newer_one_or_with_it_below_the_older_one_counts() -> None:
    assert exposed(wiping(234), bay(SEPTEMBER)) == "tell"
    below = replace(NOVEMBER, samples=samples(49, 48, 47))
    assert exposed(wiping(234), bay(below, SEPTEMBER)) == "tell"


def test_a_newer_one_that_is_below_ends_what_an_older_one_reached() -> None:
    again = replace(SEPTEMBER, measured_on=date(2026, 11, 25))
    assert exposed(wiping(234), bay(again, NOVEMBER)) == "tell"


def test_what_a_newer_one_contradicts_ends_nothing_for_less_work_either() -> None:
    """50 ml in 30 minutes are better than 150 ml in 15, so the model's 25.3 % stand: neither counts."""
    asked = finding("air.exposure", wiping(50), place=bay(NOVEMBER, SEPTEMBER))
    assert (asked.grade, asked.says) == (
        "ask",
        "Panel wipe, Bay 2: who works here breathes 25.3 % of the 15-minute limit (isopropanol).",
    )
    assert (
        "The measurement of Hollin panel wipe on 20 November 2026 does not count here: the step takes 30 "
        "minutes and 15 were measured. The measurement of Hollin panel wipe on 2 September 2026 does not "
        "count here: the one on 20 November 2026 reached a limit with no more work." in asked.because
    )
    assert exposed(wiping(50), bay(SEPTEMBER)) == "tell"


def test_what_is_contradicted_stays_so_when_the_newer_one_is_out_of_date() -> None:
    ended = replace(NOVEMBER, until_on=date(2026, 11, 26))
    assert exposed(wiping(234), bay(ended, SEPTEMBER)) == "stop"
    asked = finding("air.exposure", wiping(100), place=bay(ended, SEPTEMBER))
    assert asked.grade == "ask", "the model's 50.7 %"
    assert "it ended on 26 November 2026" in asked.because


@pytest.mark.parametrize(
    ("amount", "minutes", "grade", "because"),
    [
        (150, 15, "ask", "just as fast as the older one: it would have covered this"),
        (151, 15, "tell", "faster than the older one"),
        (301, 29, "tell", "more than the older one"),
    ],
)
def test_a_newer_one_of_worse_work_than_the_older_one_leaves_it_to_better_work(
    amount: int, minutes: int, grade: str, because: str
) -> None:
    newer = replace(NOVEMBER, amount=amount * ML, minutes=minutes)
    assert exposed(wiping(50), bay(newer, SEPTEMBER)) == grade, because


def test_a_newer_one_without_the_arm_says_nothing_against_what_was_measured_under_it() -> None:
    under = replace(SEPTEMBER, exhaust="Extraction arm")
    place = bay(NOVEMBER, under, exhausts=(ARM,))
    assert exposed(wiping(100, exhaust=True), place) == "tell"
    armed = replace(NOVEMBER, minutes=10, exhaust="extraction arm", amount=90 * ML)
    assert exposed(wiping(50, exhaust=True), bay(armed, under, exhausts=(ARM,))) == "ask"


def held(work: Work, *measurements: Measurement) -> list[str]:
    """Return the largest figure of each result that counts for a step's work."""
    stands, _ = standing(work, measurements, (), Lists("UK", date(2026, 11, 27), {}))
    return [f"{each.most:g} {each.kind}" for each in stands]


@pytest.mark.parametrize(
    ("ml", "minutes", "counts", "because"),
    [
        (50, 30, False, "half as much, and slower"),
        (99, 16, False, "less, and slower"),
        (100, 16, True, "as much: all of it may be used in the first quarter of an hour"),
        (200, 30, True, "the same rate for longer: a quarter of an hour is breathed no less"),
        (200, 15, True, "twice the rate"),
        (100, 15, True, "the same work"),
        (10, 1, True, "less, and faster"),
        (120, 30, True, "more: all of it may be used in the first quarter of an hour"),
    ],
)
def test_what_reached_the_limit_with_100_ml_in_15_minutes_counts_where_the_step_is_no_better(
    ml: int, minutes: int, counts: bool, because: str
) -> None:
    work = Work(HOLLIN.code, ml * ML, minutes, date(2026, 11, 27))
    assert held(work, OVER_100) == ([f"600 {SHORT}"] if counts else []), because


def test_work_that_is_faster_than_an_hour_that_reached_the_limit_counts_though_it_takes_less() -> None:
    """3.3 ml a minute against 2.5 ml, which the first quarter of an hour alone would not show."""
    hour = replace(OVER_100, amount=150 * ML, minutes=60)
    assert held(Work(HOLLIN.code, 100 * ML, 30, date(2026, 11, 27)), hour) == [f"600 {SHORT}"]
    assert held(Work(HOLLIN.code, 100 * ML, 61, date(2026, 11, 27)), hour) == []


def test_200_ml_in_30_minutes_stop_where_100_ml_in_15_reached_the_limit() -> None:
    stop = finding("air.exposure", wiping(200), place=bay(OVER_100))
    assert (stop.grade, stop.says) == (
        "stop",
        "Panel wipe, Bay 2: who works here breathes 120 % of the 15-minute limit (isopropanol), as measured.",
    )


def test_of_a_newer_one_only_what_reached_a_limit_is_taken() -> None:
    newer = replace(NOVEMBER, samples=(*samples(600), *samples(5, kind=TWA)), amount=151 * ML)
    older = replace(SEPTEMBER, samples=(*samples(49, 48, 47), *samples(39, 38, 35, kind=TWA)))
    work = Work(HOLLIN.code, 234 * ML, 30, date(2026, 11, 27))
    assert held(work, newer, older) == [f"600 {SHORT}", f"39 {TWA}"]


def test_what_is_sprayed_is_not_what_was_measured() -> None:
    """The model adds the mist; the wipe's own vapour is 119 % as before."""
    place = bay(SEPTEMBER)
    stop = finding("air.exposure", wiping(234, sprayed=True), place=place)
    assert stop.grade == "stop"
    assert (
        "The measurement of Hollin panel wipe on 2 September 2026 does not count here: the step sprays it as "
        "a mist, and work without a mist was measured." in stop.because
    )
    assert exposed(wiping(234), place) == "tell"


def test_what_reached_the_limit_without_a_mist_stops_with_one_too() -> None:
    over = replace(SEPTEMBER, samples=samples(620))
    assert exposed(wiping(10, sprayed=True), bay(over)) == "stop"
    assert exposed(wiping(10, sprayed=True), bay(SEPTEMBER)) != "stop"
