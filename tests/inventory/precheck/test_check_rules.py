"""The check as a whole: one cause once, the gravest first, whatever the order of the questions."""

from dataclasses import MISSING, Field, fields, replace
from datetime import UTC, date, timedelta
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventory.precheck.questions import QUESTIONS, Answer, SheetFacts
from inventory.precheck.questions.case import Case, plan
from inventory.precheck.questions.facts import TOPICS, Facts
from inventory.precheck.rules import check_job
from inventory.precheck.rules.headline import headline
from inventory.precheck.rules.standing import standings
from inventory.stock.rules.remaining import remaining
from inventory.stock.rules.reserve import reserve
from inventory.stock.rules.use_by import Dates
from tests.inventory.precheck.cases import (
    BRACK,
    COAT,
    FRIDAY,
    HOLLIN,
    JOB,
    MAKER_90,
    NOON,
    SALTMERE,
    TIDEWALL,
    WIPE,
    bottle,
    facts,
    need,
    opened,
)

BUSY = facts(
    need(WIPE, HOLLIN, 180),
    need(COAT, TIDEWALL, 20, one_lot=True),
    shelf=(
        bottle("BHLNKLNB", HOLLIN, 140, sealed=False),
        bottle("BKTRVNXH", TIDEWALL, 30, **opened(89, MAKER_90)),
        bottle("BNRXVHKL", TIDEWALL, 30, dates=Dates(expires_on=date(2027, 6, 30))),
        bottle("BACDKLNB", BRACK, 500),
    ),
    labels={},
    sheets={HOLLIN.code: SheetFacts()},
)
SHORT = "Hollin panel wipe: 180 ml needed, 140 ml free."


def answered(of: Facts, says: str = SHORT, *, by_owner: bool = False) -> Facts:
    one = next(one for one in check_job(of, NOON).findings if one.says == says)
    said = Answer(one.code, one.about, one.says, "A bottle comes tomorrow.", "Tomas", NOON, by_owner)
    return replace(of, answers=(said,))


def test_findings_are_said_once_each_and_the_gravest_come_first() -> None:
    check = check_job(BUSY, NOON)

    assert check.verdict == "stop"
    assert [(one.grade, one.code) for one in check.findings] == [
        ("stop", "out_of_date"),
        ("ask", "no_sheet"),
        ("ask", "too_little"),
        ("ask", "unlabelled"),
    ]


@given(st.permutations(QUESTIONS))
def test_the_order_of_the_questions_never_matters(order) -> None:
    expected = check_job(BUSY, NOON)

    assert len(expected.findings) == 4
    assert check_job(BUSY, NOON, questions=order) == expected


@given(st.lists(st.integers(0, 90), min_size=1, max_size=4), st.integers(1, 400), st.randoms())
def test_any_shelf_gives_the_same_check_in_any_order(ages: list[int], ml: int, chance) -> None:
    shelf = [
        bottle(f"B{age:03}K{at}NB", TIDEWALL, 30 + age, **opened(age, MAKER_90))
        for at, age in enumerate(ages)
    ]
    of = facts(need(COAT, TIDEWALL, ml, one_lot=True), shelf=tuple(shelf))
    questions = list(QUESTIONS)
    chance.shuffle(questions)
    chance.shuffle(shelf)

    assert check_job(replace(of, shelf=tuple(shelf)), NOON, questions=questions) == check_job(of, NOON)


@pytest.mark.parametrize("question", QUESTIONS, ids=lambda question: question.ask.__name__)
def test_a_question_reads_only_the_topics_it_declares(question) -> None:
    of = {
        "steps": ("steps",),
        "needs": ("needs", "step_of", "jobs"),
        "shelf": ("shelf", "recalled", "places"),
        "products": ("products",),
        "sheets": ("sheets",),
        "labels": ("labels",),
    }
    empty = {one.name: one for one in fields(Facts)}
    hidden = [name for topic in TOPICS if topic not in question.topics for name in of.get(topic, (topic,))]
    without = replace(BUSY, **{name: _nothing(empty[name]) for name in hidden if name != "recalled"})

    assert check_job(without, NOON, questions=[question]) == check_job(BUSY, NOON, questions=[question])


def _nothing(field: Field[Any]) -> object:
    return field.default_factory() if field.default is MISSING else field.default


def test_an_answered_ask_stays_as_a_note_that_says_by_whom_and_no_longer_holds_up_the_verdict() -> None:
    of = facts(need(WIPE, HOLLIN, 180), shelf=(bottle("BHLNKLNB", HOLLIN, 140),))
    assert check_job(of, NOON).verdict == "ask"

    check = check_job(answered(of), NOON)

    assert check.verdict == "ready"
    assert [(one.grade, one.says) for one in check.findings] == [("tell", SHORT)]
    assert check.findings[0].do == "Tomas answered on Wednesday 25 November: “A bottle comes tomorrow.”"


