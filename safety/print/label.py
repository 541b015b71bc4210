"""A bottle's label: name first and largest, the date in a box, diamonds, word, statements, our code.

Text re-flows through smaller arrangements down to fixed floors (small text 1.2 mm x-height, CLP Table 1.3 as
amended by Regulation 2024/2865; diamonds 10 mm a side, CLP Table 1.3). What does not fit then is refused with
the next size: nothing runs over, nothing shrinks below what can be read.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product

from safety.print import pictograms, symbols
from safety.print.fonts import BOLD, REGULAR, WordTooWide, line_mm, width_mm, wrapped
from safety.print.label_sizes import SIZES, LabelTooSmall, Size, UnknownSize, size_called
from safety.print.pen import Pen
from safety.print.values import LabelContent

__all__ = [
    "SIZES",
    "LabelTooSmall",
    "Size",
    "UnknownSize",
    "arranged",
    "draw",
    "said",
    "size_called",
    "smallest_for",
]

LETTERS = 2.1
TEXT = (2.4, 2.1, 1.85, 1.65)
GAP = 0.7


@dataclass(frozen=True)
class Arrangement:
    """One way of laying a label out, measured."""

    name: tuple[str, ...]
    name_cap: float
    row: float
    box: float
    text_x: float
    text_top: float
    text: tuple[tuple[str, bool], ...]
    text_cap: float
    word_up: bool
    facts: str


def smallest_for(content: LabelContent, first: str = "medium") -> Size:
    """Return the smallest size from `first` on that carries the content; raise LabelTooSmall at the end."""
    size = size_called(first)
    while True:
        try:
            arranged(content, size)
        except LabelTooSmall as short:
            if short.next_size is None:
                raise
            size = SIZES[short.next_size]
        else:
            return size


def arranged(content: LabelContent, size: Size) -> Arrangement:
    """Return the most generous arrangement that fits; raise LabelTooSmall if none does."""
    for found in ways(content, size):
        return found
    raise LabelTooSmall(content.name, size)


def ways(content: LabelContent, size: Size) -> Iterator[Arrangement]:
    """Yield the arrangements that fit, the largest type first."""
    build = full_way if size.full else small_way
    for facts, text_cap, box, name_cap in product(fact_lines(content), TEXT, size.boxes, size.names):
        try:
            found = build(content, size, facts, box, name_cap, text_cap)
        except WordTooWide:
            continue
        if found:
            yield found


def fact_lines(content: LabelContent) -> list[str]:
    """Return the line of facts, then what is left of it where room is short: the code leads to the rest."""
    every = " · ".join(part for part in (*content.facts, content.because) if part)
    return list(dict.fromkeys([every, content.because, ""]))


def small_way(
    content: LabelContent, size: Size, facts: str, box: float, name_cap: float, text_cap: float
) -> Arrangement | None:
    """Return the small form (identity, date, diamonds, word, code) if it fits."""
    width, height = size.inner
    name = wrapped(content.name, BOLD, name_cap, width)
    room = height - len(name) * line_mm(name_cap)
    left = width - box * len(content.pictograms)
    needs = max(date_width(content, size), code_width(size) + word_width(content, text_cap))
    row = row_height(content, size)
    stack = row + GAP + size.matrix
    if left < needs or stack > room or (content.pictograms and box > room):
        return None
    beside = left - code_width(size) - 1 - word_width(content, text_cap)
    notice = [(line, True) for line in wrapped(content.notice, BOLD, text_cap, beside)]
    if len(notice) * line_mm(text_cap) > size.matrix:
        return None
    top = len(name) * line_mm(name_cap) + row + GAP
    return Arrangement(name, name_cap, row, box, 0, top, tuple(notice), text_cap, True, "")


def full_way(
    content: LabelContent, size: Size, facts: str, box: float, name_cap: float, text_cap: float
) -> Arrangement | None:
    """Return the full form if it fits, its text beside the diamonds, else below them."""
    width, height = size.inner
    name = wrapped(content.name, BOLD, name_cap, width)
    row = max(row_height(content, size), size.matrix)
    top = len(name) * line_mm(name_cap) + row + 2 * GAP
    free = width - date_width(content, size) - code_width(size) - 2 * GAP
    word_up = word_width(content, size.word) <= free
    diamonds = len(content.pictograms) * box
    for x, start in ((diamonds + 1.5 if diamonds else 0.0, top), (0.0, top + box + GAP)):
        if width - x < 24 or diamonds > width:
            continue
        text = text_lines(content, facts, text_cap, width - x)
        high = sum(line_mm(text_cap) for _ in text)
        high += 0 if word_up or not content.signal_word else line_mm(size.word)
        if start + max(high, box if diamonds and start == top else 0) <= height + 0.01:
            return Arrangement(name, name_cap, row, box, x, start, tuple(text), text_cap, word_up, facts)
    return None


def date_width(content: LabelContent, size: Size) -> float:
    """Return the width of the date's box."""
    if not content.use_by:
        return 0.0
    return (
        max(width_mm(content.use_by, BOLD, size.date), width_mm(content.use_by_says, REGULAR, size.says))
        + 2.4
    )


