"""How a label's words flow round its diamonds and its code: every arrangement is measured before a stroke.

Text re-flows through smaller arrangements down to fixed floors: the x-height (1.2 mm and more by the
package's capacity, Regulation (EU) 2024/2865) and the diamond's side (10 mm and more, CLP Table 1.3). Nothing
is dropped.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil

from safety.print.fonts import BOLD, REGULAR, WordTooWide, line_mm, width_mm, wrapped
from safety.print.label_flow import CLEAR, Block, Paragraph, Run, flow, font
from safety.print.label_sizes import DIAMOND, Size
from safety.print.values import LabelContent

LETTERS = 2.1  # capitals of our code
CAPITALS = (4.2, 3.8, 3.4, 2.9, 2.7, 2.45, 2.1, 1.9, 1.65)
X_HEIGHT = 496 / 668  # of this face, per capital height: from its own OS/2 table
GAP = 0.7
LESS = 0.6  # small text is at most this much of the name
MORE = 1.2  # the signal word is this much larger than the text
HOLE = 9.0  # the strip of a tag's hole
BOX_WIDTH, BOX_HEIGHT = 19.0, 8.0  # a date written by hand (common practice, no source)


@dataclass(frozen=True)
class Arrangement:
    """One way of laying a label out, measured. `fill_boxes` are the boxes to write a date in."""

    runs: tuple[Run, ...]
    date: Block | None
    code: Block
    diamonds: tuple[Block, ...]
    fill_boxes: tuple[Block, ...]
    text_cap: float


def ways(content: LabelContent, size: Size) -> Iterator[Arrangement]:
    """Yield the arrangements that fit, the best first."""
    width, height = size.inner
    width -= HOLE if content.hole else 0
    for side, capital in _heights(content, size):
        box = side * DIAMOND
        texts = paragraphs(content, size, capital)
        ink = sum(width_mm(one.text, font(one), one.capital) * line_mm(one.capital) for one in texts)
        for name_cap in size.names:
            try:
                name = wrapped(content.name, BOLD, name_cap, width)
            except WordTooWide:
                continue
            top = len(name) * line_mm(name_cap) + GAP / 2
            if (
                ink + box * box * len(content.pictograms) > width * (height - top)
                or capital > name_cap * LESS
            ):
                continue
            titles = [
                Run(line, True, name_cap, 0, place * line_mm(name_cap)) for place, line in enumerate(name)
            ]
            yield from _laid(content, size, titles, texts, box, top, width)


def _heights(content: LabelContent, size: Size) -> list[tuple[float, float]]:
    """Return (side, capitals) from the best to the least; a side wished for goes before large text."""
    floor = content.x_height_mm / X_HEIGHT - 0.001
    capitals = [capital for capital in CAPITALS if capital >= floor]
    largest = content.side_if_possible_mm or max(size.sides)
    sides = [side for side in size.sides if content.side_mm <= side <= max(largest, content.side_mm)]
    if not content.pictograms:
        return [(0.0, capital) for capital in capitals]
    if content.side_if_possible_mm:
        return [(side, capital) for side in sides for capital in capitals]
    return [(side, capital) for capital in capitals for side in sides]


def paragraphs(content: LabelContent, size: Size, capital: float) -> list[Paragraph]:
    """Return the small text in its order: notice, word, statements, precautions, facts, maker, advice."""
    word = max(size.word, capital * MORE)
    facts = " · ".join(part for part in (*content.facts, content.because) if part)
    listed = (
        Paragraph(content.notice, capital, True),
        Paragraph(content.signal_word or "", word, True),
        Paragraph(" ".join(content.statements), capital),
        Paragraph(" ".join(content.precautions), capital, space=0.4),
        Paragraph(facts, capital, space=0.5),
        Paragraph(content.supplier, capital, space=0.2),
        Paragraph(content.advice, capital, True, 0.5),
    )
    return [one for one in listed if one.text]


def _laid(
    content: LabelContent,
    size: Size,
    titles: list[Run],
    texts: Sequence[Paragraph],
    box: float,
    top: float,
    width: float,
) -> Iterator[Arrangement]:
    """Yield the ways with this type: the code on the right or under the date, diamonds in one row or more."""
    date = date_block(content, size, top)
    under = date.bottom if date else top
    code_wide = code_width(size)
    beside = (date.width + 2 if date else 0) + code_wide <= width
    # Code right of the date, diamonds at the left below; or code under the date, diamonds at the right.
    if beside:
        code = Block(width - code_wide, top, code_wide, size.matrix)
        start = under + GAP if date else top
        for diamonds in grids(len(content.pictograms), box, width):
            across = max((x for x, _ in diamonds), default=0) + box
            below = start if across + CLEAR + code_wide <= width else max(start, code.bottom + GAP)
            placed = tuple(Block(x, below + down, box, box) for x, down in diamonds)
            yield from _flowed(content, size, titles, texts, date, code, placed, start, width)
    code = Block(0, under + GAP, code_wide, size.matrix)
    for diamonds in grids(len(content.pictograms), box, width - code_wide):
        across = max((x for x, _ in diamonds), default=0) + box
        placed = tuple(Block(width - across + x, top + down, box, box) for x, down in diamonds)
        clear = not placed or width - across >= max(date.width if date else 0, code_wide) + 1
        if clear:
            yield from _flowed(content, size, titles, texts, date, code, placed, under + GAP, width)


def grids(count: int, box: float, width: float) -> Iterator[list[tuple[float, float]]]:
    """Yield corners of diamonds in one row, two, three, where the width takes them."""
    if not count:
        yield []
        return
    for lines in range(1, min(count, 3) + 1):
        in_row = ceil(count / lines)
        if in_row * box <= width + 0.01 and ceil(count / in_row) == lines:
            yield [((place % in_row) * box, (place // in_row) * box) for place in range(count)]


def _flowed(
    content: LabelContent,
    size: Size,
    titles: list[Run],
    texts: Sequence[Paragraph],
    date: Block | None,
    code: Block,
    diamonds: tuple[Block, ...],
    start: float,
    width: float,
) -> Iterator[Arrangement]:
    height = size.inner[1]
    caption = texts[-1].capital if texts else max(size.says, CAPITALS[-1])
    room = height - (line_mm(caption) + BOX_HEIGHT + GAP if content.fill_says else 0)
    blocks = (code, *diamonds)
    if max(block.bottom for block in blocks) > room + 0.01:
        return
    runs = flow(texts, blocks, start, width, room)
    if runs is None:
        return
    ends = max([run.top + line_mm(run.capital) for run in runs] + [block.bottom for block in blocks])
    boxes: tuple[Block, ...] = ()
    if content.fill_says:
        boxes = fill_boxes(width, ends + GAP + line_mm(caption), height)
        runs.append(Run(content.fill_says, False, caption, 0, boxes[0].top - line_mm(caption)))
    yield Arrangement(
        (*titles, *runs), date, code, diamonds, boxes, min((one.capital for one in texts), default=0)
    )


def fill_boxes(width: float, top: float, height: float) -> tuple[Block, ...]:
    """Return as many boxes for a date as there is room for: whole rows, one at least."""
    columns = max(int((width + 1) // (BOX_WIDTH + 1)), 1)
    each = (width + 1) / columns
    rows = max(int((height - top + 1.01) // (BOX_HEIGHT + 1)), 1)
    return tuple(
        Block(column * each, top + row * (BOX_HEIGHT + 1), each - 1, BOX_HEIGHT)
        for row in range(min(rows, 3))
        for column in range(columns)
    )


def date_block(content: LabelContent, size: Size, top: float) -> Block | None:
    """Return the box of the date, None where there is none."""
    if not content.use_by:
        return None
    says = width_mm(content.use_by_says, REGULAR, size.says)
    wide = max(width_mm(content.use_by, BOLD, size.date), says) + 2.4
    return Block(0, top, wide, line_mm(size.says) + line_mm(size.date) - 1.2)


def code_width(size: Size) -> float:
    """Return the width of the symbol with its letters beside it (widest letters assumed)."""
    return size.matrix + 0.8 + width_mm("XXNH", BOLD, LETTERS)
