"""Training asks name what they are about: a word on one product, or one step, is no word on the next."""

from dataclasses import replace

import pytest

from inventory.precheck.questions import Facts
from inventory.precheck.questions.people import trained_for_it
from inventory.precheck.questions.topics.people import DangerFacts, PersonFacts, Trained, WorkFacts
from tests.inventory.precheck.crew import ACID, BRACK, CORRIN, LYE, SOAP, TOMAS, WIPE, YEAR, asked, crew, only

SOUR = DangerFacts("XSOUKLNB", "Fenmoor lime remover", "acid", ("Eye Irrit. 2 H319",))


def trained(*topics: str) -> PersonFacts:
    return replace(TOMAS, trained=tuple(Trained(topic, YEAR) for topic in topics))


def takes_one_each(*takes: DangerFacts, who: PersonFacts | None = TOMAS, **people: object) -> Facts:
    """Return the facts of a job whose steps take one product each, in this order."""
    steps = tuple(
        replace(ACID, code=f"STEP{at}", name=f"Step {at}") for at in range(1, len(takes) + 1)
    )  # fmt: skip
    work = {
        step.code: WorkFacts(who.code if who else "", products=(one.code,))
        for step, one in zip(steps, takes, strict=True)
    }
    return crew(*takes, who=who, steps=steps, work=work, **people)


def test_nobody_named_for_several_steps_is_one_question_that_begins_with_what_hurts_late() -> None:
    one = only(trained_for_it, takes_one_each(SOUR, BRACK, WIPE, LYE, who=None))

    assert (one.code, one.grade, one.about) == ("people.training", "ask", ("nobody", "STEP2"))
    assert one.says == "Nobody is named for Step 2, Step 1 and 1 more."
    assert one.because == (
        "Step 2 takes Brack wheel acid (Skin Corr. 1B H314, holds a fluoride). "
        "All of this hangs on who does it."
    )


@pytest.mark.parametrize(
    ("wipes", "named", "because"),
    [
        (1, "Hollin panel wipe", "one is named"),
        (2, "Hollin panel wipe and Wipe 2", "another one is another question"),
        (3, "Hollin panel wipe, Wipe 2 and 1 more", "a third is counted"),
        (4, "Hollin panel wipe, Wipe 2 and 2 more", "so is a fourth"),
    ],
)
def test_a_word_on_one_flammable_product_is_no_word_on_the_next(wipes: int, named: str, because: str) -> None:
    more = [replace(WIPE, code=f"XWIPE{at}", name=f"Wipe {at}") for at in range(2, wipes + 1)]
    one = only(trained_for_it, takes_one_each(WIPE, *more, who=trained()))
    assert one.says == f"Tomas has no training in date for flammable liquids and aerosols ({named}).", because


def test_one_product_in_two_steps_is_named_once() -> None:
    one = only(trained_for_it, takes_one_each(WIPE, WIPE, who=trained()))
    assert one.says == "Tomas has no training in date for flammable liquids and aerosols (Hollin panel wipe)."


def test_a_word_on_one_hardener_is_no_word_on_the_next() -> None:
    other = replace(CORRIN, code="XCRR2LNB", name="Corrin fast hardener")
    one = only(trained_for_it, takes_one_each(CORRIN, other, who=trained("hazards"), country="GB"))
    assert one.says == (
        "Tomas has no training in date for diisocyanates (Corrin hardener and Corrin fast hardener)."
    )
    assert one.because.startswith("Step 1 takes Corrin hardener, which holds isocyanates.")


@pytest.mark.parametrize(
    ("facts", "found", "said_of", "because"),
    [
        (
            crew(WIPE, trainings_kept=False),
            ["tell"],
            " for Hollin panel wipe",
            "nobody types a course for a panel wipe first",
        ),
        (crew(BRACK, trainings_kept=False), ["ask"], " for Brack wheel acid", "a fluoride asks"),
        (
            takes_one_each(BRACK, WIPE, LYE, trainings_kept=False),
            ["ask"],
            " for Brack wheel acid, Hollin panel wipe and 1 more",
            "what is added is said, so that it is asked again",
        ),
        (crew(respirator="half", trainings_kept=False), ["ask"], "", "so does a mask"),
        (crew(SOAP, trainings_kept=False), [], "", "a shampoo asks nothing"),
    ],
)
def test_where_nobodys_training_is_written_down_it_is_said_once(facts, found, said_of, because) -> None:
    assert [one.grade for one in asked(trained_for_it, facts)] == found, because
    for one in asked(trained_for_it, facts):
        assert one.says == f"Nobody's training is written down here{said_of}."
        assert one.do == "Write down under People who was trained for what, and when."
