"""The first day's sheet on paper: the same parts as on screen, and lines to sign on."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date

from inventory.people.rules.first_day import TITLE, Section, notes
from safety.print.blocks import Block, Text
from safety.print.fonts import line_mm
from safety.print.pen import INK, Pen
from safety.print.poster_card import Part
from safety.print.poster_pages import print_sheets
from safety.print.poster_sheets import Frame, Purpose
from safety.print.values import Masthead
from safety.print.words import say, written

LINES = ("Name", "Read and understood (signature, day)", "Shown by (signature)")


@dataclass(frozen=True)
class ToSign:
    """Lines that are written on by hand, each over what belongs on it."""

    capital: float
    width: float
    language: str

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
            pen.text(x, line, say(words, self.language), self.capital)

    def split(self, room: float) -> tuple[Block, Block] | None:
        """Hold together: a signature belongs to its name."""
        return None


def first_day_pdf(
    shop: str, parts: Sequence[Section], *, language: str, url: str, binder_at: str, on: date, paper: str
) -> bytes:
    """Return the PDF of the sheet as of a day. Raises UnknownPaper, PaperTooSmall."""
    name = f"{say(TITLE, language)}, {shop}"
    issue = say("{name}, as of {day}.", language, name=name, day=written(on, language))
    masthead = Masthead(shop, url, issue, language, 1.0, binder_at)
    return print_sheets(masthead, lambda frame: _purposes(parts, frame, language), paper).pdf


def _purposes(parts: Sequence[Section], frame: Frame, language: str) -> list[Purpose]:
    type_, width = frame.type, frame.inner
    told = [Text(" ".join(said), type_.near, width)] if (said := notes(language)) else []
    drawn = [_part(part, frame) for part in parts]
    # Nobody signs an empty sheet: the lines stay under what they sign.
    last = replace(drawn[-1], runs_on=False)
    last = replace(last, blocks=(*last.blocks, ToSign(type_.near, width, language)))
    blocks: list[Block] = [*told, *drawn[:-1], last]
    return [Purpose(say("the first day", language), (), blocks)]


def _part(part: Section, frame: Frame) -> Part:
    lines = tuple(Text(line, frame.type.near, frame.inner) for line in part.lines)
    return Part(part.title, lines, INK, frame.type, frame.inner)
