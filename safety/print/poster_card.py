"""The card of one product on A4: six parts, each under its bar; read at 1 m."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from reportlab.lib.colors import Color

from safety.print.blocks import GUTTER, Block, Text, Type
from safety.print.fonts import BOLD, line_mm, width_mm
from safety.print.pen import GREEN, INK, WHITE, Pen
from safety.print.poster_pages import print_sheets
from safety.print.poster_place import sign_rows
from safety.print.poster_products import ProductRow
from safety.print.poster_sheets import Frame, Purpose
from safety.print.values import CardContent, CardSection

GAP = 0.8
DANGERS, PROTECTION, AID = 1, 2, 4  # where diamonds, signs and the green bar belong


@dataclass(frozen=True)
class Part:
    """One part of a card: its title white on a bar, what belongs to it close below; overleaf the title again.

    runs_on: it goes on overleaf rather than leave the rest of a sheet empty.
    """

    title: str
    blocks: tuple[Block, ...]
    colour: Color
    type: Type
    width: float
    runs_on: bool = True

    def bar(self) -> float:
        """Return the height of the bar."""
        return line_mm(self.type.heading) + 1

    def height(self) -> float:
        """Return the height."""
        return self.bar() + sum(block.height() + GAP for block in self.blocks)

    def draw(self, pen: Pen, x: float, top: float) -> None:
        """Draw it."""
        pen.fill(x, top, self.width, self.bar(), self.colour)
        pen.text(x + 2, top + 0.5, self.title, self.type.heading, bold=True, ink=WHITE)
        y = top + self.bar()
        for block in self.blocks:
            block.draw(pen, x, y + GAP)
            y += block.height() + GAP

    def split(self, room: float) -> tuple[Block, Block] | None:
        """Return the blocks that fit, and the rest."""
        for count in range(len(self.blocks) - 1, 0, -1):
            first = replace(self, blocks=self.blocks[:count])
            if first.height() <= room:
                return first, replace(self, blocks=self.blocks[count:])
        return None


def print_card(content: CardContent, paper: str = "A4") -> tuple[bytes, dict[str, object]]:
    """Return the PDF of a card and what is on it. Raises UnknownPaper, PaperTooSmall."""
    printed = print_sheets(content.masthead, lambda frame: purposes(content, frame), paper)
    said = {
        "card": content.masthead.name,
        "about": content.about,
        **content.product.said(),
        "sections": [
            {"title": one.title, "says": [line.text for line in one.lines]} for one in content.sections
        ],
    }
    return printed.pdf, said | printed.said(content.masthead)


def purposes(content: CardContent, frame: Frame) -> list[Purpose]:
    """Return the one purpose of a card."""
    blocks: list[Block] = []
    for place, section in enumerate(content.sections):
        colour = GREEN if place == AID else INK
        inner = tuple(inside(content, section, place, frame))
        blocks.append(Part(section.title, inner, colour, frame.type, frame.inner))
    return [Purpose("", (content.about,), blocks)]


def inside(content: CardContent, section: CardSection, place: int, frame: Frame) -> Iterator[Block]:
    """Yield what stands under a part's bar."""
    if place == DANGERS:
        yield elements(content, frame)
    if place == PROTECTION:
        yield from sign_rows(content.equipment, frame.type, frame.inner)
    for line in section.lines:
        yield Text(line.text, frame.type.near, frame.inner, line.strong)


def elements(content: CardContent, frame: Frame) -> ProductRow:
    """Return diamonds and word beside the full texts."""
    type_, one = frame.type, content.product
    word = one.signal_word or ""
    wide = max(len(one.pictograms) * type_.near_symbol, width_mm(word, BOLD, type_.far) if word else 0.0)
    left = wide + GUTTER if wide else 0.0
    column = frame.inner - left
    notice = [Text(one.notice, type_.near, column, bold=True)] if one.notice else []
    return ProductRow(
        name=Text("", type_.near, frame.inner),
        pictograms=one.pictograms,
        word=(Text(word, type_.far, wide + 1, bold=True),) if word else (),
        texts=(*notice, *(Text(text, type_.near, column) for text in one.statements)),
        left=left,
        box=type_.near_symbol,
        width=frame.inner,
    )
