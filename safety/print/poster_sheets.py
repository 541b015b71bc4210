"""Laying a poster out: which blocks stand on which sheet, at which size of small text.

Letter heights: D/200 for the far tier at the distance asked for (on the safe side of D/300 in DIN 4844 and
ANSI Z535), D/300 for the near tier at 1 m; far symbols D/40.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from safety.print.blocks import Block, Heading, Text, Type, fits
from safety.print.fonts import BOLD, WordTooWide, line_mm, width_mm
from safety.print.pen import paper_size
from safety.print.values import Masthead
from safety.print.words import say

NEAR = (5.2, 4.6, 4.0, 3.4)  # small text: the largest that needs no other sheets than the least
SPACE = 5.0
CAUTION = "The product's own label and data sheet, local codes and licensed practice come first."


class DistanceOutOfRange(ValueError):
    """A reading distance that no poster is made for."""


@dataclass(frozen=True)
class Frame:
    """The paper with its margins, and the type it is set in."""

    paper: str
    width: float
    height: float
    margin: float
    type: Type

    @property
    def inner(self) -> float:
        """Return the width between the margins."""
        return self.width - 2 * self.margin

    @property
    def code(self) -> float:
        """Return the side of the code's box."""
        return min(38.0, self.inner / 5.5)


@dataclass(frozen=True)
class Sheet:
    """One page: what it is called, what stands under the title, its blocks."""

    title: str
    under: tuple[str, ...]
    blocks: tuple[Block, ...]


@dataclass(frozen=True)
class Purpose:
    """What a sheet is for. headed: where it stands under another, a heading says its name first."""

    name: str
    under: tuple[str, ...]
    blocks: list[Block]
    headed: bool = True


PurposesOf = Callable[[Frame], list[Purpose]]


def frame_for(paper: str, read_at_m: float, near: float) -> Frame:
    """Return the frame; raise UnknownPaper, DistanceOutOfRange."""
    if not 0.5 <= read_at_m <= 10:
        raise DistanceOutOfRange(f"A poster is read from 0.5 to 10 m, not from {read_at_m:g} m.")
    width, height = paper_size(paper)
    far = max(5 * read_at_m, NEAR[-1] * 1.25)
    # The near tier (D/300) never claims a longer distance than the far one (D/200).
    near = max(NEAR[-1], min(near, far * 2 / 3))
    type_ = Type(far, near, max(25 * read_at_m, 20), 22.0)
    return Frame(paper, width, height, 14.0 if width > 250 else 12.0, type_)


def laid_out(masthead: Masthead, purposes_of: PurposesOf, paper: str) -> tuple[Frame, list[Sheet]]:
    """Return the sheets in the largest small text that parts them as the smallest does."""
    least = frame_for(paper, masthead.read_at_m, NEAR[-1])
    fewest = sheets_of(masthead, purposes_of(least), least)
    for near in NEAR[:-1]:
        frame = frame_for(paper, masthead.read_at_m, near)
        try:
            sheets = sheets_of(masthead, purposes_of(frame), frame)
        except WordTooWide:
            continue
        if [sheet.title for sheet in sheets] == [sheet.title for sheet in fewest]:
            return frame, sheets
    return least, fewest


def sheets_of(masthead: Masthead, purposes: list[Purpose], frame: Frame) -> list[Sheet]:
    """Return the sheets: each purpose on its own, or together where all of one fits under another."""
    sheets: list[Sheet] = []
    for purpose in purposes:
        if purpose.blocks:
            add_purpose(sheets, masthead, frame, purpose)
    return sheets


def add_purpose(sheets: list[Sheet], masthead: Masthead, frame: Frame, purpose: Purpose) -> None:
    """Add the blocks of one purpose: under the last sheet if all of it fits there, else on its own."""
    name = purpose.name
    if sheets:
        head = [Heading(name[0].upper() + name[1:], frame.type.far, frame.inner)] if purpose.headed else []
        together = Sheet(sheets[-1].title, sheets[-1].under, (*sheets[-1].blocks, *head, *purpose.blocks))
        if total(together.blocks) <= room(masthead, frame, together):
            sheets[-1] = together
            return
    title = f"{masthead.name}: {name}" if name else masthead.name
    first = Sheet(title, purpose.under, ())
    for flowed in flow(purpose.blocks, room(masthead, frame, first)):
        sheets.append(Sheet(title, purpose.under, tuple(flowed)))