def row_height(content: LabelContent, size: Size) -> float:
    """Return the height of the date's box."""
    return line_mm(size.says) + line_mm(size.date) - 1.2 if content.use_by else 0.0


def code_width(size: Size) -> float:
    """Return the width of the symbol with its letters beside it (widest letters assumed)."""
    return size.matrix + 0.8 + width_mm("XXNH", BOLD, LETTERS)


def word_width(content: LabelContent, capital: float) -> float:
    """Return the width of the signal word with the space that it wants."""
    return width_mm(content.signal_word, BOLD, capital) + 2 if content.signal_word else 0.0


def text_lines(content: LabelContent, facts: str, capital: float, width: float) -> list[tuple[str, bool]]:
    """Return (line, bold) of the small text: notice, statements, facts."""
    return [
        *((line, True) for line in wrapped(content.notice, BOLD, capital, width)),
        *((line, False) for line in wrapped(" ".join(content.statements), REGULAR, capital, width)),
        *((line, False) for line in wrapped(facts, REGULAR, capital, width)),
    ]


def draw(pen: Pen, content: LabelContent, size: Size, x: float = 0, top: float = 0) -> Arrangement:
    """Draw one label with its corner at (x, top); raise LabelTooSmall before a stroke is made."""
    way = arranged(content, size)
    x, top = x + size.pad, top + size.pad
    width, _ = size.inner
    after = pen.lines(x, top, way.name, way.name_cap, bold=True) + (GAP if size.full else 0)
    draw_date(pen, content, size, x, after)
    if size.full:
        draw_code(pen, content, size, x + width - code_width(size), after)
        draw_full(pen, content, size, way, x, top, after + way.row + GAP)
    else:
        draw_small(pen, content, size, way, x, after)
    return way


def draw_full(
    pen: Pen, content: LabelContent, size: Size, way: Arrangement, x: float, top: float, below: float
) -> None:
    """Draw the diamonds, the word and the small text of a full label."""
    for place, code in enumerate(content.pictograms):
        pictograms.draw(pen, code, x + place * way.box, below, way.box)
    cursor = top + way.text_top
    if content.signal_word and way.word_up:
        middle = below - GAP - way.row / 2 - line_mm(size.word) / 2
        pen.text(x + date_width(content, size) + 1.4, middle, content.signal_word, size.word, bold=True)
    elif content.signal_word:
        cursor = pen.lines(x + way.text_x, cursor, [content.signal_word], size.word, bold=True)
    for line, bold in way.text:
        cursor = pen.lines(x + way.text_x, cursor, [line], way.text_cap, bold=bold)


def draw_small(pen: Pen, content: LabelContent, size: Size, way: Arrangement, x: float, after: float) -> None:
    """Draw the small form: date over code on the left, diamonds on the right."""
    width, _ = size.inner
    below = after + way.row + GAP
    draw_code(pen, content, size, x, below)
    if content.signal_word:
        pen.text(x + code_width(size) + 1, below, content.signal_word, way.text_cap, bold=True)
    cursor, beside = below, x + code_width(size) + 1 + word_width(content, way.text_cap)
    for line, bold in way.text:
        cursor = pen.lines(beside, cursor, [line], way.text_cap, bold=bold)
    for place, code in enumerate(reversed(content.pictograms)):
        pictograms.draw(pen, code, x + width - (place + 1) * way.box, after, way.box)


def draw_date(pen: Pen, content: LabelContent, size: Size, x: float, top: float) -> None:
    """Draw the date in its box."""
    if not content.use_by:
        return
    pen.frame(x, top, date_width(content, size), row_height(content, size), line=0.5)
    pen.text(x + 1.2, top + 0.1, content.use_by_says, size.says)
    pen.text(x + 1.2, top + line_mm(size.says) - 0.9, content.use_by, size.date, bold=True)


def draw_code(pen: Pen, content: LabelContent, size: Size, x: float, top: float) -> None:
    """Draw our code as a square symbol and as letters in two groups, the first bold."""
    side = size.matrix
    symbols.draw(pen, content.code, "matrix", x, top, side)
    middle = top + side / 2
    pen.text(x + side + 0.6, middle - line_mm(LETTERS), content.code[:4], LETTERS, bold=True)
    pen.text(x + side + 0.6, middle, content.code[4:], LETTERS)


def said(content: LabelContent, size: Size, way: Arrangement) -> dict[str, object]:
    """Return what stands on a label, for scripts."""
    return {
        "code": content.code,
        "name": content.name,
        "use_by": content.use_by or None,
        "pictograms": list(content.pictograms),
        "signal_word": content.signal_word,
        "statements": list(content.statements) if size.full else [],
        "form": "full" if size.full else "small",
        "size": size.name,
        "width_mm": size.width,
        "height_mm": size.height,
        "small_text_mm": way.text_cap,
        "facts": way.facts or None,
        "notice": content.notice or None,
    }
