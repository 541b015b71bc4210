"""An owner grades a rule anew, but never what protects people or a date; a rule passed too often is named."""

from dataclasses import replace

import pytest

from inventory.precheck.questions import Finding
from inventory.precheck.questions.asking import question
from inventory.precheck.rules import check_job
from inventory.precheck.rules.catalogue import RULES, may_regrade, rule_of, why_not
from inventory.precheck.rules.rates import Rate, rates
from tests.inventory.precheck.cases import NOON, facts


def found(code: str, grade: str) -> Finding:
    return Finding(code, grade, "It is so.", "", "", "", ("XHLNKLNB",))


@pytest.mark.parametrize(
    ("code", "grade", "given", "verdict", "because"),
    [
        ("people.gluconate", "stop", "tell", "stop", "a stop that protects people keeps its grade"),
        ("people.gluconate", "stop", "ask", "stop", "nor is it asked away"),
        ("air.exposure", "ask", "tell", "ask", "what protects people is never made a note"),
        ("air.exposure", "ask", "stop", "stop", "but it may be made heavier"),
        ("reaction.bay", "stop", "ask", "stop", "a refusal keeps its grade"),
        ("out_of_date", "stop", "ask", "stop", "a date's stop ends by a retest"),
        ("past_estimate", "ask", "tell", "ready", "an estimate is the shop's own"),
        ("too_little", "ask", "stop", "ask", "the shelf stops where a date says so, not by grade"),
        ("wait.recoat", "ask", "tell", "ready", "the paint is the owner's to risk"),
        ("wait.recoat", "ask", "stop", "stop", "and to guard"),
        ("residue.wax", "stop", "ask", "ask", "a stop for the paint may become a question"),
    ],
)
def test_an_owner_s_grade_holds_where_it_may(code, grade, given, verdict, because) -> None:
    ask = question()(lambda case: [found(code, grade)])
    of = replace(facts(), grades={code: given})

    assert check_job(of, NOON, questions=[ask]).verdict == verdict, because


def test_a_grade_for_a_family_holds_for_each_of_its_rules_unless_one_has_its_own() -> None:
    ask = question()(lambda case: [found("wait.recoat", "ask"), found("wait.film", "ask")])
    of = replace(facts(), grades={"wait.": "tell", "wait.film": "stop"})

    check = check_job(of, NOON, questions=[ask])

    assert {one.code: one.grade for one in check.findings} == {"wait.recoat": "tell", "wait.film": "stop"}


def test_an_empty_grade_gives_a_rule_back_the_one_it_comes_with() -> None:
    ask = question()(lambda case: [found("wait.recoat", "ask")])

    assert check_job(replace(facts(), grades={"wait.recoat": ""}), NOON, questions=[ask]).verdict == "ask"


@pytest.mark.parametrize(
    ("code", "grade", "says"),
    [
        ("people.face", "tell",
         "This rule protects people: it is never made a note. It ends by changing the fact."),
        ("too_little", "stop",
         "The shelf's own rules stop where a date or a hold says so; others ask. Choose ask or note."),
        ("moonphase", "ask", "The check has no rule “moonphase”. Choose one of the list."),
        ("weather.panel", "tell", ""),
    ],
)  # fmt: skip
def test_the_page_says_why_a_grade_is_refused(code: str, grade: str, says: str) -> None:
    assert why_not(code, grade) == says


def test_every_rule_says_whom_it_protects_and_no_code_is_of_two_rules() -> None:
    assert {rule.protects for rule in RULES} == {"people", "paint", "shelf"}
    for rule in RULES:
        assert [one for one in RULES if one.covers(rule.code)] == [rule]
        assert rule_of(rule.code + ("x" if rule.code.endswith(".") else "")) is rule


def test_a_rule_that_the_list_does_not_know_may_be_graded() -> None:
    assert may_regrade(found("moonphase", "ask"), "tell")


def test_a_rule_overridden_more_than_one_time_in_five_is_named_first() -> None:
    # 20 shown and 4 overridden is one in five exactly; 10 shown and 3 overridden is more
    shown = [("residue.wax", "stop", f"job {n}") for n in range(20)]
    shown += [("wait.recoat", "ask", f"job {n}") for n in range(10)]
    passed = [("residue.wax", "stop", f"job {n}") for n in range(4)]
    passed += [("wait.recoat", "ask", f"job {n}") for n in range(3)]

    first, second = rates(shown, passed)

    assert first == Rate("wait.recoat", "ask", shown=10, passed=3)
    assert (first.percent, first.too_often) == (30, True)
    assert (second.percent, second.too_often) == (20, False)


def test_a_rule_shown_four_times_is_not_yet_called_passed_too_often() -> None:
    assert not Rate("wait.recoat", "ask", shown=4, passed=4).too_often
    assert Rate("wait.recoat", "ask", shown=5, passed=5).too_often


def test_two_words_on_one_thing_count_once_and_what_was_passed_was_shown() -> None:
    passed = [("residue.wax", "stop", "job 1"), ("residue.wax", "stop", "job 1")]

    assert rates([], passed) == [Rate("residue.wax", "stop", shown=1, passed=1)]
