"""The reading-back itself: it must find what we promise never to print."""

import pytest

from safety.print import pictograms, symbols
from safety.print.pen import Pen
from tests.safety.print.paper import faults, is_black, letters_mm, outside, overlaps


def test_text_over_text_is_found() -> None:
    pen = Pen(100, 50, "twin")
    pen.text(10, 10, "Hollin panel wipe", 4)
    pen.text(12, 11, "Use by 26 Nov 2026", 4)
    assert overlaps(pen.pdf())


def test_text_over_a_pictogram_is_found() -> None:
    pen = Pen(100, 50, "twin")
    pictograms.draw(pen, "GHS02", 10, 10, 20)
    pen.text(15, 18, "Danger", 4)
    assert [pair[1] for pair in overlaps(pen.pdf())] == ["pictogram"]


def test_text_beyond_the_page_is_found() -> None:
    pen = Pen(50, 25, "twin")
    pen.text(30, 5, "a name that is far too long", 4)
    assert outside(pen.pdf())


def test_lines_under_one_another_are_no_overlap() -> None:
    pen = Pen(100, 50, "twin")
    pen.lines(10, 10, ["Typography", "glyph ÄÉg", "Jumping"], 4)
    pen.lines(60, 10, ["gyp", "ÄÖB"], 8, bold=True)
    assert overlaps(pen.pdf()) == []


def wrong(draw) -> list[str]:  # type: ignore[no-untyped-def]
    pen = Pen(100, 50, "twin")
    draw(pen)
    return faults(pen.pdf())


def test_two_strings_that_run_into_each_other_on_one_line_are_found() -> None:
    def draw(pen: Pen) -> None:
        pen.text(10, 10, "Hollin panel wipe", 4)
        pen.text(30, 10, "Use by 26 Nov", 4)

    assert [fault.partition(" share")[0] for fault in wrong(draw)] == [
        "page 1: “Hollin panel wipe” and “Use by 26 Nov”"
    ]


@pytest.mark.parametrize(
    ("x", "top", "says"),
    [
        (90, 10, "page 1: “Danger” is"),
        (-3, 10, "page 1: “Danger” is"),
        (30, 46, "page 1: “Danger” is"),
        (64, 22, "page 1: a symbol and “Danger” share"),
        (12, 34, "page 1: a frame and “Danger” share"),
        (44, 8, "page 1: a pictogram and “Danger” share"),
    ],
)
def test_text_over_the_edge_a_symbol_a_frame_or_a_diamond_is_found(x: float, top: float, says: str) -> None:
    def draw(pen: Pen) -> None:
        symbols.draw(pen, "BKTRVNXH", "matrix", 70, 20, 10)
        pen.frame(20, 30, 30, 12)
        pictograms.draw(pen, "GHS02", 40, 2, 20)
        pen.text(x, top, "Danger", 4, bold=True)

    assert [fault.startswith(says) for fault in wrong(draw)] == [True]


def test_diamonds_over_one_another_are_found_and_side_by_side_are_not() -> None:
    def over(pen: Pen) -> None:
        pictograms.draw(pen, "GHS02", 10, 10, 20)
        pictograms.draw(pen, "GHS05", 25, 10, 20)

    def beside(pen: Pen) -> None:
        pictograms.draw(pen, "GHS02", 10, 10, 20)
        pictograms.draw(pen, "GHS05", 30, 10, 20)

    assert wrong(over)[0].startswith("page 1: a pictogram and a pictogram share")
    assert wrong(beside) == []


def test_text_within_a_frame_is_no_fault_on_any_page() -> None:
    pen = Pen(100, 50, "twin")
    pen.next_page()
    pen.frame(20, 30, 40, 12)
    pen.text(22, 32, "26 Nov 2026", 3)
    pdf = pen.pdf()
    assert faults(pdf) == []
    assert faults(pdf, edge=21.0)[0].startswith("page 2: ")


def test_capitals_and_colour_are_read_off_the_page() -> None:
    pen = Pen(100, 50, "twin")
    pen.text(10, 10, "Danger", 2.1, bold=True)
    pen.next_page()
    pictograms.draw(pen, "GHS02", 40, 2, 20)
    pdf = pen.pdf()
    assert letters_mm(pdf) == [("Danger", 2.1)]
    assert (is_black(pdf), is_black(pdf, 1)) == (True, False)