def test_an_answer_does_not_outlive_its_sentence() -> None:
    of = answered(facts(need(WIPE, HOLLIN, 180), shelf=(bottle("BHLNKLNB", HOLLIN, 140),)))

    less = replace(of, shelf=(bottle("BHLNKLNB", HOLLIN, 100),))

    assert check_job(less, NOON).verdict == "ask"
    assert check_job(less, NOON).findings[0].says == "Hollin panel wipe: 180 ml needed, 100 ml free."


LOTS_APART = facts(
    need(COAT, TIDEWALL, 40, one_lot=True),
    shelf=(bottle("BKTRVNXH", TIDEWALL, 30), bottle("BNRXVHKL", TIDEWALL, 25)),
)
LOTS_SAID = "Tidewall coating: 40 ml needed from one lot, 30 ml in the fullest."
SHORT_OF_ONE = facts(need(WIPE, HOLLIN, 180), shelf=(bottle("BHLNKLNB", HOLLIN, 140),))
DEAD = facts(need(COAT, TIDEWALL, 20), shelf=(bottle("BKTRVNXH", TIDEWALL, 30, **opened(120, MAKER_90)),))
HELD = facts(need(WIPE, HOLLIN, 20), shelf=(bottle("BHLNKLNB", HOLLIN, 140, held="frozen"),))
NO_SHEET = facts(
    need(WIPE, BRACK, 20), shelf=(bottle("BACDKLNB", BRACK, 140),), sheets={BRACK.code: SheetFacts()}
)
BARE = facts(need(WIPE, HOLLIN, 20), shelf=(bottle("BHLNKLNB", HOLLIN, 140, sealed=False),), labels={})


@pytest.mark.parametrize(
    ("of", "by_owner", "verdict", "because"),
    [
        (LOTS_APART, True, "ready", "an owner may lift what protects the paint"),
        (LOTS_APART, False, "stop", "nobody else may"),
        (DEAD, True, "stop", "a date ends by changing the fact"),
        (HELD, True, "stop", "held ends by release"),
        (NO_SHEET, True, "stop", "an acid's sheet protects people"),
        (BARE, True, "ask", "an unlabelled bottle is labelled, not talked about"),
    ],
)
def test_what_a_word_can_lift(of: Facts, by_owner: bool, verdict: str, because: str) -> None:
    says = check_job(of, NOON).findings[0].says

    assert check_job(answered(of, says, by_owner=by_owner), NOON).verdict == verdict, because


def test_an_owners_word_on_the_paint_stands_for_its_step_while_the_figures_move() -> None:
    of = answered(LOTS_APART, check_job(LOTS_APART, NOON).findings[0].says, by_owner=True)
    lot = of.shelf[0].lots
    later = replace(
        of,
        needs=(need(COAT, TIDEWALL, 10, one_lot=True, had=lot),),
        shelf=(bottle("BNRXVHKL", TIDEWALL, 25),),
    )

    assert check_job(replace(later, answers=()), NOON).verdict == "stop"
    assert check_job(later, NOON).verdict == "ready"


@pytest.mark.parametrize(
    ("of", "says", "then"),
    [
        (BUSY, "Not yet: one thing must change before Friday 09:00.",
         "Then three questions to answer. Everything else is ready."),
        (DEAD, "Not yet: one thing must change before Friday 09:00.", "Everything else is ready."),
        (BARE, "One question to answer before Friday 08:30.", "Everything else is ready."),
        (facts(need(WIPE, HOLLIN, 20), shelf=(bottle("BHLNKLNB", HOLLIN, 140),)),
         "Ready for Friday 08:30.", "There is enough for every step, and it lasts."),
        (facts(), "Ready: nothing more is taken from the shelf.", ""),
        (answered(SHORT_OF_ONE), "Ready for Friday 08:30, as answered: it stands on one answer.",
         "There is too little for one thing: somebody said it will do."),
        (answered(LOTS_APART, LOTS_SAID, by_owner=True),
         "Ready for Friday 08:30, as answered: it stands on one answer.",
         "Read what was said before you go on."),
        (answered(BUSY), "Not yet: one thing must change before Friday 09:00.",
         "Then two questions to answer. Everything else is ready, as answered."),
        (facts(steps=(replace(WIPE, signed_at=NOON),)), "Every step is signed.",
         "Close the job when the car is handed over."),
    ],
)  # fmt: skip
def test_one_sentence_leads(of: Facts, says: str, then: str) -> None:
    leads = headline(check_job(of, NOON), of, NOON)

    assert (leads.says, leads.next) == (says, then)


def test_a_word_on_a_shortage_never_makes_the_sentence_say_that_there_is_enough() -> None:
    enough = "There is enough for every step, and it lasts."
    word = answered(SHORT_OF_ONE)
    filled = replace(SHORT_OF_ONE, shelf=(bottle("BHLNKLNB", HOLLIN, 180),), answers=word.answers)

    assert headline(check_job(word, NOON), word, NOON).next != enough
    assert headline(check_job(filled, NOON), filled, NOON).next == enough