def total(blocks: tuple[Block, ...] | list[Block]) -> float:
    """Return the height of blocks with the space between them."""
    return sum(block.height() for block in blocks) + SPACE * max(0, len(blocks) - 1)


def flow(blocks: list[Block], height: float) -> Iterator[list[Block]]:
    """Yield the blocks page by page; a heading stays with what follows it."""
    page: list[Block] = []
    waiting = list(blocks)
    while waiting:
        block = waiting.pop(0)
        needs = block.height()
        if isinstance(block, Heading) and waiting:
            needs += SPACE + waiting[0].height()
        left = height - total(page) - (SPACE if page else 0)
        if needs <= left or (not page and not splits(block, left)):
            page.append(block)
            continue
        cut = block.split(left)
        if cut and (not page or block.height() > height or getattr(block, "runs_on", False)):
            page.append(cut[0])
            waiting.insert(0, cut[1])
        else:
            waiting.insert(0, block)
        yield page
        page = []
    if page:
        yield page


def splits(block: Block, left: float) -> bool:
    """Return whether a block is too tall for the room and can be cut to it."""
    return block.height() > left and block.split(left) is not None


def title_text(frame: Frame, title: str) -> Text:
    """Return the title: larger than the far tier where it stands on one line."""
    width = frame.inner - frame.code - 4
    for grown in (1.5, 1.25, 1.0):
        if width_mm(title, BOLD, frame.type.far * grown) <= width:
            return Text(title, frame.type.far * grown, width, bold=True)
    if fits(title, frame.type.far, width, bold=True):
        return Text(title, frame.type.far, width, bold=True)
    return Text(title, frame.type.far, frame.inner, bold=True)


def under_texts(frame: Frame, sheet: Sheet) -> list[Text]:
    """Return the lines under the title."""
    return [Text(line, frame.type.near * 1.15, frame.inner - frame.code - 4) for line in sheet.under]


def header_height(frame: Frame, sheet: Sheet) -> float:
    """Return the height of title, lines under it, code and rule."""
    text = title_text(frame, sheet.title)
    texts = text.height() + sum(part.height() for part in under_texts(frame, sheet))
    beside = frame.code if text.width < frame.inner else text.height() + frame.code
    return max(texts, beside) + 4


def footer_texts(masthead: Masthead, frame: Frame) -> list[Text]:
    """Return what stands at the foot of every sheet, all of it at the near size."""
    lines = (masthead.issue, f"{legible(masthead, frame)} {works(masthead)}", say(CAUTION, masthead.language))
    return [Text(line, NEAR[-1], frame.inner) for line in lines]


def legible(masthead: Masthead, frame: Frame) -> str:
    """Return the sentence of the two distances."""
    least = frame.type.near == NEAR[-1]
    words = "Large text legible to {far} m, small text to {near} m."
    if not least:
        words = "Large text legible to {far} m, small text to {near} m, this line to 1 m."
    near = "1" if least else f"{frame.type.near * 300 / 1000:.2g}"
    return say(words, masthead.language, far=f"{frame.type.far / 5:.2g}", near=near)


def works(masthead: Masthead) -> str:
    """Return where the code works, and where the binder is for whom it does not."""
    if not masthead.binder_at:
        return say("The code works on this shop's Wi-Fi.", masthead.language)
    words = "The code works on this shop's Wi-Fi; binder at {where}."
    return say(words, masthead.language, where=masthead.binder_at)


def footer_height(masthead: Masthead, frame: Frame) -> float:
    """Return the height of the foot with the line for the sheet's number."""
    return sum(part.height() for part in footer_texts(masthead, frame)) + line_mm(NEAR[-1]) + 3


def room(masthead: Masthead, frame: Frame, sheet: Sheet) -> float:
    """Return the height between header and foot."""
    fixed = header_height(frame, sheet) + footer_height(masthead, frame) + 2 * SPACE
    return frame.height - 2 * frame.margin - fixed
