"""What a step cuts at least by what it takes: common practice of the trade, no source."""

import pytest

from inventory.trade.paint.implied import Counted, Cutting, counted

MARL = {"Marl compound": "compound"}
FINE = {"Lunet polish": "polish"}
PAPER = {"P2500 paper": "abrasive"}


@pytest.mark.parametrize(
    ("says", "takes", "grade", "sentence"),
    [
        ("", MARL, "one_step", "Cut takes Marl compound: it counts as one-step correction."),
        ("", FINE, "finish", "Cut takes Lunet polish: it counts as finishing."),
        ("", PAPER, "sanding", "Cut takes P2500 paper: it counts as wet sanding."),
        ("finish", MARL, "one_step",
         "Cut says finishing, and takes Marl compound: it counts as one-step correction."),
        ("three_step", PAPER | MARL, "sanding",
         "Cut says three-step correction, and takes P2500 paper: it counts as wet sanding."),
        ("", MARL | {"Korn compound": "compound"}, "one_step",
         "Cut takes Korn compound and Marl compound: it counts as one-step correction."),
        ("two_step", MARL, "two_step", ""),
        ("one_step", MARL | FINE, "one_step", ""),
        ("finish", FINE, "finish", ""),
        ("finish", {"Weiss pad": "pad"}, "finish", ""),
    ],
)  # fmt: skip
def test_a_cut_counts_as_at_least_what_its_products_take(
    says: str, takes: dict[str, str], grade: str, sentence: str
) -> None:
    (one,) = counted([Cutting("s", says, takes)]).values()

    assert (one.grade, one.sentence("Cut")) == (grade, sentence)


@pytest.mark.parametrize("takes", [{}, {"Parn wipe": "solvent"}, {"Kelm clay": "clay"}, {"Weiss pad": "pad"}])
def test_a_step_that_takes_nothing_abrasive_and_says_nothing_cuts_nothing(takes: dict[str, str]) -> None:
    assert counted([Cutting("s", "", takes)]) == {}


def test_a_polish_that_refines_a_correction_takes_nothing_more_than_the_correction_says() -> None:
    cut, refine = Cutting("cut", "two_step", MARL), Cutting("refine", "", FINE)

    assert counted([cut, refine]) == {"cut": Counted("two_step", "two_step")}
    assert set(counted([Cutting("cut", "", MARL), refine])) == {"cut"}


@pytest.mark.parametrize(
    ("steps", "because"),
    [
        ((Cutting("cut", "two_step", MARL, all_over=False),), "the cut reached a few panels, the polish all"),
        ((Cutting("cut", "finish", {}),), "another finishing is no correction"),
        ((), "there is no correction"),
    ],
)
def test_a_polish_that_refines_nothing_counts(steps: tuple[Cutting, ...], because: str) -> None:
    found = counted([*steps, Cutting("refine", "", FINE)])

    assert found["refine"] == Counted("finish", "", "Lunet polish"), because


def test_a_polish_that_says_what_it_takes_is_believed_beside_a_correction() -> None:
    found = counted([Cutting("cut", "two_step", MARL), Cutting("refine", "finish", FINE)])

    assert found["refine"] == Counted("finish", "finish")
