"""Stock to come of one product on paper: the chart, and the same figures a week beside it."""

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, KeepTogether, Spacer, Table

from inventory.drawing import Drawing, Stroke
from inventory.reorder.charts import PENS, TEXT, Week, stock_chart, weeks
from inventory.reorder.pdf.page import INK, Cell, Command, heads, style, table, text
from inventory.reorder.rules import Line, ProductFacts, words
from safety.print.fonts import BOLD, REGULAR, printable

CHART_WIDTH = 104 * mm
GAP = 6 * mm
_BARE = [
    ("VALIGN", (0, 0), (-1, -1), "TOP"),
    *((f"{side}PADDING", (0, 0), (-1, -1), 0) for side in ("LEFT", "RIGHT", "TOP", "BOTTOM")),
]


def picture(line: Line, width: float, heading: str) -> Flowable:
    """Return chart and table, kept on one sheet; `heading` stands over the first of them."""
    over = [text(heading, style(12, BOLD, spaceAfter=1 * mm))] if heading else []
    name = text(line.product.name, style(9.5, BOLD, spaceBefore=1 * mm, spaceAfter=1 * mm))
    beside = [DrawnChart(stock_chart(line, CHART_WIDTH)), _week_table(line, width - CHART_WIDTH - GAP)]
    pair = Table([beside], colWidths=[CHART_WIDTH + GAP, None], hAlign="LEFT", style=_BARE)
    return KeepTogether([*over, name, pair, Spacer(0, 4 * mm)])


def _week_table(line: Line, width: float) -> Table:
    """Plain texts, not paragraphs: they never wrap."""
    head = heads("End of", "Without", "Short", "Expires", "With order")
    rows = [_week_row(week, line.product) for week in weeks(line)]
    return table([head, *rows], [width * 0.15, *[width * 0.2125] * 4], *_WEEK_STYLE, pad=0.5)


_WEEK_STYLE: list[Command] = [
    ("FONT", (0, 1), (-1, -1), REGULAR, 7.5, 9.4),
    ("TEXTCOLOR", (0, 1), (-1, -1), INK),
    ("ALIGN", (1, 1), (-1, -1), "RIGHT"),
]


def _week_row(week: Week, product: ProductFacts) -> list[Cell]:
    levels = [words.amount(level, product) for level in (week.level, week.level_with_order)]
    rare = [words.amount(base, product) if base else "" for base in (week.short, week.expires)]
    return [printable(says) for says in (words.short_day(week.on), levels[0], *rare, levels[1])]


class DrawnChart(Flowable):  # type: ignore[misc]
    """A chart on paper: the strokes and words of the picture, with y turned over."""

    def __init__(self, chart: Drawing) -> None:
        super().__init__()
        self.chart, self.width, self.height = chart, chart.width, chart.height

    def draw(self) -> None:
        """Draw with the ink of the report."""
        self.canv.setStrokeColor(INK)
        self.canv.setFillColor(INK)
        for stroke in self.chart.strokes:
            self._stroke(stroke)
        for words_ in self.chart.words:
            self.canv.setFont(BOLD if words_.strong else REGULAR, TEXT)
            write = self.canv.drawRightString if words_.anchor == "end" else self.canv.drawString
            write(words_.x, self.height - words_.y, printable(words_.text))

    def _stroke(self, stroke: Stroke) -> None:
        weight, dashes = PENS[stroke.kind]
        self.canv.setLineWidth(weight)
        self.canv.setDash(list(dashes))
        path = self.canv.beginPath()
        path.moveTo(stroke.points[0][0], self.height - stroke.points[0][1])
        for x, y in stroke.points[1:]:
            path.lineTo(x, self.height - y)
        self.canv.drawPath(path)
