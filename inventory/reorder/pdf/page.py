"""What every sheet of the report shares: face, inks, tables, and the foot with "page x of y"."""

from collections.abc import Sequence
from typing import Any, TypeAlias

from reportlab.lib.colors import Color, HexColor
from reportlab.lib.styles import ParagraphStyle
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import Paragraph, Table

from inventory.reorder.rules import Report, words
from safety.print.fonts import BOLD, REGULAR, printable

INK, SOFT, THIN = HexColor("#16202b"), HexColor("#4b5966"), HexColor("#d8d2c4")
SIDE, TOP, FOOT = 14 * mm, 13 * mm, 22 * mm
CAUTION = "The product's own label and data sheet, local codes and licensed practice come first."

# A paragraph, or several one under another; the library of the page is untyped.
Cell: TypeAlias = Any
Command: TypeAlias = tuple[object, ...]


def style(size: float, font: str = REGULAR, colour: Color = INK, **more: float) -> ParagraphStyle:
    """Return a style of the report's one face, size in points."""
    return ParagraphStyle("", fontName=font, fontSize=size, leading=size * 1.25, textColor=colour, **more)


def text(says: str, how: ParagraphStyle) -> Paragraph:
    """Return a paragraph of plain text: nothing in it is markup, every letter is one the face has."""
    safe = printable(says).replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
    return Paragraph(safe, how)


def cell(says: str, font: str = REGULAR) -> Paragraph:
    """Return a text cell."""
    return text(says, style(8.5, font))


def figure(says: str, font: str = REGULAR, size: float = 8.5) -> Paragraph:
    """Return a cell whose text ends at the column's right edge."""
    return text(says, style(size, font, alignment=2))


def heads(*names: str) -> list[Cell]:
    """Return the heads of a table: the first column is text, the others are figures."""
    first = text(names[0], style(7.5, colour=SOFT))
    return [first, *(text(name, style(7.5, colour=SOFT, alignment=2)) for name in names[1:])]


def table(
    rows: Sequence[list[Cell]], widths: list[float], *more: Command, pad: float = 1.2, thin: bool = True
) -> Table:
    """Return rows, with thin lines between them unless told otherwise; `pad` is in millimetres.

    The heads come again where the table goes on.
    """
    lines: list[Command] = [
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("VALIGN", (0, 0), (-1, 0), "BOTTOM"),
        ("LINEBELOW", (0, 0), (-1, 0), 0.8, INK),
        ("LEFTPADDING", (0, 0), (0, -1), 0),
        ("LEFTPADDING", (1, 0), (-1, -1), 2 * mm),
        ("RIGHTPADDING", (0, 0), (-1, -1), 0),
        ("TOPPADDING", (0, 0), (-1, -1), pad * mm),
        ("BOTTOMPADDING", (0, 0), (-1, -1), pad * mm),
    ]
    if thin:
        lines.append(("LINEBELOW", (0, 1), (-1, -1), 0.4, THIN))
    return Table(rows, colWidths=widths, style=[*lines, *more], repeatRows=1, hAlign="LEFT")


def ruled(width: float) -> Table:
    """Return the heavy line under a heading."""
    return Table([[""]], colWidths=[width], rowHeights=[1], style=[("LINEABOVE", (0, 0), (-1, 0), 1.5, INK)])


class NumberedCanvas(Canvas):  # type: ignore[misc]
    """Keeps its pages until the last, so that each can say how many there are."""

    def __init__(self, *args: object, report: Report, **options: object) -> None:
        super().__init__(*args, **options)
        self._report = report
        self._kept: list[dict[str, object]] = []

    def showPage(self) -> None:
        """Keep the page instead of writing it."""
        self._kept.append(dict(self.__dict__))
        self._startPage()

    def save(self) -> None:
        """Write all pages, each with its foot."""
        for number, kept in enumerate(self._kept, 1):
            self.__dict__.update(kept)
            _foot(self, self._report, f"Page {number} of {len(self._kept)}")
            super().showPage()
        super().save()


def _foot(canvas: Canvas, report: Report, page: str) -> None:
    width = canvas._pagesize[0]
    canvas.setStrokeColor(INK)
    canvas.setLineWidth(1.5)
    canvas.line(SIDE, FOOT - 4 * mm, width - SIDE, FOOT - 4 * mm)
    canvas.setFillColor(SOFT)
    canvas.setFont(REGULAR, 7)
    made = f"{report.shop} · orders for {report.month:%B %Y} · made on {words.day_and_year(report.made_on)}"
    for row, says in enumerate((made, f"Ledger head {report.chain_head}", CAUTION)):
        canvas.drawString(SIDE, FOOT - (7.5 + 3.3 * row) * mm, printable(says))
    canvas.setFillColor(INK)
    canvas.setFont(BOLD, 8)
    canvas.drawRightString(width - SIDE, FOOT - 7.5 * mm, page)
