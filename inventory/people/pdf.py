"""The first day's sheet on paper: the same parts as on screen, and lines to sign on."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from inventory.people.rules.first_day import TITLE, Section
from safety.print.blocks import Block, Text
from safety.print.fonts import line_mm
from safety.print.pen import INK, Pen
from safety.print.poster_card import Part
from safety.print.poster_pages import print_sheets
from safety.print.poster_sheets import Frame, Purpose
from safety.print.values import Masthead

LINES = ("Name", "Read and understood (signature, day)", "Shown by (signature)")


@dataclass(frozen=True)
class ToSign:
    """Lines that are written on by hand, each over what belongs on it."""

    capital: float
    width: float

    def height(self) -> float:
        """Return the height."""
        return len(LINES) * self.step()

    def step(self) -> float:
        """Return the room of one line: a hand's, then its words."""
        return 11 + line_mm(self.capital)

    def draw(self, pen: Pen, x: float, top: float) -> None:
        """Draw the lines."""
        for at, words in enumerate(LINES):
            line = top + at * self.step() + 11
            pen.rule(x, line, x + self.width * 0.7, INK)
            pen.text(x, line, words, self.capital)

    def split(self, room: float) -> tuple[Block, Block] | None:
        """Hold together: a signature belongs to its name."""
        return None


def first_day_pdf(
    shop: str, parts: Sequence[Section], *, url: str, binder_at: str, on: date, paper: str
) -> bytes:
    """Return the PDF of the sheet as of a day. Raises UnknownPaper, PaperTooSmall."""
    issue = f"{TITLE}, {shop}, as of {on.day} {on:%B %Y}."
    masthead = Masthead(shop, url, issue, "en", 1.0, binder_at)
    return print_sheets(masthead, lambda frame: _purposes(parts, frame), paper).pdf


def _purposes(parts: Sequence[Section], frame: Frame) -> list[Purpose]:
    type_, width = frame.type, frame.inner
    blocks: list[Block] = [
        Part(
            part.title,
            tuple(Text(line, type_.near, width) for line in part.lines),
            INK,
            type_,
            width,
        )
        for part in parts
    ]
    return [Purpose("the first day", (), [*blocks, ToSign(type_.near, width)])]
