"""The red frame on the poster's first sheet: what must never meet."""

from __future__ import annotations

from dataclasses import dataclass

from safety.print.blocks import Block, Text, Type, draw_stack, fits, stack_height
from safety.print.fonts import BOLD, line_mm, width_mm
from safety.print.pen import RED, WHITE, Pen
from safety.print.values import NeverPair, PosterContent
from safety.print.words import ENGLISH, say


def tallest(parts: tuple[list[Text], ...]) -> float:
    """Return the height of the tallest of several stacks."""
    return max(stack_height(part) for part in parts)


@dataclass(frozen=True)
class Never:
    """The red frame: pairs at the far size, what happens at the near one. Splits between pairs."""

    pairs: tuple[NeverPair, ...]
    type: Type
    width: float
    language: str = ENGLISH
    title: str = "Never together"

    def columns(self) -> tuple[float, float, float, float] | None:
        """Return widths of one, plus, other, why; None where the whole width serves better."""
        found = self.side_by_side()
        if found is None:
            return None
        beside = sum(tallest(self.parts_in(pair, found)) for pair in self.pairs)
        under = sum(tallest(self.parts_in(pair, None)) for pair in self.pairs)
        return found if beside <= under else None

    def side_by_side(self) -> tuple[float, float, float, float] | None:
        """Return the widths of the four columns, None where a word is wider than its own."""
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
        return self.parts_in(pair, self.columns())

    def parts_in(
        self, pair: NeverPair, columns: tuple[float, float, float, float] | None
    ) -> tuple[list[Text], list[Text], list[Text]]:
        """Return the texts of a pair in columns, or all under one another."""
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
        return tallest(self.parts(pair)) + 4

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


def never_blocks(content: PosterContent, type_: Type, width: float) -> list[Block]:
    """Return the red frame, if anything here must not meet."""
    return [Never(content.never, type_, width, content.language)] if content.never else []
