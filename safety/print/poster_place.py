"""The poster's first sheet: dangers in plain words, what to wear, what must never meet."""

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
from safety.print.fonts import BOLD, line_mm, width_mm
from safety.print.pen import RED, WHITE, Pen
from safety.print.values import Danger, Equipment, NeverPair, PosterContent
from safety.print.words import ENGLISH, say

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


def danger_rows(dangers: tuple[Danger, ...], type_: Type, width: float, language: str = ENGLISH) -> list[Row]:
    """Return the dangers in two columns where their headings fit, else in one."""
    half = (width - GUTTER) / 2
    two = all(fits(one.heading, type_.far, half - type_.far_symbol - 3, bold=True) for one in dangers)
    column = half if two else width
    box = type_.far_symbol
    cells = [
        SymbolCell(one.pictogram, one.heading, type_.far, details(one, language), type_.near, box, column)
        for one in dangers
    ]
    per = 2 if two else 1
    return [Row(tuple(cells[at : at + per]), column + GUTTER) for at in range(0, len(cells), per)]


def details(danger: Danger, language: str) -> tuple[str, ...]:
    """Return the small text of a danger: products, what else, codes."""
    also = f" {say('Also {what}.', language, what=danger.also)}" if danger.also else ""
    return (f"{danger.says}.{also} {', '.join(danger.codes)}",)


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


@dataclass(frozen=True)
class Never:
    """The red frame: pairs at the far size, what happens at the near one. Splits between pairs."""

    pairs: tuple[NeverPair, ...]
    type: Type
    width: float
    language: str = ENGLISH
    title: str = "Never together"

    def columns(self) -> tuple[float, float, float, float] | None:
        """Return widths of one, plus, other, why; None where the words need the whole width."""
        inner = self.width - 12
        plus = width_mm("+", BOLD, self.type.far) + 3
        most = (inner - plus) * 0.39
        words = [word for pair in self.pairs for word in (pair.one, pair.other)]
        if not all(fits(word, self.type.far, most - 3, bold=True) for word in words):
            return None
        # A side that needs less than its share leaves the rest to the other.
        whole, least = inner - plus, (inner - plus) * 0.22
        other = min(most, self.widest([pair.other for pair in self.pairs]))
        one = min(whole - least - other, self.widest([pair.one for pair in self.pairs]))
        other = min(whole - least - one, self.widest([pair.other for pair in self.pairs]))
        return one, plus, other, inner - plus - one - other

    def widest(self, names: list[str]) -> float:
        """Return the width that the longest name would take on one line."""
        return max(width_mm(name, BOLD, self.type.far) for name in names) + 3.1

    def bar(self) -> float:
        """Return the height of the title."""
        return line_mm(self.type.heading) + 3

    def parts(self, pair: NeverPair) -> tuple[list[Text], list[Text], list[Text]]:
        """Return the texts of a pair: one, other, why."""
        columns = self.columns()
        if columns is None:
            inner = self.width - 12
            both = Text(f"{pair.one} + {pair.other}", self.type.far, inner, bold=True)
            return [both, Text(pair.why, self.type.near, inner)], [], []
        one, _, other, why = columns
        return (
            [Text(pair.one, self.type.far, one - 3, bold=True)],
            [Text(pair.other, self.type.far, other - 3, bold=True)],
            [Text(pair.why, self.type.near, why)],
        )

    def row(self, pair: NeverPair) -> float:
        """Return the height of a pair."""
        return max(stack_height(part) for part in self.parts(pair)) + 4

    def height(self) -> float:
        """Return the height."""
        return self.bar() + sum(self.row(pair) for pair in self.pairs)

    def draw(self, pen: Pen, x: float, top: float) -> None:
        """Draw it."""
        pen.fill(x, top, self.width, self.bar(), RED)
        pen.text(x + 6, top + 1.5, say(self.title, self.language), self.type.heading, bold=True, ink=WHITE)
        y = top + self.bar()
        for place, pair in enumerate(self.pairs):
            if place:
                pen.rule(x, y, x + self.width, RED)
            self.draw_pair(pen, x + 6, y, pair)
            y += self.row(pair)
        pen.frame(x, top, self.width, self.height(), RED, 1.2)

    def draw_pair(self, pen: Pen, x: float, top: float, pair: NeverPair) -> None:
        """Draw one pair, each part in the middle of the row."""
        columns = self.columns() or (0.0, 0.0, 0.0, 0.0)
        one, plus, other, _ = columns
        left = (x, x + one + plus, x + one + plus + other)
        room = self.row(pair)
        for at, part in zip(left, self.parts(pair), strict=True):
            draw_stack(pen, at, top + (room - stack_height(part)) / 2, part)
        if plus:
            pen.text(x + one, top + (room - line_mm(self.type.far)) / 2, "+", self.type.far, bold=True)

    def split(self, room: float) -> tuple[Block, Block] | None:
        """Return the pairs that fit, and the rest under the same title."""
        for count in range(len(self.pairs) - 1, 0, -1):
            first = Never(self.pairs[:count], self.type, self.width, self.language, self.title)
            if first.height() <= room:
                title = "Never together (continued)"
                return first, Never(self.pairs[count:], self.type, self.width, self.language, title)
        return None


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
    blocks.extend(danger_rows(content.dangers, type_, width, language))
    if content.unknown:
        names = Text(", ".join(content.unknown), type_.heading, width - 8, bold=True)
        blocks.append(Boxed((names, Text(say(UNKNOWN, language), type_.near, width - 8)), width))
    if content.equipment:
        blocks.append(Heading(say("Before you start", language), type_.heading, width))
        blocks.extend(sign_rows(content.equipment, type_, width))
    return blocks


def never_blocks(content: PosterContent, type_: Type, width: float) -> list[Block]:
    """Return the red frame, if anything here must not meet."""
    return [Never(content.never, type_, width, content.language)] if content.never else []
