"""A word on one step's air does not cover another step that is worse."""

from dataclasses import replace

import pytest

from inventory.precheck.questions import Answer
from inventory.precheck.rules import check_job
from tests.inventory.precheck.airs import QUESTIONS, AirStep, coating, facts, found, wiping
from tests.inventory.precheck.cases import NOON


@pytest.mark.parametrize(
    ("later", "verdict", "because"),
    [
        (coating(40), "ask", "87.6 % of the limit is more than was read and answered"),
        (coating(10), "ready", "21.9 % is less, and stands in the reasons of what was answered"),
    ],
)
def test_a_word_on_a_smaller_share_does_not_cover_a_larger_one_that_comes_later(
    later: AirStep, verdict: str, because: str
) -> None:
    [read] = [one for one in found(wiping(100)) if one.code == "air.exposure"]
    word = Answer(read.code, read.about, read.says, "Doors open.", "Tomas", NOON)
    assert (
        check_job(replace(facts(wiping(100)), answers=(word,)), NOON, questions=QUESTIONS).verdict == "ready"
    )

    grown = replace(facts(wiping(100), later), answers=(word,))

    assert check_job(grown, NOON, questions=QUESTIONS).verdict == verdict, because
