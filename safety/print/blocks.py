"""Blocks of a poster: each knows its height at its type sizes, draws itself, and may split to go on overleaf.

Nothing shrinks: a block that does not fit moves or splits. Widths and heights in millimetres.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

from reportlab.lib.colors import Color

from safety.print.fonts import BOLD, REGULAR, WordTooWide, line_mm, width_mm, wrapped
from safety.print.pen import INK, WHITE, Pen

GUTTER = 5.0


@dataclass(frozen=True)
class Type:
    """The two tiers, capital heights in millimetres, and the symbol boxes that go with them."""

    far: float
    near: float
    far_symbol: float
    near_symbol: float

    @property
    def heading(self) -> float:
        """Return the capitals of a heading within a sheet: near tier, but leading the eye."""
        return min(self.near * 1.4, max(self.far, self.near))


class Block(Protocol):
    """What flows over sheets."""

    def height(self) -> float:
        """Return the height in millimetres."""

    def draw(self, pen: Pen, x: float, top: float) -> None:
        """Draw at a corner."""

    def split(self, room: float) -> tuple[Block, Block] | None:
        """Return what fits into the room and the rest, or None if it holds together."""


@dataclass(frozen=True)
class Text:
    """A paragraph of one weight and height in a column."""

    words: str
    capital: float
    width: float
    bold: bool = False
    ink: Color = INK

    def lines(self) -> tuple[str, ...]:
        """Return its lines; raise WordTooWide."""
        return wrapped(self.words, BOLD if self.bold else REGULAR, self.capital, self.width)

    def height(self) -> float:
        """Return its height."""
        return len(self.lines()) * line_mm(self.capital)

    def draw(self, pen: Pen, x: float, top: float) -> None:
        """Write it."""
        pen.lines(x, top, self.lines(), self.capital, bold=self.bold, ink=self.ink)

    def split(self, room: float) -> tuple[Block, Block] | None:
        """Return the lines that fit and the rest as paragraphs of their own."""
        lines = self.lines()
        fits = int(room / line_mm(self.capital) + 1e-6)
        if not 0 < fits < len(lines):
            return None
        parts = (" ".join(lines[:fits]), " ".join(lines[fits:]))
        first, rest = (Text(part, self.capital, self.width, self.bold, self.ink) for part in parts)
        return first, rest


def stack_height(parts: Sequence[Text]) -> float:
    """Return the height of paragraphs under one another."""
    return sum(part.height() for part in parts)


def draw_stack(pen: Pen, x: float, top: float, parts: Sequence[Text]) -> float:
    """Draw paragraphs under one another and return where the next would start."""
    for part in parts:
        part.draw(pen, x, top)
        top += part.height()
    return top


def divide(parts: Sequence[Text], room: float) -> tuple[list[Text], list[Text]]:
    """Return the paragraphs, the last one cut at a line, that fit into the room, and the rest."""
    kept: list[Text] = []
    for place, part in enumerate(parts):
        if part.height() <= room + 1e-6:
            kept.append(part)
            room -= part.height()
            continue
        cut = part.split(room)
        rest = list(parts[place + 1 :])
        if cut is None:
            return kept, [part, *rest]
        first, second = cut
        return [*kept, first], [second, *rest]  # type: ignore[list-item]
    return kept, []


def fits(words: str, capital: float, width: float, bold: bool = False) -> bool:
    """Return whether every word of a text fits the column."""
    try:
        wrapped(words, BOLD if bold else REGULAR, capital, width)
    except WordTooWide:
        return False
    return True


@dataclass(frozen=True)
class Heading:
    """A line that opens a part of a sheet."""

    words: str
    capital: float
    width: float

    def text(self) -> Text:
        """Return its paragraph."""
        return Text(self.words, self.capital, self.width, bold=True)

    def height(self) -> float:
        """Return its height."""
        return self.text().height()

    def draw(self, pen: Pen, x: float, top: float) -> None:
        """Write it."""
        self.text().draw(pen, x, top)

    def split(self, room: float) -> tuple[Block, Block] | None:
        """Hold together."""
        return None


@dataclass(frozen=True)
class Word:
    """The signal word, white on black, with what it is about beside or below it."""

    word: str
    about: str
    type: Type
    width: float

    def box(self) -> tuple[float, float]:
        """Return width and height of the black box."""
        return width_mm(self.word, BOLD, self.type.far) + self.type.far, line_mm(self.type.far) * 1.08

    def beside(self) -> bool:
        """Return whether the second text stands beside the box."""
        return self.box()[0] + 4 + width_mm(self.about, BOLD, self.type.heading) <= self.width

    def height(self) -> float:
        """Return its height."""
        below = 0 if self.beside() else Text(self.about, self.type.heading, self.width, True).height() + 1
        return self.box()[1] + below

    def draw(self, pen: Pen, x: float, top: float) -> None:
        """Draw it."""
        wide, high = self.box()
        pen.fill(x, top, wide, high, INK)
        middle = top + (high - line_mm(self.type.far)) / 2
        pen.text(x + self.type.far / 2, middle, self.word, self.type.far, bold=True, ink=WHITE)
        about = Text(self.about, self.type.heading, self.width, True)
        if self.beside():
            about.draw(pen, x + wide + 4, top + (high - line_mm(self.type.heading)) / 2)
        else:
            about.draw(pen, x, top + high + 1)

    def split(self, room: float) -> tuple[Block, Block] | None:
        """Hold together."""
        return None


@dataclass(frozen=True)
class Boxed:
    """Sentences in a frame: what must not be missed."""

    parts: tuple[Text, ...]
    width: float

    def height(self) -> float:
        """Return its height."""
        return stack_height(self.parts) + 6

    def draw(self, pen: Pen, x: float, top: float) -> None:
        """Draw it."""
        pen.frame(x, top, self.width, self.height(), line=0.9)
        draw_stack(pen, x + 4, top + 3, self.parts)

    def split(self, room: float) -> tuple[Block, Block] | None:
        """Go on overleaf where the text is longer than the sheet."""
        first, rest = divide(self.parts, room - 6)
        if not first or not rest:
            return None
        return Boxed(tuple(first), self.width), Boxed(tuple(rest), self.width)


@dataclass(frozen=True)
class Together:
    """Blocks that belong together: they part only where a whole sheet does not hold them."""

    blocks: tuple[Block, ...]

    def height(self) -> float:
        """Return the height with the space between."""
        return sum(block.height() for block in self.blocks) + GUTTER * (len(self.blocks) - 1)

    def draw(self, pen: Pen, x: float, top: float) -> None:
        """Draw them under one another."""
        for block in self.blocks:
            block.draw(pen, x, top)
            top += block.height() + GUTTER

    def split(self, room: float) -> tuple[Block, Block] | None:
        """Return the blocks that fit, and the rest."""
        for count in range(len(self.blocks) - 1, 0, -1):
            first = Together(self.blocks[:count])
            if first.height() <= room:
                return first, Together(self.blocks[count:])
        return None
