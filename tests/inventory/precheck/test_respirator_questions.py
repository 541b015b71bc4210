"""Who may wear a mask, whether the mask is the one that was fitted, and whether its cartridge still works."""

from dataclasses import replace
from datetime import date

import pytest

from inventory.precheck.questions.at_work import a_mask
from inventory.precheck.questions.cartridges import cartridge_hours
from inventory.precheck.questions.respirators import fit_for_the_mask
from inventory.precheck.questions.topics.people import Fitted, Lasting
from tests.inventory.precheck.crew import (
    ACID,
    CARTRIDGE,
    HALF,
    MASK,
    SPRAY,
    TOMAS,
    YEAR,
    asked,
    crew,
    good_to,
    item,
    only,
    spoilt,
    without,
)


def masked(worn: str = "half", **facts: object):
    changed = {name: facts.pop(name) for name in ("evaluated", "fitted", "face") if name in facts}
    who = replace(TOMAS, **changed)
    return crew(step=SPRAY, respirator=worn, who=who, **facts)


def fit(until: date, *, mask: str = MASK, evaluated_on: date = YEAR.on, serves: str = "half") -> Fitted:
    return Fitted(mask, "Ossen half mask", serves, Lasting(date(2026, 6, 2), until), evaluated_on)


def test_nobody_wears_a_mask_before_the_evaluation_and_that_alone_is_said() -> None:
    one = only(fit_for_the_mask, masked(evaluated=(), fitted=()))

    assert (one.code, one.grade) == ("people.evaluation", "stop")
    assert one.says == "Tomas has no medical evaluation in date for a half mask."
    assert one.because == (
        "Spray sealer is done in it from Friday 09:30. A mask makes breathing harder: a physician says first "
        "who may wear one."
    )
    assert one.do == (
        "Have Tomas evaluated and write the day down under People, then have the mask fitted; nothing else "
        "ends this stop."
    )


def test_a_loose_hood_is_evaluated_for_and_never_fitted() -> None:
    one = only(fit_for_the_mask, masked("hood", evaluated=(), fitted=()))

    assert one.do == (
        "Have Tomas evaluated and write the day down under People; nothing else ends this stop."
    )
    assert asked(fit_for_the_mask, masked("hood", fitted=())) == ()


def test_the_article_follows_the_sound() -> None:
    hose = only(fit_for_the_mask, masked("air_fed", evaluated=(), fitted=()))

    assert hose.says == "Tomas has no medical evaluation in date for an air-fed mask."
    assert [a_mask(each) for each in ("ffp3", "powered_full", "air_fed", "")] == [
        "a dust mask FFP3", "a powered full-face mask", "an air-fed mask", "",
    ]  # fmt: skip


def test_a_fit_test_that_ends_before_the_step_stops_it() -> None:
    one = only(fit_for_the_mask, masked(fitted=(fit(date(2026, 11, 26)),)))

    assert (one.code, one.grade) == ("people.fit_test", "stop")
    assert one.says == "Tomas's fit test of the Ossen half mask is good to Thursday 26 November 2026 only."
    assert one.because == (
        "Spray sealer is done in a half mask on Friday 27 November. A mask that was not fitted to this face "
        "leaks where nobody sees it."
    )
    assert one.do == (
        "Have the mask that is here fitted to Tomas before Friday 09:30 and write it down under People; "
        "nothing else ends this stop."
    )


OTHER = item("BTHRKLNB", "half", "Corrin half mask")
HOOD = item("BHDDKLNB", "hood", "Ossen hood")
FFP3 = item("BFFPKLNB", "ffp2", "Ossen dust mask", filters="FFP3", product="XFFPKLNB")


