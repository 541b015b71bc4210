"""The poster's first sheet: dangers in plain words, and what to wear."""

from __future__ import annotations

from dataclasses import dataclass

from safety.print import pictograms, signs
from safety.print.blocks import (
    GUTTER,
    Block,
    Boxed,
    Heading,
    Text,
    Type,
    Word,
    draw_stack,
    fits,
    stack_height,
)
from safety.print.fonts import BOLD, width_mm
from safety.print.pen import Pen
from safety.print.values import Danger, Equipment, PosterContent
from safety.print.words import say

SIGN = 25.0  # the box of an equipment sign: D/40 at 1 m, as its words
UNKNOWN = "No data sheet yet: treat as hazardous, ask the owner."


@dataclass(frozen=True)
class SymbolCell:
    """A symbol with a far-legible heading and near text, side by side or the text running below."""

    symbol: str
    heading: str
    capital: float
    details: tuple[str, ...]
    near: float
    box: float
    width: float
    below: bool = False

    def side(self) -> float:
        """Return the width beside the symbol."""
        return self.width - (self.box + 3 if self.symbol else 0)

    def head(self) -> Text:
        """Return the heading."""
        return Text(self.heading, self.capital, self.side(), bold=True)

    def body(self) -> list[Text]:
        """Return the small text."""
        width = self.width if self.below else self.side()
        return [Text(detail, self.near, width) for detail in self.details]

    def height(self) -> float:
        """Return the height."""
        symbol = self.box if self.symbol else 0
        if self.below:
            return max(symbol, self.head().height()) + 1 + stack_height(self.body())
        return max(symbol, self.head().height() + stack_height(self.body()))

    def draw(self, pen: Pen, x: float, top: float) -> None:
        """Draw it: the text stands in the middle of the symbol's height where it is the shorter."""
        if self.symbol.startswith("GHS"):
            pictograms.draw(pen, self.symbol, x, top, self.box)
        elif self.symbol:
            signs.draw(pen, self.symbol, x, top, self.box)
        right = x + self.width - self.side()
        symbol = self.box if self.symbol else 0
        if self.below:
            self.head().draw(pen, right, top + max(0, symbol - self.head().height()) / 2)
            draw_stack(pen, x, top + max(symbol, self.head().height()) + 1, self.body())
            return
        text = self.head().height() + stack_height(self.body())
        draw_stack(pen, right, top + max(0, symbol - text) / 2, [self.head(), *self.body()])


@dataclass(frozen=True)
class Row:
    """Cells side by side in columns of one width."""

    cells: tuple[SymbolCell, ...]
    step: float

    def height(self) -> float:
        """Return the height of the tallest."""
        return max(cell.height() for cell in self.cells)

    def draw(self, pen: Pen, x: float, top: float) -> None:
        """Draw the cells."""
        for place, cell in enumerate(self.cells):
            cell.draw(pen, x + place * self.step, top)

    def split(self, room: float) -> tuple[Block, Block] | None:
        """Hold together: a symbol never parts from its words."""
        return None


def danger_rows(dangers: tuple[Danger, ...], type_: Type, width: float) -> list[Row]:
    """Return the dangers in two columns where their headings fit, else in one."""
    half = (width - GUTTER) / 2
    two = all(fits(one.heading, type_.far, half - type_.far_symbol - 3, bold=True) for one in dangers)
    column = half if two else width
    box = type_.far_symbol
    cells = [
        SymbolCell(one.pictogram, one.heading, type_.far, (". ".join(one.lines),), type_.near, box, column)
        for one in dangers
    ]
    per = 2 if two else 1
    return [Row(tuple(cells[at : at + per]), column + GUTTER) for at in range(0, len(cells), per)]


def sign_rows(equipment: tuple[Equipment, ...], type_: Type, width: float) -> list[Row]:
    """Return the equipment signs with their words."""
    return columned([(one.sign, one.word, one.lines) for one in equipment], type_, width)


def columned(signs: list[tuple[str, str, tuple[str, ...]]], type_: Type, width: float) -> list[Row]:
    """Return (sign, word, lines) in rows, as many side by side as their words allow."""
    box = min(SIGN, type_.far_symbol)
    head = type_.near * 1.25
    words = [word for _, heading, _ in signs for word in heading.split()]
    word = max((width_mm(word, BOLD, head) for word in words), default=0)
    most = max(1, int((width + GUTTER) // (max(box + 3 + word, 46) + GUTTER)))
    choices = []
    for per in range(1, min(most, len(signs)) + 1):
        column = (width - (per - 1) * GUTTER) / per
        cells = [
            SymbolCell(sign, heading, head, lines, type_.near, box, column, below=True)
            for sign, heading, lines in signs
        ]
        choices.append(
            [Row(tuple(cells[at : at + per]), column + GUTTER) for at in range(0, len(cells), per)]
        )
    # Long lists read better in few wide columns, short ones in many: the lowest arrangement shows which.
    return min(choices, key=lambda rows: sum(row.height() + GUTTER for row in rows), default=[])


def place_blocks(content: PosterContent, type_: Type, width: float) -> list[Block]:
    """Return the blocks of the first sheet, in the order that they are read."""
    language = content.language
    about = say("What can hurt you here", language)
    blocks: list[Block] = []
    if content.signal_word:
        blocks.append(Word(content.signal_word, about, type_, width))
    elif content.products:
        none = "No product here with a data sheet carries a signal word."
        blocks.append(Heading(say(none, language), type_.heading, width))
    else:
        blocks.append(Heading(say("No product is admitted to this place.", language), type_.heading, width))
    blocks.extend(danger_rows(content.dangers, type_, width))
    if content.unknown:
        names = Text(", ".join(content.unknown), type_.heading, width - 8, bold=True)
        blocks.append(Boxed((names, Text(say(UNKNOWN, language), type_.near, width - 8)), width))
    if content.equipment:
        blocks.append(Heading(say("Before you start", language), type_.heading, width))
        blocks.extend(sign_rows(content.equipment, type_, width))
    return blocks