def test_a_stop_about_a_step_that_began_must_change_now() -> None:
    leads = headline(check_job(DEAD, FRIDAY + timedelta(hours=1)), DEAD, FRIDAY + timedelta(hours=1))

    assert leads.says == "Not yet: one thing must change now."


def test_each_step_says_what_is_ready_for_it() -> None:
    short = facts(need(WIPE, HOLLIN, 180), need(COAT, TIDEWALL, 20), shelf=(
        bottle("BHLNKLNB", HOLLIN, 140), bottle("BKTRVNXH", TIDEWALL, 30)))  # fmt: skip
    case = Case(short, NOON, plan(short.needs, short.shelf, short.zone, NOON))
    rows = standings(case, check_job(short, NOON))

    assert [row.ready for row in rows] == ["140 ml of 180 ml", "1 product ready"]
    assert [row.finding.code if row.finding else None for row in rows] == ["too_little", None]


@pytest.mark.parametrize(
    ("of", "ready"),
    [
        (DEAD, "BKTR VNXH is out of date then"),
        (HELD, "BHLN KLNB is held"),
        (NO_SHEET, "Brack wheel acid has no sheet"),
        (BARE, "BHLN KLNB has no label"),
        (LOTS_APART, "not enough of one lot"),
        (facts(steps=(replace(WIPE, stage="cure"),)), "Bay 2 held until Fri 09:00"),
        (facts(steps=(replace(WIPE, signed_at=NOON, signed_by="Tomas"),)), "signed by Tomas"),
        (facts(steps=(replace(WIPE, rinses=True),)), "RINSE signs it, once the drain runs clear"),
        (
            facts(need(WIPE, HOLLIN, 180), need(WIPE, BRACK, 10), shelf=(bottle("BHLNKLNB", HOLLIN, 140),)),
            "0 ml of 10 ml, and 1 more",
        ),
    ],
)
def test_a_step_says_its_gravest_finding_in_a_few_words(of: Facts, ready: str) -> None:
    rows = standings(Case(of, NOON, plan(of.needs, of.shelf, of.zone, NOON)), check_job(of, NOON))

    assert ready in [row.ready for row in rows]


def test_what_a_step_used_is_counted_off_its_plan_once() -> None:
    needs = [need(WIPE, HOLLIN, 180), need(COAT, "solvent", 60)]
    step_of = {one.id: one.id.split("-")[0] for one in needs}
    uses = {(JOB.key, WIPE.code, HOLLIN.code): 100_000, (JOB.key, COAT.code, HOLLIN.code): 20_000}

    left = remaining(needs, step_of, uses, {HOLLIN.code: "solvent"})

    assert {one.id: one.amount for one in left} == {needs[0].id: 80_000, needs[1].id: 40_000}


def test_what_was_used_on_a_car_without_naming_a_step_counts_for_the_first_that_wants_it() -> None:
    needs = [need(WIPE, HOLLIN, 180), need(COAT, HOLLIN, 60)]
    step_of = {one.id: one.id.split("-")[0] for one in needs}

    left = remaining(needs, step_of, {(JOB.key, "", HOLLIN.code): 200_000}, {HOLLIN.code: "solvent"})

    assert {one.id: one.amount for one in left} == {needs[1].id: 40_000}


def test_what_another_job_used_counts_for_nobody_else() -> None:
    needs = [need(WIPE, HOLLIN, 180)]
    uses = {("000000000099", WIPE.code, HOLLIN.code): 100_000}

    assert remaining(needs, {needs[0].id: WIPE.code}, uses, {HOLLIN.code: "solvent"}) == needs


def test_a_use_of_what_is_not_used_up_counts_for_one_need_and_no_other() -> None:
    needs = [need(WIPE, HOLLIN, 1, id="S1-a"), need(WIPE, HOLLIN, 1, id="S1-b")]
    uses = {(JOB.key, WIPE.code, HOLLIN.code): 0}
    step_of = {one.id: WIPE.code for one in needs}

    assert remaining(needs, step_of, uses, {HOLLIN.code: "solvent"}, {HOLLIN.code}) == needs[1:]
    assert remaining(needs, step_of, uses, {HOLLIN.code: "solvent"}) == needs


def test_pools_by_product_and_by_kind_give_what_one_pool_gives() -> None:
    needs = [
        need(WIPE, HOLLIN, 100),
        need(COAT, "solvent", 60),
        need(COAT, TIDEWALL, 20),
        need(WIPE, "wax", 5),
    ]
    shelf = (
        bottle("BHLNKLNB", HOLLIN, 140),
        bottle("BSLTKLNB", SALTMERE, 10),
        bottle("BTDWKLNB", TIDEWALL, 15),
    )

    planned = plan(needs, shelf, UTC, NOON)
    whole = reserve(needs, shelf, UTC)

    assert set(planned.reserved.taken) == set(whole.taken)
    assert (
        planned.reserved.short == whole.short == {needs[1].id: 10_000, needs[2].id: 5_000, needs[3].id: 5_000}
    )
