"""What a signed step put on a car, and when: a rinse is asked for, and nothing is said of a time to come."""

from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from inventory.precheck.questions.rinsed import rinsed_off
from inventory.precheck.questions.topics.reactions import Used, Wetted
from inventory.precheck.rules import check_job
from tests.inventory.precheck.cases import FRIDAY, NOON
from tests.inventory.precheck.test_reaction_questions import HOUR, check, job, step


def rinse_wanted(*steps: Wetted, used: tuple[Used, ...] = (), at: datetime = NOON) -> list[str]:
    return [one.says for one in check_job(job(*steps, used=used), at, questions=[rinsed_off]).findings]


BEGUN, ENDED = FRIDAY, FRIDAY + HOUR  # 08:30 and 09:30 UTC


@pytest.mark.parametrize(
    ("signed_at", "said_at", "because"),
    [
        (BEGUN - timedelta(days=5), "Sunday 08:30", "signed days early: nothing went on in the future"),
        (BEGUN + HOUR / 2, "Friday 09:00", "signed before its planned end"),
        (ENDED + 3 * HOUR, "Friday 09:30", "signed late: it was on by its planned end"),
    ],
)
def test_what_a_signed_step_put_on_was_on_by_its_planned_end_or_when_it_was_signed(
    signed_at: datetime, said_at: str, because: str
) -> None:
    wheels = step("Wheels", 0, "XRON", signed_at=signed_at)
    assert rinse_wanted(wheels) == [
        f"Fenmoor iron remover went onto this car on {said_at}, and no rinse was signed since."
    ], because


def test_a_rinse_signed_after_the_signature_rinsed_it_and_one_before_it_did_not() -> None:
    wheels = step("Wheels", 0, "XRON", signed_at=BEGUN + HOUR / 2)
    after, before = (
        step("Rinse", 1, rinses=True, signed_at=BEGUN + HOUR / 2 + each * HOUR / 4) for each in (1, -1)
    )
    assert rinse_wanted(wheels, after) == []
    assert len(rinse_wanted(wheels, before)) == 1


def test_what_only_a_scan_books_did_not_go_on_by_a_signature_and_may_not_meet_all_the_same() -> None:
    signed = step("Wheels", 0, "XACD", signed_at=BEGUN, traced=("XACD",))
    assert rinse_wanted(signed) == []
    assert len(rinse_wanted(replace(signed, traced=()))) == 1
    assert len(rinse_wanted(signed, used=(Used("XACD", BEGUN),))) == 1
    # Nobody knows that it is not there: what it must not meet is stopped until the rinse is signed.
    assert [one.grade for one in check(job(signed, step("Iron", 2, "XRON"))).findings] == ["stop"]
