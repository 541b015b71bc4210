"""Rags that burn or heat by themselves: a covered metal can, emptied after the day; once a bay, no more."""

from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from inventory.precheck.questions import Facts
from inventory.precheck.questions.rags import rags_in_their_can
from inventory.precheck.questions.topics.rags import RagCan, RagFacts
from inventory.precheck.rules import check_job, may_answer
from safety.air.evaporating import Ingredient
from safety.reactions.values import Substance
from tests.inventory.precheck.cases import FRIDAY, NOON
from tests.inventory.precheck.tooled import MADE, MORNING, SUBSTANCES, job, step

THURSDAY = FRIDAY - timedelta(days=1)
CAN = RagCan("PBAYTWOX", "Bay 2", "left of the door")
NONE = replace(CAN, can_at="")


def facts(can: RagCan, *products: str, groups: frozenset[str] = frozenset({"4"}), **more: object) -> Facts:
    """Return a job that wipes in Bay 2 with the can as it is, the panel wipe being of some groups."""
    of = job(step("Wipe", *(products or ("XIPA",)), **more))
    burns = frozenset({"H225"} if "4" in groups else ())
    wipe = Substance("Hollin panel wipe", groups, statements=burns)
    known = {**SUBSTANCES, "XIPA": wipe}
    return replace(of, reactions=replace(of.reactions, substances=known), rags=RagFacts({can.code: can}))


def said(of: Facts, at: datetime = MORNING) -> list[str]:
    return [one.code for one in check_job(of, at, questions=[rags_in_their_can]).findings]


@pytest.mark.parametrize(
    ("groups", "asked", "because"),
    [
        ({"4"}, True, "it burns: H225"),
        ({"104"}, True, "an oxidiser on a dried towel"),
        ({"30"}, True, "a peroxide hardener on paper"),
        ({"18"}, True, "a hardener in a full can"),
        ({"106"}, False, "water-based soap"),
        ({"10"}, False, "lye eats, and lights nothing"),
    ],
)
def test_a_bay_that_names_no_can_is_asked_for_what_is_dangerous_on_a_rag(
    groups, asked: bool, because: str
) -> None:
    assert said(facts(NONE, groups=frozenset(groups))) == (["rags.can"] if asked else []), because


def test_a_drying_oil_is_known_by_its_number() -> None:
    oil = replace(MADE["XSAP"], ingredients=(Ingredient("Boiled linseed oil", "8001-26-1", 0.3),))
    of = facts(NONE, "XSAP")
    assert said(of) == []
    assert said(replace(of, air=replace(of.air, makeups={**MADE, "XSAP": oil}))) == ["rags.can"]


def test_the_ask_says_why_and_where_to_say_it() -> None:
    [one] = check_job(facts(NONE), NOON, questions=[rags_in_their_can]).findings
    assert (one.grade, one.says) == ("ask", "Bay 2 names no covered metal can for rags.")
    assert one.because == "Wipe takes Hollin panel wipe, which burns on a rag."
    assert one.do == (
        "Put a covered metal can there, empty it each evening, and say on the page of Bay 2 where it is."
    )
    assert one.source == "29 CFR 1910.106(e)(9)(iii) (from memory)"
    assert may_answer(one, by_owner=False)


@pytest.mark.parametrize(
    ("used_at", "emptied_at", "at", "asked", "because"),
    [
        (THURSDAY, None, MORNING, True, "used yesterday, never emptied"),
        (THURSDAY, THURSDAY - timedelta(hours=1), MORNING, True, "emptied before it was last used"),
        (THURSDAY, THURSDAY + timedelta(hours=8), MORNING, False, "emptied last evening"),
        (THURSDAY, MORNING, MORNING, False, "emptied this morning"),
        (THURSDAY - timedelta(days=6), THURSDAY - timedelta(days=6) + timedelta(hours=8), MORNING, False,
         "not used since: nothing is in it"),
        (MORNING, None, MORNING, False, "today's rags go out this evening"),
        (None, None, MORNING, False, "nothing was ever used there"),
        (THURSDAY, None, NOON, False, "on Wednesday nobody asks for Friday"),
    ],
)  # fmt: skip
def test_it_is_emptied_after_the_day_on_which_it_was_used(
    used_at, emptied_at, at, asked, because: str
) -> None:
    can = replace(CAN, used_at=used_at, emptied_at=emptied_at)
    assert said(facts(can), at) == (["rags.emptied"] if asked else []), because


def test_that_question_ends_by_emptying_it_and_by_no_word() -> None:
    [one] = check_job(facts(replace(CAN, used_at=THURSDAY)), MORNING, questions=[rags_in_their_can]).findings
    assert one.says == "The rag can of Bay 2 was not emptied after Thursday 26 November."
    assert one.do == (
        "Empty it (left of the door) and press “It is emptied” under Rag and waste cans; that ends this "
        "question."
    )
    assert not may_answer(one, by_owner=True)


def test_a_bay_is_asked_once_and_ordinary_work_is_not_stopped() -> None:
    of = facts(NONE)
    twice = replace(of, air=replace(of.air, steps=(*of.air.steps, step("Wipe again", "XIPA", hour=2))))
    check = check_job(twice, NOON, questions=[rags_in_their_can])
    assert [one.code for one in check.findings] == ["rags.can"]
    assert check.verdict == "ask"


def test_a_signed_step_leaves_no_question() -> None:
    assert said(facts(NONE, signed=True)) == []
