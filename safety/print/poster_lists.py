"""Lists on A4: what stands in a cabinet, and a shop's hazardous chemicals; read at 1 m."""

from __future__ import annotations

from dataclasses import asdict, dataclass

from safety.print import pictograms
from safety.print.blocks import GUTTER, Block, Text, Type, Word, draw_stack, stack_height
from safety.print.fonts import BOLD, width_mm
from safety.print.pen import Pen
from safety.print.poster_never import Never
from safety.print.poster_pages import print_sheets
from safety.print.poster_sheets import Frame, Purpose
from safety.print.values import CabinetContent, ChemicalsContent, PosterProduct
from safety.print.words import say

SHARES = (0.32, 0.17, 0.26, 0.25)  # of the width: product, maker, sheet, places


@dataclass(frozen=True)
class Table:
    """Rows of texts in columns under a head that every sheet repeats."""

    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    type: Type
    width: float

    def cells(self, row: tuple[str, ...], bold: bool = False) -> list[Text]:
        """Return the texts of a row; the first column leads."""
        widths = [share * self.width - 3 for share in SHARES]
        texts = zip(row, widths, strict=True)
        return [Text(text, self.type.near, width, bold or not at) for at, (text, width) in enumerate(texts)]

    def tall(self, cells: list[Text]) -> float:
        """Return the height of a row."""
        return max(cell.height() for cell in cells) + 2.5

    def height(self) -> float:
        """Return the height with its head."""
        head = self.tall(self.cells(self.head, bold=True))
        return head + sum(self.tall(self.cells(row)) for row in self.rows)

    def draw(self, pen: Pen, x: float, top: float) -> None:
        """Draw the head over a thick line, each row over a thin one."""
        for at, row in enumerate((self.head, *self.rows)):
            cells, left = self.cells(row, bold=not at), x
            for cell, share in zip(cells, SHARES, strict=True):
                cell.draw(pen, left, top + 1)
                left += share * self.width
            top += self.tall(cells)
            pen.rule(x, top, x + self.width, line=0.3 if at else 0.7)

    def split(self, room: float) -> tuple[Block, Block] | None:
        """Return the rows that fit and the rest under the same head."""
        for count in range(len(self.rows) - 1, 0, -1):
            first = Table(self.head, self.rows[:count], self.type, self.width)
            if first.height() <= room:
                return first, Table(self.head, self.rows[count:], self.type, self.width)
        return None


@dataclass(frozen=True)
class Standing:
    """One product of a cabinet: its name, its diamonds and word at the right, a notice below."""

    product: PosterProduct
    type: Type
    width: float
    symbols: float
    word: float

    def texts(self) -> list[Text]:
        """Return name and notice."""
        room = self.width - self.symbols - self.word - GUTTER
        name = Text(self.product.name, self.type.far, room, bold=True)
        notice = self.product.notice
        return [name, Text(notice, self.type.near, room)] if notice else [name]

    def height(self) -> float:
        """Return the height."""
        box = self.type.near_symbol if self.product.pictograms else 0
        return max(box, stack_height(self.texts())) + 3

    def draw(self, pen: Pen, x: float, top: float) -> None:
        """Draw it over a line."""
        middle = top + (self.height() - 2) / 2
        draw_stack(pen, x, middle - stack_height(self.texts()) / 2, self.texts())
        left, box = x + self.width - self.symbols - self.word, self.type.near_symbol
        for place, code in enumerate(self.product.pictograms):
            pictograms.draw(pen, code, left + place * box, middle - box / 2, box)
        if self.product.signal_word:
            word = Text(self.product.signal_word, self.type.near, self.word, bold=True)
            word.draw(pen, x + self.width - self.word + 2, middle - word.height() / 2)
        pen.rule(x, top + self.height(), x + self.width)

    def split(self, room: float) -> tuple[Block, Block] | None:
        """Hold together."""
        return None


def print_cabinet(content: CabinetContent, paper: str = "A4") -> tuple[bytes, dict[str, object]]:
    """Return the PDF of what stands in a place and what is on it. Raises UnknownPaper, PaperTooSmall."""
    printed = print_sheets(content.masthead, lambda frame: cabinet(content, frame), paper)
    said = {
        "cabinet": content.masthead.name,
        "signal_word": content.signal_word,
        "never_together": [[pair.one, pair.other] for pair in content.never],
        "products": [one.said() for one in content.products],
        "notes": list(content.notes),
    }
    return printed.pdf, said | printed.said(content.masthead)


def cabinet(content: CabinetContent, frame: Frame) -> list[Purpose]:
    """Return the sheet of a cabinet."""
    language, type_, width = content.masthead.language, frame.type, frame.inner
    blocks: list[Block] = []
    if content.signal_word:
        blocks.append(Word(content.signal_word, content.about[0], type_, width))
    blocks += [Text(note, type_.heading, width, bold=True) for note in content.notes]
    if content.never:
        blocks.append(Never(content.never, type_, width, language))
    symbols = max((len(one.pictograms) for one in content.products), default=0) * type_.near_symbol
    words = [one.signal_word for one in content.products if one.signal_word]
    word = max((width_mm(one, BOLD, type_.near) for one in words), default=-4.0) + 4
    blocks += [Standing(one, type_, width, symbols, word) for one in content.products]
    under = content.about[1:] if content.signal_word else content.about
    if not blocks:  # a sheet says that it is empty: without a block it would not be printed at all
        blocks, under = [Text(content.about[0], type_.heading, width, bold=True)], content.about[1:]
    return [Purpose(say("what stands here", language), tuple(line for line in under if line), blocks)]


def print_chemicals(content: ChemicalsContent, paper: str = "A4") -> tuple[bytes, dict[str, object]]:
    """Return the PDF of a shop's list and what is on it. Raises UnknownPaper, PaperTooSmall."""
    printed = print_sheets(content.masthead, lambda frame: chemicals(content, frame), paper)
    said = {
        "shop": content.masthead.name,
        "chemicals": [asdict(row) for row in content.rows],
        "notes": list(content.notes),
    }
    return printed.pdf, said | printed.said(content.masthead)


def chemicals(content: ChemicalsContent, frame: Frame) -> list[Purpose]:
    """Return the sheet of a shop's list."""
    language, type_, width = content.masthead.language, frame.type, frame.inner
    head = tuple(say(word, language) for word in ("Product", "Maker", "Data sheet", "Places"))
    rows = tuple((row.name, row.maker, row.sheet, row.places) for row in content.rows)
    none = say("No hazardous chemical is on the list.", language)
    blocks: list[Block] = [Table(head, rows, type_, width) if rows else Text(none, type_.near, width)]
    blocks += [Text(note, type_.near, width) for note in content.notes]
    return [Purpose(say("hazardous chemicals", language), (content.about,), blocks)]
