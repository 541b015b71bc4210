"""A canvas measured in millimetres from the top left, with the few strokes that our paper needs."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from io import BytesIO

from reportlab.lib.colors import Color, HexColor
from reportlab.pdfgen.canvas import Canvas

from safety.print.fonts import BOLD, MM, REGULAR, line_mm, points, printable, register, width_mm

INK = HexColor("#000000")
WHITE = HexColor("#ffffff")
RED = HexColor("#9b2423")
BLUE = HexColor("#005387")
GREEN = HexColor("#237f52")
SOFT = HexColor("#3a3a3a")

PAPERS = {
    "A4": (210.0, 297.0),
    "A3": (297.0, 420.0),
    "Letter": (215.9, 279.4),
    "Tabloid": (279.4, 431.8),
}


class UnknownPaper(ValueError):
    """A paper that we do not print on."""


def paper_size(name: str) -> tuple[float, float]:
    """Return width and height in millimetres, upright; raise UnknownPaper."""
    for known, size in PAPERS.items():
        if known.lower() == name.strip().lower():
            return size
    raise UnknownPaper(f"“{name}” is not one of {', '.join(PAPERS)}.")


@dataclass
class Pen:
    """Draws; knows nothing of what it draws. All lengths in millimetres, y downwards from the top."""

    width: float
    height: float
    title: str
    buffer: BytesIO = field(default_factory=BytesIO)
    language: str = "en"

    def __post_init__(self) -> None:
        register()
        size = (self.width * MM, self.height * MM)
        self.canvas = Canvas(
            self.buffer, pagesize=size, invariant=True, lang=self.language, pageCompression=1
        )
        self.canvas.setTitle(self.title)

    def x(self, mm: float) -> float:
        """Return points from the left."""
        return mm * MM

    def y(self, mm: float) -> float:
        """Return points from the bottom for millimetres from the top."""
        return (self.height - mm) * MM

    def text(
        self,
        x: float,
        top: float,
        words: str,
        capital: float,
        *,
        bold: bool = False,
        ink: Color = INK,
        align: str = "left",
    ) -> None:
        """Write one line whose line box starts at top."""
        font = BOLD if bold else REGULAR
        words = printable(words)
        if align != "left":
            x -= width_mm(words, font, capital) / (2 if align == "centre" else 1)
        baseline = top + (line_mm(capital) + capital) / 2
        self.canvas.setFont(font, points(capital))
        self.canvas.setFillColor(ink)
        self.canvas.drawString(self.x(x), self.y(baseline), words)

    def lines(
        self,
        x: float,
        top: float,
        lines: Sequence[str],
        capital: float,
        *,
        bold: bool = False,
        ink: Color = INK,
    ) -> float:
        """Write lines under one another and return where the next would start."""
        for line in lines:
            self.text(x, top, line, capital, bold=bold, ink=ink)
            top += line_mm(capital)
        return top

    def fill(self, x: float, top: float, width: float, height: float, colour: Color) -> None:
        """Fill a rectangle."""
        self.canvas.setFillColor(colour)
        self.canvas.rect(self.x(x), self.y(top + height), self.x(width), self.x(height), stroke=0, fill=1)

    def frame(
        self, x: float, top: float, width: float, height: float, colour: Color = INK, line: float = 0.6
    ) -> None:
        """Stroke a rectangle whose outer edge is the one given."""
        self.canvas.setStrokeColor(colour)
        self.canvas.setLineWidth(line * MM)
        half = line / 2
        self.canvas.rect(
            self.x(x + half), self.y(top + height - half), self.x(width - line), self.x(height - line)
        )

    def rule(self, x: float, y: float, to: float, colour: Color = INK, line: float = 0.3) -> None:
        """Draw a horizontal line."""
        self.canvas.setStrokeColor(colour)
        self.canvas.setLineWidth(line * MM)
        self.canvas.line(self.x(x), self.y(y), self.x(to), self.y(y))

    def post(self, x: float, top: float, to: float, colour: Color = INK, line: float = 0.3) -> None:
        """Draw a vertical line."""
        self.canvas.setStrokeColor(colour)
        self.canvas.setLineWidth(line * MM)
        self.canvas.line(self.x(x), self.y(top), self.x(x), self.y(to))

    def next_page(self) -> None:
        """End this page."""
        self.canvas.showPage()

    def pdf(self) -> bytes:
        """Return the finished document."""
        self.canvas.save()
        return self.buffer.getvalue()
