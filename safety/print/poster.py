"""A place's poster: a set of single-purpose sheets with one look, two text tiers, re-flowed, never shrunk."""

from __future__ import annotations

from safety.print import symbols
from safety.print.fonts import WordTooWide, line_mm
from safety.print.pen import Pen
from safety.print.poster_sheets import (
    NEAR,
    SPACE,
    DistanceOutOfRange,
    Frame,
    Sheet,
    footer_height,
    footer_texts,
    header_height,
    laid_out,
    title_text,
    under_texts,
)
from safety.print.values import PosterContent

__all__ = ["DistanceOutOfRange", "PaperTooSmall", "print_poster"]


class PaperTooSmall(ValueError):
    """A word is wider than the paper at the distance asked for."""


def print_poster(content: PosterContent, paper: str = "A3") -> tuple[bytes, dict[str, object]]:
    """Return the PDF and what is on it. Raises UnknownPaper, DistanceOutOfRange, PaperTooSmall."""
    try:
        frame, sheets = laid_out(content, paper)
    except WordTooWide as wide:
        raise PaperTooSmall(
            f"{wide} Take larger paper than {paper}, or a shorter distance than {content.read_at_m:g} m."
        ) from wide
    pen = Pen(frame.width, frame.height, f"{content.place.name}, version {content.version}")
    for number, sheet in enumerate(sheets, start=1):
        if number > 1:
            pen.next_page()
        draw_sheet(pen, content, frame, sheet, f"sheet {number} of {len(sheets)}")
    return pen.pdf(), said(content, frame, sheets)


def draw_sheet(pen: Pen, content: PosterContent, frame: Frame, sheet: Sheet, number: str) -> None:
    """Draw one sheet."""
    x, top = frame.margin, frame.margin
    title = title_text(content, frame, sheet.title)
    title.draw(pen, x, top)
    code_top = top if title.width < frame.inner else top + title.height()
    symbols.draw(pen, content.url, "qr", x + frame.inner - frame.code, code_top, frame.code)
    below = top + title.height()
    for part in under_texts(frame, sheet):
        part.draw(pen, x, below)
        below += part.height()
    y = top + header_height(content, frame, sheet)
    pen.rule(x, y - 1.5, x + frame.inner, line=1.0)
    y += SPACE
    for block in sheet.blocks:
        block.draw(pen, x, y)
        y += block.height() + SPACE
    draw_footer(pen, content, frame, number)


def draw_footer(pen: Pen, content: PosterContent, frame: Frame, number: str) -> None:
    """Draw the foot."""
    x = frame.margin
    y = frame.height - frame.margin - footer_height(content, frame)
    pen.rule(x, y, x + frame.inner, line=1.0)
    y += 2
    pen.text(x, y, f"{content.place.name}: {number}", NEAR[-1], bold=True)
    y += line_mm(NEAR[-1])
    for part in footer_texts(content, frame):
        part.draw(pen, x, y)
        y += part.height()


def said(content: PosterContent, frame: Frame, sheets: list[Sheet]) -> dict[str, object]:
    """Return what is on the poster, for scripts."""
    return {
        "place": content.place.name,
        "paper": frame.paper,
        "sheets": [sheet.title for sheet in sheets],
        "version": content.version,
        "printed_on": content.printed_on,
        "replace_after": content.replace_after,
        "regime": content.regime,
        "url": content.url,
        "read_at_m": content.read_at_m,
        "large_text_mm": frame.type.far,
        "small_text_mm": frame.type.near,
        "signal_word": content.signal_word,
        "dangers": [{"pictogram": one.pictogram, "says": one.heading} for one in content.dangers],
        "never_together": [[pair.one, pair.other] for pair in content.never],
        "products": [
            {
                "name": one.name,
                "pictograms": list(one.pictograms),
                "signal_word": one.signal_word,
                "statements": list(one.statements),
                "notice": one.notice or None,
            }
            for one in content.products
        ],
        "no_data_sheet": list(content.unknown),
    }
