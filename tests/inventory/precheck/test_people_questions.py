"""Who may do a step: the first day's sheet, training, and isocyanates by their own rule."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from inventory.precheck.questions import QUESTIONS
from inventory.precheck.questions.people import first_day_signed, trained_for_it
from inventory.precheck.questions.topics.people import (
    DangerFacts,
    Lasting,
    PersonFacts,
    Trained,
)
from inventory.precheck.rules import check_job, may_answer
from tests.inventory.precheck.cases import NOON
from tests.inventory.precheck.crew import (
    ACID,
    BAY,
    BRACK,
    CORRIN,
    LYE,
    SOAP,
    SPRAY,
    TOMAS,
    WIPE,
    YEAR,
    asked,
    crew,
    only,
    said,
)

NEW = replace(TOMAS, first_day=None)
OWNER = replace(NEW, owner=True)
SOUR = DangerFacts("XSOUKLNB", "Fenmoor lime remover", "acid", ("Eye Irrit. 2 H319",))
SIGNED_STEP = replace(ACID, signed_at=NOON, signed_by="Tomas")
OURS = [one for one in QUESTIONS if "people" in one.topics]


def trained(*topics: str, when: Lasting = YEAR) -> PersonFacts:
    return replace(TOMAS, trained=tuple(Trained(topic, when) for topic in topics))


def test_a_new_person_signs_the_first_days_sheet_before_an_acid_is_used_alone() -> None:
    one = only(first_day_signed, crew(BRACK, who=NEW))

    assert (one.code, one.grade) == ("people.first_day", "stop")
    assert one.says == "Tomas has not signed the sheet of the first day."
    assert one.because == (
        "Wheel acid takes Brack wheel acid (Skin Corr. 1B H314, holds a fluoride). Tomas does it alone."
    )
    assert one.do == (
        "Go through the sheet with Tomas, who signs it before Friday 08:30; nothing else ends this stop."
    )
    assert one.about == ("HTMSKLNB", "SACDKLNB")


@pytest.mark.parametrize(
    ("facts", "grades", "because"),
    [
        (
            crew(replace(BRACK, kind="wheel"), who=NEW),
            ["stop"],
            "a fluoride stops, whatever its kind",
        ),
        (crew(replace(BRACK, fluoride=False), who=NEW), ["stop"], "an acid stops without a fluoride"),
        (crew(respirator="half", who=NEW), ["stop"], "a mask is worn right or not at all"),
        (crew(SOAP, who=NEW), [], "a shampoo is shown on the way"),
        (crew(LYE, who=NEW), [], "an alkali is a matter of training"),
        (crew(BRACK, who=OWNER), [], "the owner wrote the sheet"),
        (crew(BRACK, who=TOMAS), [], "signed a hundred days ago"),
        (crew(BRACK, who=NEW, step=SIGNED_STEP), [], "a signed step is over"),
        (crew(BRACK, who=None), [], "nobody is named"),
    ],
)
def test_when_the_first_days_sheet_is_wanted(facts, grades, because) -> None:
    assert [one.grade for one in asked(first_day_signed, facts)] == grades, because


def test_two_steps_of_one_new_person_are_one_stop() -> None:
    both = crew(BRACK, who=NEW, steps=(ACID, SPRAY))
    assert len(asked(first_day_signed, both)) == 1


def test_what_somebody_was_not_trained_in_is_one_question_that_lists_the_topics() -> None:
    one = only(trained_for_it, crew(BRACK, WIPE, who=trained("respirator")))

    assert (one.code, one.grade) == ("people.training", "ask")
    assert one.says == (
        "Tomas has no training in date for acids and alkalis (Brack wheel acid), for fluorides and the gel "
        "(Brack wheel acid) and for flammable liquids and aerosols (Hollin panel wipe)."
    )
    assert one.because == (
        "Wheel acid takes Brack wheel acid (Skin Corr. 1B H314, holds a fluoride). "
        "Wheel acid takes Hollin panel wipe (Flam. Liq. 2 H225, Eye Irrit. 2 H319)."
    )
    assert one.do == "Train Tomas and write it down under People, or say who stands beside."


@pytest.mark.parametrize(
    ("facts", "says", "because"),
    [
        (crew(BRACK, who=trained("hazards", "fluoride")), [], "a course on all that is here covers acids"),
        (
            crew(BRACK, who=trained("hazards")),
            ["Tomas has no training in date for fluorides and the gel (Brack wheel acid)."],
            "fluorides have a course of their own: they hurt late",
        ),
        (
            crew(LYE, who=trained("corrosive", when=Lasting(date(2024, 1, 1), date(2026, 11, 26)))),
            ["Tomas has no training in date for acids and alkalis (Fenmoor alkaline wash)."],
            "it ends the day before the step",
        ),
        (
            crew(LYE, who=trained("corrosive", when=Lasting(date(2024, 1, 1), date(2026, 11, 27)))),
            [],
            "it ends on the day of the step",
        ),
        (crew(LYE, who=trained("corrosive", when=Lasting(date(2020, 1, 1)))), [], "it does not end"),
        (
            crew(respirator="half", who=trained("hazards")),
            ["Tomas has no training in date for wearing a respirator."],
            "a mask is put on as it was shown",
        ),
        (crew(SOAP, who=trained()), [], "nothing asks for it"),
        (crew(BRACK, who=None), ["Nobody is named for Wheel acid."], "a fluoride is somebody's"),
        (crew(SOUR, who=None), ["Nobody is named for Wheel acid."], "so is an acid, whatever its sheet says"),
        (crew(LYE, who=None), ["Nobody is named for Wheel acid."], "and what burns skin without being one"),
        (
            crew(replace(SOAP, hazards=("Met. Corr. 1 H290",)), who=None),
            ["Nobody is named for Wheel acid."],
            "and what eats metal",
        ),
        (
            crew(replace(SOAP, hazards=("H314",)), who=None),
            ["Nobody is named for Wheel acid."],
            "a statement says it without its class",
        ),
        (
            crew(replace(SOAP, hazards=("Skin Irrit. 2 H315", "Eye Dam. 1 H318")), who=None),
            [],
            "many a shampoo irritates skin and hurts eyes",
        ),
        (crew(SOUR, step=SIGNED_STEP, who=None), [], "a signed step is over"),
        (crew(WIPE, who=None), [], "a panel wipe may stay open"),
        (crew(BRACK, step=SIGNED_STEP, who=trained()), [], "a signed step is over"),
    ],
)
def test_when_training_is_asked_for(facts, says, because) -> None:
    assert [one.says for one in asked(trained_for_it, facts)] == says, because


LAST_TIME = trained("isocyanate", when=Lasting(date(2021, 11, 27)))


def test_an_untrained_hand_and_isocyanates_stop_where_reach_applies() -> None:
    one = only(trained_for_it, crew(CORRIN, who=trained("hazards"), country="DE"))

    assert (one.code, one.grade) == ("people.training", "stop")
    assert one.says == "Tomas has no training in date for diisocyanates (Corrin hardener)."
    assert one.because == (
        "Wheel acid takes Corrin hardener, which holds isocyanates. Where REACH applies only trained people "
        "use them from 0.1 % on; nothing here says that it is less."
    )
    assert one.do == (
        "Train Tomas and write it down under People, or give the step to somebody trained; nothing else "
        "ends this stop."
    )
    assert one.source == "REACH annex XVII entry 74: trained before use, renewed every 5 years (not GB)"


@pytest.mark.parametrize(
    ("who", "country", "grades", "because"),
    [
        (LAST_TIME, "DE", [], "five years to the day"),
        (trained("isocyanate", when=Lasting(date(2021, 11, 26))), "DE", ["stop"], "five years and a day"),
        (
            trained("isocyanate", when=Lasting(date(2025, 1, 1), date(2026, 1, 1))),
            "DE",
            ["stop"],
            "its own end is earlier",
        ),
        (trained("hazards"), "GB", ["ask"], "entry 74 does not hold in Great Britain"),
        (trained("hazards"), "US", ["ask"], "nor in the United States"),
        (trained("hazards"), "NO", ["stop"], "it holds in the EEA"),
        (TOMAS, "DE", [], "trained this June"),
    ],
)
def test_isocyanates_are_trained_for_every_five_years(who, country, grades, because) -> None:
    found = asked(trained_for_it, crew(CORRIN, who=who, country=country))
    assert [one.grade for one in found] == grades, because


def test_a_training_that_ended_says_when_it_was() -> None:
    who = trained("isocyanate", when=Lasting(date(2021, 1, 4)))
    one = only(trained_for_it, crew(CORRIN, country="FR", who=who))
    assert "The last training was on Monday 4 January 2021." in one.because


def test_no_word_ends_a_stop_for_people_and_an_unrun_eyewash() -> None:
    new = replace(NEW, evaluated=(), fitted=())
    facts = crew(BRACK, who=new, items=(), respirator="half", bay=replace(BAY, run_at=None))
    found = check_job(facts, NOON, questions=OURS).findings
    stops = [one for one in found if one.grade == "stop"]

    assert {one.code for one in stops} == {
        "people.first_day", "people.evaluation", "people.equipment", "people.cartridge", "people.gluconate",
    }  # fmt: skip
    assert not any(may_answer(one, by_owner=True) for one in stops)
    run = next(one for one in found if one.code == "people.eyewash_run")
    assert not may_answer(run, by_owner=True)
    untrained = only(trained_for_it, crew(BRACK, who=trained()))
    assert may_answer(untrained, by_owner=False)


def test_a_well_kept_shop_is_asked_nothing() -> None:
    facts = crew(BRACK, LYE, WIPE, SOAP, respirator="half")
    assert check_job(facts, NOON, questions=OURS).findings == ()


def test_a_late_step_is_judged_by_today() -> None:
    who = trained("corrosive", when=Lasting(date(2026, 1, 1), date(2026, 11, 28)))
    assert said(trained_for_it, crew(LYE, who=who)) == []
    assert said(trained_for_it, crew(LYE, who=who), NOON + timedelta(days=5)) == [
        (
            "people.training",
            "ask",
            "Tomas has no training in date for acids and alkalis (Fenmoor alkaline wash).",
        )
    ]
