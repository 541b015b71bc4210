"""Laying a poster out: which blocks stand on which sheet, at which size of small text.

Letter heights: D/200 for the far tier at the distance asked for (on the safe side of D/300 in DIN 4844 and
ANSI Z535), D/300 for the near tier at 1 m; far symbols D/40.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from safety.print.blocks import Block, Heading, Text, Type, fits
from safety.print.fonts import BOLD, WordTooWide, line_mm, width_mm
from safety.print.pen import paper_size
from safety.print.poster_events import event_blocks
from safety.print.poster_place import never_blocks, place_blocks
from safety.print.poster_products import product_blocks
from safety.print.values import PosterContent

NEAR = (5.2, 4.6, 4.0, 3.4)  # small text: the largest that needs no other sheets than the least
SPACE = 5.0
NEVER = "never together"


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


def laid_out(content: PosterContent, paper: str) -> tuple[Frame, list[Sheet]]:
    """Return the sheets in the largest small text that parts them as the smallest does."""
    least = frame_for(paper, content.read_at_m, NEAR[-1])
    fewest = sheets_of(content, least)
    for near in NEAR[:-1]:
        frame = frame_for(paper, content.read_at_m, near)
        try:
            sheets = sheets_of(content, frame)
        except WordTooWide:
            continue
        if [sheet.title for sheet in sheets] == [sheet.title for sheet in fewest]:
            return frame, sheets
    return least, fewest


def sheets_of(content: PosterContent, frame: Frame) -> list[Sheet]:
    """Return the sheets: each purpose on its own, or together where all of one fits under another."""
    place = content.place
    count = len(content.products)
    noun = "product" if count == 1 else "products"
    about = " · ".join(part for part in (place.task, f"{count} {noun} admitted" if count else "") if part)
    where = ", ".join(part for part in (place.shop, place.address) if part)
    purposes = [
        ("", tuple(line for line in (about, where) if line), place_blocks(content, frame.type, frame.inner)),
        (
            NEVER,
            ("Not in one bottle, bucket, cloth or drain",),
            never_blocks(content, frame.type, frame.inner),
        ),
        (
            "if it happens",
            ("Look after yourself first, then the other person, then call",),
            event_blocks(content, frame.type, frame.inner),
        ),
        (
            "products",
            ("What is admitted here, the gravest first",),
            product_blocks(content, frame.type, frame.inner),
        ),
    ]
    sheets: list[Sheet] = []
    for purpose, under, blocks in purposes:
        if blocks:
            add_purpose(sheets, content, frame, purpose, under, blocks)
    return sheets


def add_purpose(
    sheets: list[Sheet],
    content: PosterContent,
    frame: Frame,
    purpose: str,
    under: tuple[str, ...],
    blocks: list[Block],
) -> None:
    """Add the blocks of one purpose: under the last sheet if all of it fits there, else on its own."""
    if sheets:
        # The red frame carries its own title.
        words = purpose[0].upper() + purpose[1:]
        head = [] if purpose == NEVER else [Heading(words, frame.type.far, frame.inner)]
        together = Sheet(sheets[-1].title, sheets[-1].under, (*sheets[-1].blocks, *head, *blocks))
        if total(together.blocks) <= room(content, frame, together):
            sheets[-1] = together
            return
    title = f"{content.place.name}: {purpose}" if purpose else content.place.name
    first = Sheet(title, under, ())
    for flowed in flow(blocks, room(content, frame, first)):
        sheets.append(Sheet(title, under, tuple(flowed)))


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
        if cut and (not page or block.height() > height):
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


def title_text(content: PosterContent, frame: Frame, title: str) -> Text:
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


def header_height(content: PosterContent, frame: Frame, sheet: Sheet) -> float:
    """Return the height of title, lines under it, code and rule."""
    text = title_text(content, frame, sheet.title)
    texts = text.height() + sum(part.height() for part in under_texts(frame, sheet))
    beside = frame.code if text.width < frame.inner else text.height() + frame.code
    return max(texts, beside) + 4


def footer_texts(content: PosterContent, frame: Frame) -> list[Text]:
    """Return what stands at the foot of every sheet, all of it at the near size."""
    capital = NEAR[-1]
    near_m = frame.type.near * 300 / 1000
    small = "1 m" if frame.type.near == NEAR[-1] else f"{near_m:.2g} m, this line to 1 m"
    binder = f"; binder at {content.place.binder_at}" if content.place.binder_at else ""
    lines = (
        f"{content.place.name}, version {content.version}, {content.printed_on} · replace after "
        f"{content.replace_after} or when the site says so.",
        f"Large text legible to {frame.type.far / 5:.2g} m, small text to {small}. "
        f"The code works on this shop's Wi-Fi{binder}.",
        content.caution,
    )
    return [Text(line, capital, frame.inner) for line in lines]


def footer_height(content: PosterContent, frame: Frame) -> float:
    """Return the height of the foot with the line for the sheet's number."""
    return sum(part.height() for part in footer_texts(content, frame)) + line_mm(NEAR[-1]) + 3


def room(content: PosterContent, frame: Frame, sheet: Sheet) -> float:
    """Return the height between header and foot."""
    fixed = header_height(content, frame, sheet) + footer_height(content, frame) + 2 * SPACE
    return frame.height - 2 * frame.margin - fixed
