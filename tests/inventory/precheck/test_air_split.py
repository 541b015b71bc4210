"""A step that is split starts in its own vapour, unless the air has its quarter of an hour to clear."""

from dataclasses import replace
from datetime import timedelta

import pytest

from inventory.precheck.questions.topics.air import AirStep
from tests.inventory.precheck.airs import said, wiping
from tests.inventory.precheck.cases import COAT, WIPE

QUARTER = timedelta(minutes=15)


def halves(ml: float, gap: timedelta, **facts: object) -> tuple[AirStep, AirStep]:
    """Return two wipes of a quarter of an hour each, the second so long after the first ended."""
    first = replace(wiping(ml, **facts), ends_at=WIPE.starts_at + QUARTER)
    starts = first.ends_at + gap
    second = replace(
        wiping(ml), code=COAT.code, name="Second wipe", starts_at=starts, ends_at=starts + QUARTER
    )
    return first, second


@pytest.mark.parametrize(
    ("gap", "grade", "because"),
    [
        (timedelta(0), "stop", "what the first let go still hangs in the room"),
        (timedelta(minutes=14), "stop", "and a quarter of an hour is not over"),
        (QUARTER, "ask", "then it counts as cleared"),
    ],
)
def test_a_split_wipe_is_judged_with_what_its_first_half_left(gap, grade: str, because: str) -> None:
    # 186 ml alone is 94.2 % of the 15-minute value: asked, not stopped
    assert dict(said(*halves(186, gap)))["air.exposure"] == grade, because


def test_a_first_half_that_is_signed_still_hangs_in_the_air() -> None:
    assert dict(said(*halves(186, timedelta(0), signed=True)))["air.exposure"] == "stop"


def test_in_another_bay_it_leaves_nothing() -> None:
    assert dict(said(*halves(186, timedelta(0), bay="PBAYNEXX")))["air.exposure"] == "ask"