@pytest.mark.parametrize(
    ("facts", "says", "because"),
    [
        (masked(), [], "evaluated, fitted, shaven"),
        (masked(fitted=(fit(date(2026, 11, 27)),)), [], "good on the day of the step"),
        (
            masked(evaluated=(Lasting(date(2024, 1, 1), date(2026, 11, 26)),)),
            ["Tomas has no medical evaluation in date for a half mask."],
            "the evaluation ends the day before",
        ),
        (masked(fitted=()), ["Tomas has no fit test for a half mask."], "never fitted"),
        (
            masked(fitted=(fit(date(2027, 5, 1), serves="full"),)),
            ["Tomas has no fit test for a half mask."],
            "another kind of mask",
        ),
        (
            masked(fitted=(fit(date(2027, 5, 1), evaluated_on=date(2026, 6, 3)),)),
            ["Tomas has no fit test for a half mask."],
            "fitted the day before the evaluation does not count",
        ),
        (
            masked(items=(OTHER, CARTRIDGE)),
            ["Tomas was fitted with the Ossen half mask, which is not on the shelf in date."],
            "another model is another face",
        ),
        (masked(items=(OTHER, HALF, CARTRIDGE)), [], "the one that was fitted is there, too"),
        (
            masked(items=(OTHER, replace(HALF, **good_to(date(2026, 11, 26))), CARTRIDGE)),
            ["Tomas was fitted with the Ossen half mask, which is not on the shelf in date."],
            "the one that was fitted is over, the one that is left was never fitted",
        ),
        (masked("hood", fitted=(), face="beard", items=(HOOD,)), [], "a loose hood needs no seal"),
        (
            masked("hood", evaluated=(), items=(HOOD,)),
            ["Tomas has no medical evaluation in date for a loose powered hood."],
            "a hood is a respirator, too",
        ),
        (masked(face="beard"), ["Tomas has hair where the half mask seals."], "a beard leaks"),
        (
            masked(face=""),
            ["Nobody has said whether Tomas is clean-shaven where the half mask seals."],
            "nobody looked",
        ),
        (
            masked("ffp3", items=(FFP3,), fitted=(fit(date(2027, 5, 1), mask="XFFPKLNB", serves="ffp2"),)),
            [],
            "a dust mask is fitted, too",
        ),
        (masked("none", evaluated=(), fitted=(), face="beard"), [], "no mask is worn"),
    ],
)
def test_who_may_wear_what(facts, says, because) -> None:
    assert [one.says for one in asked(fit_for_the_mask, facts)] == says, because


def test_a_beard_stops_and_points_to_the_hood() -> None:
    one = only(fit_for_the_mask, masked(face="beard"))
    assert (one.code, one.grade) == ("people.face", "stop")
    assert one.do == (
        "Take a loose powered hood for this step, or let Tomas shave and say so under People; nothing else "
        "ends this stop."
    )
    assert only(fit_for_the_mask, masked(face="")).grade == "ask"


def test_two_masked_steps_of_one_person_are_one_stop() -> None:
    facts = crew(steps=(ACID, SPRAY), respirator="half", who=replace(TOMAS, fitted=()))
    assert len(asked(fit_for_the_mask, facts)) == 1


def test_a_worn_out_cartridge_stops() -> None:
    one = only(cartridge_hours, masked(items=spoilt(CARTRIDGE, minutes=480)))

    assert (one.code, one.grade) == ("people.cartridge", "stop")
    assert one.says == "No cartridge that still works is on hand for the half mask."
    assert one.because == (
        "Spray sealer is done in a half mask. Ossen filter A2 BCRT KLNB was worn 480 of 480 minutes. "
        "Ossen filter A2 BCRT KLNB in Bay 1 is good to Friday 31 December 2027."
    )
    assert one.do == "Bring a fresh set before Friday 09:30 and scan it in; nothing else ends this stop."


def test_a_cartridge_that_ends_during_the_step_asks() -> None:
    one = only(cartridge_hours, masked(items=spoilt(CARTRIDGE, minutes=421)))

    assert (one.code, one.grade) == ("people.cartridge", "ask")
    assert one.says == "Ossen filter A2 BCRT KLNB has 59 minutes left."
    assert one.because == (
        "The masked steps of this job, from Spray sealer on, run 60 minutes; it was worn 421 of 480."
    )
    assert one.do == "Put a fresh set beside the work, change when its minutes are over, and say so here."


FRESH = item("BCRUKLNB", "cartridge", "Ossen filter A2", wear_minutes=480)


@pytest.mark.parametrize(
    ("facts", "grades", "because"),
    [
        (masked(items=spoilt(CARTRIDGE, minutes=420)), [], "its last hour is the step's"),
        (masked(items=(*spoilt(CARTRIDGE, minutes=480), FRESH)), [], "a fresh set lies beside it"),
        (masked(items=without(CARTRIDGE)), ["stop"], "none at all"),
        (masked(items=spoilt(CARTRIDGE, **good_to(date(2026, 11, 26)))), ["stop"], "out of date"),
        (masked(items=spoilt(CARTRIDGE, wear_minutes=None, minutes=9_000)), [], "nobody said how long"),
        (masked("ffp2", items=without(CARTRIDGE)), [], "a dust mask has none"),
        (masked("air_fed", items=without(CARTRIDGE)), [], "its air comes by a hose"),
        (masked(items=(), kept=False), [], "this shop has not said what serves what"),
        (
            crew(steps=(ACID, SPRAY), respirator="half", items=spoilt(CARTRIDGE, minutes=381)),
            ["ask"],
            "40 minutes and 60 minutes are worn in one go",
        ),
        (
            crew(steps=(ACID, SPRAY), respirator="half", items=spoilt(CARTRIDGE, minutes=380)),
            [],
            "and just fit",
        ),
    ],
)
def test_whether_a_cartridge_lasts(facts, grades, because) -> None:
    assert [one.grade for one in asked(cartridge_hours, facts)] == grades, because
