"""Local exhaust that a step counts on: examined, in date, catching what arises; what it ends and what not."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from inventory.precheck.questions.topics.air import AirPlace, AirStep
from tests.inventory.precheck.airs import BEFORE, BRACK, QUELL, finding, said, wiping
from tests.inventory.precheck.cases import FRIDAY
from tests.inventory.precheck.measurings import ARM, bay


@pytest.mark.parametrize(
    ("place", "step", "stopped", "because"),
    [
        (bay(), wiping(60, QUELL, sprayed=True, exhaust=True), True, "no exhaust is written down"),
        (bay(exhausts=(replace(ARM, catches="vapour"),)), wiping(60, QUELL, sprayed=True, exhaust=True), True,
         "the arm catches vapour, not mist"),
        (bay(exhausts=(replace(ARM, until_on=date(2026, 11, 26)),)),
         wiping(60, QUELL, sprayed=True, exhaust=True), True, "its examination ended the day before"),
        (bay(exhausts=(ARM,)), wiping(60, QUELL, sprayed=True), True, "the step does not say so"),
        (bay(exhausts=(ARM,)), wiping(60, BRACK, exhaust=True), True, "a fluoride is ended by the mask"),
        (bay(exhausts=(ARM,)), wiping(60, QUELL, sprayed=True, exhaust=True), False, "mist is caught"),
    ],
)  # fmt: skip
def test_mist_is_ended_by_examined_exhaust_that_catches_it_and_by_nothing_less(
    place: AirPlace, step: AirStep, stopped: bool, because: str
) -> None:
    assert (("air.named_protection", "stop") in said(step, place=place)) == stopped, because


def test_a_mist_s_stop_names_the_exhaust_as_a_way_out() -> None:
    stop = finding("air.named_protection", wiping(60, QUELL, sprayed=True))
    assert stop.do.endswith("or catch it where it arises with examined local exhaust; or do without it.")


@pytest.mark.parametrize(
    ("place", "says"),
    [
        (bay(), "none in Bay 2 that catches vapour is examined: none is written down."),
        (
            bay(exhausts=(replace(ARM, until_on=date(2026, 11, 20)),)),
            "none in Bay 2 that catches vapour is examined: Extraction arm, examined to 20 November 2026.",
        ),
        (
            bay(exhausts=(replace(ARM, name="Sander's suction", catches="dust"),)),
            "none in Bay 2 that catches vapour is examined: Sander's suction catches dust and mist.",
        ),
        (
            bay(exhausts=(replace(ARM, ended_on=date(2026, 11, 20)),)),
            "none in Bay 2 that catches vapour is examined: none is written down.",
        ),
    ],
)
def test_a_step_that_counts_on_exhaust_asks_where_none_is_examined(place: AirPlace, says: str) -> None:
    asked = finding("air.local_exhaust", wiping(10, exhaust=True), place=place)
    assert asked.grade == "ask"
    assert asked.says == f"Panel wipe counts on local exhaust, and {says}"
    assert asked.about == ("PBAYTWOX", "SWPXKLNB")
    assert asked.do == ("Have it examined and write it down on the bay's page, or plan the step without it.")


@pytest.mark.parametrize(
    ("step", "place", "because"),
    [
        (wiping(10), bay(), "it does not count on any"),
        (wiping(10, exhaust=True), bay(exhausts=(ARM,)), "it is examined"),
        (wiping(10, exhaust=True, signed=True), bay(), "it is done"),
        (wiping(10, exhaust=True, uses=()), bay(exhausts=(replace(ARM, catches="dust"),)), "dust of a tool"),
    ],
)
def test_no_exhaust_is_asked_for_where(step: AirStep, place: AirPlace, because: str) -> None:
    assert "air.local_exhaust" not in dict(said(step, place=place)), because


def test_a_late_step_counts_the_exhaust_of_today() -> None:
    """The wipe was planned for Friday; on Monday its examination is over."""
    place = bay(exhausts=(replace(ARM, until_on=FRIDAY.date()),))
    step = wiping(10, exhaust=True)
    assert "air.local_exhaust" not in dict(said(step, place=place, at=BEFORE))
    assert "air.local_exhaust" in dict(said(step, place=place, at=BEFORE + timedelta(days=3)))
