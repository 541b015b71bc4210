"""The poster's second sheet: first aid by route (green), fire and spill (red), numbers and what to say."""

from __future__ import annotations

from dataclasses import dataclass

from reportlab.lib.colors import Color

from safety.print.blocks import (
    GUTTER,
    Block,
    Heading,
    Text,
    Together,
    Type,
    divide,
    draw_stack,
    fits,
    stack_height,
)
from safety.print.fonts import line_mm
from safety.print.pen import GREEN, RED, WHITE, Pen
from safety.print.poster_place import Row, SymbolCell
from safety.print.values import FirstAid, PlaceFacts, PosterContent
from safety.print.words import ENGLISH, say

INSET = 4.0


@dataclass(frozen=True)
class Cell:
    """One route: its title on colour, a far-legible lead, the sentences."""

    title: str
    parts: tuple[Text, ...]


@dataclass(frozen=True)
class Cells:
    """Cells side by side in one frame; splits at a line, the titles said again overleaf."""

    cells: tuple[Cell, ...]
    type: Type
    width: float
    colour: Color

    def column(self) -> float:
        """Return the width of a cell."""
        return self.width / len(self.cells)

    def bar(self) -> float:
        """Return the height of the titles."""
        return max(self.title(cell).height() for cell in self.cells) + 3

    def title(self, cell: Cell) -> Text:
        """Return a title."""
        return Text(cell.title, self.type.far, self.column() - 2 * INSET, bold=True, ink=WHITE)

    def height(self) -> float:
        """Return the height."""
        return self.bar() + max(stack_height(cell.parts) for cell in self.cells) + 5

    def draw(self, pen: Pen, x: float, top: float) -> None:
        """Draw the cells in their frame."""
        pen.fill(x, top, self.width, self.bar(), self.colour)
        for place, cell in enumerate(self.cells):
            left = x + place * self.column()
            self.title(cell).draw(pen, left + INSET, top + 1.5)
            draw_stack(pen, left + INSET, top + self.bar() + 2, cell.parts)
            if place:
                pen.post(left, top + self.bar(), top + self.height(), self.colour)
        pen.frame(x, top, self.width, self.height(), self.colour, 1.2)

    def split(self, room: float) -> tuple[Block, Block] | None:
        """Return what fits and the rest; at least the lead and a line of each cell stay."""
        if room < self.bar() + 5 + line_mm(self.type.far) + line_mm(self.type.near):
            return None
        halves = [divide(cell.parts, room - self.bar() - 5) for cell in self.cells]
        if not all(first for first, _ in halves) or not any(rest for _, rest in halves):
            return None
        first = tuple(Cell(cell.title, tuple(half[0])) for cell, half in zip(self.cells, halves, strict=True))
        rest = tuple(
            Cell(f"{cell.title} (2)", tuple(half[1])) for cell, half in zip(self.cells, halves, strict=True)
        )
        again = tuple(cell for cell in rest if cell.parts)
        return (
            Cells(first, self.type, self.width, self.colour),
            Cells(widened(again, self.width), self.type, self.width, self.colour),
        )


def widened(cells: tuple[Cell, ...], width: float) -> tuple[Cell, ...]:
    """Return cells whose paragraphs take the width that they have now."""
    column = width / len(cells) - 2 * INSET
    return tuple(
        Cell(
            cell.title,
            tuple(Text(part.words, part.capital, column, part.bold, part.ink) for part in cell.parts),
        )
        for cell in cells
    )


def aid_blocks(aids: tuple[FirstAid, ...], colour: Color, type_: Type, width: float) -> list[Block]:
    """Return the routes two by two where their words fit half the width, else one by one."""
    half = width / 2 - 2 * INSET
    two = all(
        fits(words, type_.far, half, bold=True) for aid in aids for words in (f"{aid.title} (2)", aid.lead)
    )
    per = 2 if two else 1
    column = (width / per) - 2 * INSET
    cells = [Cell(aid.title, aid_parts(aid, type_, column)) for aid in aids]
    return [Cells(tuple(cells[at : at + per]), type_, width, colour) for at in range(0, len(cells), per)]


def aid_parts(aid: FirstAid, type_: Type, column: float) -> tuple[Text, ...]:
    """Return the lead and the sentences of a route."""
    return (
        Text(aid.lead, type_.far, column, bold=True),
        *(Text(line.text, type_.near, column, bold=line.strong) for line in aid.lines),
    )


@dataclass(frozen=True)
class Numbers:
    """Whom to call and what to say."""

    place: PlaceFacts
    type: Type
    width: float
    language: str = ENGLISH

    def columns(self) -> list[list[Text]]:
        """Return three columns of texts, or one where the number needs the width."""
        place, type_ = self.place, self.type
        where = ", ".join(part for part in (place.shop, place.address, place.name) if part)
        unknown = say("number not entered yet: ask the owner", self.language)
        number, poison = place.emergency_number or unknown, place.poison_centre or unknown
        wide = (self.width - 2 * GUTTER) / 3
        if not all(fits(part, type_.far, wide, bold=True) for part in (number, poison)):
            wide = self.width
        big = type_.far if place.emergency_number else type_.near
        middle = type_.heading if place.poison_centre else type_.near
        found = [
            [Text(say("Call", self.language), type_.heading, wide, True), Text(number, big, wide, True)],
            [
                Text(say("Poison centre", self.language), type_.heading, wide, True),
                Text(poison, middle, wide, True),
            ],
            [Text(say("Say", self.language), type_.heading, wide, True), Text(where, type_.near, wide)],
        ]
        return found if wide < self.width else [[part for column in found for part in column]]

    def height(self) -> float:
        """Return the height."""
        return max(stack_height(column) for column in self.columns())

    def draw(self, pen: Pen, x: float, top: float) -> None:
        """Draw it."""
        columns = self.columns()
        step = (self.width + GUTTER) / len(columns)
        for place, column in enumerate(columns):
            draw_stack(pen, x + place * step, top, column)

    def split(self, room: float) -> tuple[Block, Block] | None:
        """Hold together."""
        return None


def event_blocks(content: PosterContent, type_: Type, width: float) -> list[Block]:
    """Return the blocks of the second sheet."""
    language = content.language
    return [
        Heading(say("First aid", language), type_.heading, width),
        *aid_blocks(content.first_aid, GREEN, type_, width),
        *aid_blocks(content.mishaps, RED, type_, width),
        Together(
            (
                Numbers(content.place, type_, width, language),
                *where_rows(content.place, type_, width, language),
            )
        ),
    ]


def where_rows(place: PlaceFacts, type_: Type, width: float, language: str) -> list[Row]:
    """Return the rescue and fire signs with the places that the shop entered, four or two side by side."""
    unknown = say("place not entered yet: ask the owner", language)
    things = (
        ("eyewash", "Eyewash", place.eyewash),
        ("rescue", "First-aid kit", place.first_aid),
        ("extinguisher", "Extinguisher", place.extinguisher),
        ("", "Spill kit", place.spill_kit),
    )
    box, head = type_.near_symbol, type_.near * 1.15
    choices = []
    for per in (4, 2, 1):
        column = (width - (per - 1) * GUTTER) / per
        if per > 1 and not all(
            fits(say(name, language), head, column - box - 3, True) for _, name, _ in things
        ):
            continue
        cells = [
            SymbolCell(sign, say(name, language), head, (where or unknown,), type_.near, box, column)
            for sign, name, where in things
        ]
        rows = [Row(tuple(cells[at : at + per]), column + GUTTER) for at in range(0, 4, per)]
        choices.append(rows)
    return choices[0]
