"""The reading-back itself: it must find what we promise never to print."""

from safety.print import pictograms
from safety.print.pen import Pen
from tests.safety.print.paper import outside, overlaps


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
