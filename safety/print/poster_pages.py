"""Drawing sheets: head with title and code, the blocks, the foot; the same for posters, cards and lists."""

from __future__ import annotations

from dataclasses import dataclass

from safety.print import symbols
from safety.print.fonts import WordTooWide, line_mm
from safety.print.pen import Pen
from safety.print.poster_sheets import (
    NEAR,
    SPACE,
    Frame,
    PurposesOf,
    Sheet,
    footer_height,
    footer_texts,
    header_height,
    laid_out,
    title_text,
    under_texts,
)
from safety.print.values import Masthead
from safety.print.words import say


class PaperTooSmall(ValueError):
    """A word is wider than the paper at the distance asked for."""


@dataclass(frozen=True)
class Printed:
    """A PDF, with what it is set in and on how many sheets."""

    pdf: bytes
    frame: Frame
    titles: list[str]

    def said(self, masthead: Masthead) -> dict[str, object]:
        """Return what every paper says of itself, for scripts."""
        return {
            "paper": self.frame.paper,
            "sheets": self.titles,
            "language": masthead.language,
            "url": masthead.url,
            "read_at_m": masthead.read_at_m,
            "large_text_mm": self.frame.type.far,
            "small_text_mm": self.frame.type.near,
        }


def print_sheets(masthead: Masthead, purposes_of: PurposesOf, paper: str) -> Printed:
    """Return the PDF of all sheets. Raises UnknownPaper, DistanceOutOfRange, PaperTooSmall."""
    try:
        frame, sheets = laid_out(masthead, purposes_of, paper)
    except WordTooWide as wide:
        raise PaperTooSmall(
            f"{wide} Take larger paper than {paper}, or a shorter distance than {masthead.read_at_m:g} m."
        ) from wide
    pen = Pen(frame.width, frame.height, masthead.issue, language=masthead.language)
    for number, sheet in enumerate(sheets, start=1):
        if number > 1:
            pen.next_page()
        draw_sheet(pen, masthead, frame, sheet, (number, len(sheets)))
    return Printed(pen.pdf(), frame, [sheet.title for sheet in sheets])


def draw_sheet(pen: Pen, masthead: Masthead, frame: Frame, sheet: Sheet, number: tuple[int, int]) -> None:
    """Draw one sheet."""
    x, top = frame.margin, frame.margin
    title = title_text(frame, sheet.title)
    title.draw(pen, x, top)
    code_top = top if title.width < frame.inner else top + title.height()
    symbols.draw(pen, masthead.url, "qr", x + frame.inner - frame.code, code_top, frame.code)
    below = top + title.height()
    for part in under_texts(frame, sheet):
        part.draw(pen, x, below)
        below += part.height()
    y = top + header_height(frame, sheet)
    pen.rule(x, y - 1.5, x + frame.inner, line=1.0)
    y += SPACE
    for block in sheet.blocks:
        block.draw(pen, x, y)
        y += block.height() + SPACE
    draw_footer(pen, masthead, frame, number)


def draw_footer(pen: Pen, masthead: Masthead, frame: Frame, number: tuple[int, int]) -> None:
    """Draw the foot."""
    x = frame.margin
    y = frame.height - frame.margin - footer_height(masthead, frame)
    pen.rule(x, y, x + frame.inner, line=1.0)
    y += 2
    at, count = number
    words = "{name}: sheet {number} of {count}"
    pen.text(
        x, y, say(words, masthead.language, name=masthead.name, number=at, count=count), NEAR[-1], bold=True
    )
    y += line_mm(NEAR[-1])
    for part in footer_texts(masthead, frame):
        part.draw(pen, x, y)
        y += part.height()
