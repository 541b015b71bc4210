"""Questions about cuts limited to some panels: asked of those, counted on those, silent elsewhere."""

from dataclasses import replace

import pytest

from inventory.trade.paint import Cut, Floor, Panel
from tests.inventory.precheck.cases import COAT, WIPE, found
from tests.inventory.precheck.test_paint_questions import (
    BONNET,
    ROOF,
    TWO_STEPS,
    cut,
    only,
    paint,
    read,
    signed,
)


def on(panel: Panel, grade: str, step: str = WIPE.code) -> Cut:
    return replace(cut(grade, step), panel=panel.code)


def test_only_the_panels_to_be_cut_are_asked_for_a_reading() -> None:
    asked = only(paint(panels=(BONNET, ROOF), cuts=(on(BONNET, "two_step"),)))
    assert asked.says == "Bonnet is to be cut, and its paint was not read."
    # the twin: a cut of the whole car asks for both
    both = only(paint(panels=(BONNET, ROOF), cuts=TWO_STEPS))
    assert both.says == "Bonnet and roof are to be cut, and their paint was not read."


@pytest.mark.parametrize(
    ("first", "then", "expected", "because"),
    [
        (on(BONNET, "two_step"), on(BONNET, "two_step", COAT.code), ["bonnet"], "both cuts meet on it"),
        (on(ROOF, "two_step"), on(BONNET, "two_step", COAT.code), [], "the first took nothing off it"),
        (on(BONNET, "two_step"), on(ROOF, "two_step", COAT.code), [], "nothing more is to be cut there"),
        (cut("two_step"), on(ROOF, "two_step", COAT.code), ["roof"], "all were cut, one is cut again"),
    ],
)
def test_what_a_signed_cut_took_counts_only_where_it_cut_and_more_is_to_come(
    first: Cut, then: Cut, expected: list[str], because: str
) -> None:
    read_all = [read(109), read(109, ROOF)]
    of = paint(*read_all, panels=(BONNET, ROOF), cuts=(first, then), steps=(signed(), COAT),
               floor=Floor(whole_um=100))  # fmt: skip
    below = "The planned cut goes below the shop's floor: {} 109 µm of whole film less 10 µm is 99 µm."
    assert [one.says for one in found(of)] == [below.format(name) for name in expected], because


def test_finishing_a_panel_counts_nothing_twice_while_another_is_cut() -> None:
    cuts = (cut("two_step"), on(BONNET, "finish", COAT.code), on(ROOF, "two_step", COAT.code))
    of = paint(read(92), read(140, ROOF), panels=(BONNET, ROOF), cuts=cuts, steps=(signed(), COAT))
    assert found(of) == ()
