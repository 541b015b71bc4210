"""A card of many small codes on a sheet across: a band a quantity, a scanner's square under each value."""

from collections.abc import Sequence
from dataclasses import dataclass

from reportlab.lib.colors import HexColor

from safety.print import symbols
from safety.print.fonts import BOLD, REGULAR, line_mm, width_mm, wrapped
from safety.print.pen import SOFT, Pen, paper_size

MARGIN, HEAD, GAP = 9.0, 30.0, 2.5  # HEAD: the column that names a band
COLUMNS = 13
TITLE, TEXT = 6.0, 2.6
NAME, UNIT = 4.2, 3.0
VALUES = (3.6, 2.8, 2.2, 1.8)  # capital heights; the first that a cell is wide enough for
BLANK = ("", "")
BAND = HexColor("#e8e8e8")
ON_A4 = 210.0  # millimetres: letters grow with the paper


@dataclass(frozen=True)
class Band:
    """One quantity: its name, its unit, and (what it says, its code) of each value; BLANK is a free cell."""

    name: str
    unit: str
    cells: Sequence[tuple[str, str]]

    @property
    def rows(self) -> int:
        """How many rows it takes."""
        return -(-len(self.cells) // COLUMNS)


@dataclass(frozen=True)
class CodeCard:
    """What stands on the card: a title, how it is used, the bands, what is done where none of them fits."""

    title: str
    use: str
    bands: Sequence[Band]
    otherwise: str


def print_code_card(card: CodeCard, paper: str) -> bytes:
    """Return the card as a PDF of one page across. Raises UnknownPaper."""
    height, width = paper_size(paper)
    return _Sheet(Pen(width, height, card.title), card, height / ON_A4).drawn()


@dataclass
class _Sheet:
    pen: Pen
    card: CodeCard
    scale: float

    def drawn(self) -> bytes:
        """Draw the card from its top to its foot."""
        top = self._head()
        foot = self._wrapped(self.card.otherwise)
        end = self.pen.height - MARGIN - len(foot) * line_mm(TEXT * self.scale)
        self.pen.lines(MARGIN, end, foot, TEXT * self.scale)
        rows = sum(band.rows for band in self.card.bands)
        tall = (end - top - GAP * (len(self.card.bands) + 1)) / rows
        for number, band in enumerate(self.card.bands):
            self._band(band, top + GAP, tall, shaded=number % 2 == 1)
            top += GAP + band.rows * tall
        return self.pen.pdf()

    def _head(self) -> float:
        title = TITLE * self.scale
        self.pen.text(MARGIN, MARGIN, self.card.title, title, bold=True)
        under = MARGIN + line_mm(title)
        return self.pen.lines(MARGIN, under, self._wrapped(self.card.use), TEXT * self.scale)

    def _wrapped(self, words: str) -> Sequence[str]:
        return wrapped(words, REGULAR, TEXT * self.scale, self.pen.width - 2 * MARGIN)

    def _band(self, band: Band, top: float, tall: float, *, shaded: bool) -> None:
        pen, head = self.pen, HEAD * self.scale
        across = pen.width - 2 * MARGIN
        if shaded:
            pen.fill(MARGIN, top, across, band.rows * tall, BAND)
        pen.rule(MARGIN, top, MARGIN + across, line=0.5)
        pen.text(MARGIN + 1.5, top + 1.5, band.name, NAME * self.scale, bold=True)
        under = top + 1.5 + line_mm(NAME * self.scale)
        pen.text(MARGIN + 1.5, under, band.unit, UNIT * self.scale, ink=SOFT)
        wide = (across - head) / COLUMNS
        for count, (says, code) in enumerate(band.cells):
            row, column = divmod(count, COLUMNS)
            if (says, code) != BLANK:
                self._cell(says, code, MARGIN + head + column * wide, top + row * tall, wide, tall)

    def _cell(self, says: str, code: str, x: float, top: float, wide: float, tall: float) -> None:
        sizes = [each * self.scale for each in VALUES]
        capital = next((each for each in sizes if width_mm(says, BOLD, each) <= wide - 2), sizes[-1])
        room = line_mm(sizes[0])
        above = top + 1 + (room - line_mm(capital)) / 2
        self.pen.text(x + wide / 2, above, says, capital, bold=True, align="centre")
        # White all round keeps a scanner that is held at one square from reading the next.
        box = min(wide * 0.6, tall - room - 2.5)
        symbols.draw(self.pen, code, "matrix", x + (wide - box) / 2, top + 1 + room, box)
