"""A bottle's label: name first and largest, the date in a box, diamonds, word, statements, our code.

What does not fit at a size that can be read is refused with the next size: nothing runs over, nothing shrinks
below its floor, nothing is dropped. `label_ways` measures, this module chooses and draws.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache

from safety.print import pictograms, symbols
from safety.print.fonts import line_mm
from safety.print.label_sizes import SIZES, Choice, LabelTooSmall, Size, UnknownSize, size_called
from safety.print.label_ways import HOLE, LETTERS, Arrangement, ways
from safety.print.pen import INK, Pen
from safety.print.values import LabelContent

__all__ = [
    "SIZES",
    "Choice",
    "LabelTooSmall",
    "Size",
    "UnknownSize",
    "arranged",
    "choose",
    "draw",
    "said",
    "size_called",
    "smallest_for",
]

HOLE_ACROSS = 5.0


def smallest_for(content: LabelContent, first: str = "") -> Size:
    """Return the smallest size from `first` (else its own) on that carries it; raise LabelTooSmall."""
    return choose(content, first).size


def choose(
    content: LabelContent, first: str = "", printed: Callable[[Size], Size] = lambda size: size
) -> Choice:
    """Return the smallest size that carries the content, and why it is that one; raise LabelTooSmall.

    printed: a size as the paper lets it be printed (`label_sheets.on_paper`).
    """
    size = size_called(first or content.first)
    why = content.first_why if not first or first == content.first else ""
    says = f"{size}" + (f": {why}." if why else ".")
    while True:
        try:
            arranged(content, printed(size))
        except LabelTooSmall as short:
            if short.next_size is None:
                raise
            smaller, size = size, SIZES[short.next_size]
            asks = f"{why}; " if why else ""
            says = f"{size}: {asks}{smaller} does not carry it at a size that can be read."
        else:
            return Choice(size, says)


@lru_cache(maxsize=512)
def arranged(content: LabelContent, size: Size) -> Arrangement:
    """Return the best arrangement that fits; raise LabelTooSmall if none does."""
    for found in ways(content, size):
        return found
    raise LabelTooSmall(content.name, size)


def draw(pen: Pen, content: LabelContent, size: Size, x: float = 0, top: float = 0) -> Arrangement:
    """Draw one label with its corner at (x, top); raise LabelTooSmall before a stroke is made."""
    way = arranged(content, size)
    if content.hole:
        _hole(pen, x + size.pad + HOLE / 2 - 1, top + size.height / 2)
    x, top = x + size.pad + (HOLE if content.hole else 0), top + size.pad
    for run in way.runs:
        pen.text(x + run.x, top + run.top, run.text, run.capital, bold=run.bold)
    _date(pen, content, size, way, x, top)
    _code(pen, content, size, x + way.code.x, top + way.code.top)
    for code, block in zip(content.pictograms, way.diamonds, strict=True):
        pictograms.draw(pen, code, x + block.x, top + block.top, block.width)
    for box in way.fill_boxes:
        pen.frame(x + box.x, top + box.top, box.width, box.height, line=0.3)
    return way


def _date(pen: Pen, content: LabelContent, size: Size, way: Arrangement, x: float, top: float) -> None:
    if way.date is None:
        return
    x, top = x + way.date.x, top + way.date.top
    pen.frame(x, top, way.date.width, way.date.height, line=0.5)
    pen.text(x + 1.2, top + 0.1, content.use_by_says, size.says)
    pen.text(x + 1.2, top + line_mm(size.says) - 0.9, content.use_by, size.date, bold=True)


def _code(pen: Pen, content: LabelContent, size: Size, x: float, top: float) -> None:
    """Draw our code as a square symbol and as letters in two groups, the first bold."""
    side = size.matrix
    symbols.draw(pen, content.code, "matrix", x, top, side)
    middle = top + side / 2
    pen.text(x + side + 0.6, middle - line_mm(LETTERS), content.code[:4], LETTERS, bold=True)
    pen.text(x + side + 0.6, middle, content.code[4:], LETTERS)


def _hole(pen: Pen, x: float, middle: float) -> None:
    """Draw where a tag is punched."""
    pen.canvas.setStrokeColor(INK)
    pen.canvas.setLineWidth(0.5)
    pen.canvas.circle(pen.x(x), pen.y(middle), pen.x(HOLE_ACROSS / 2), stroke=1, fill=0)


def said(content: LabelContent, size: Size, way: Arrangement) -> dict[str, object]:
    """Return what stands on a label, for scripts."""
    return {
        "code": content.code,
        "name": content.name,
        "form": content.form,
        "regime": content.regime,
        "language": content.language,
        "use_by": content.use_by or None,
        "because": content.because or None,
        "pictograms": list(content.pictograms),
        "signal_word": content.signal_word,
        "statements": list(content.statements),
        "precautions": list(content.precautions),
        "facts": list(content.facts),
        "supplier": content.supplier or None,
        "advice": content.advice or None,
        "notice": content.notice or None,
        "fill_boxes": len(way.fill_boxes),
        "size": size.name,
        "width_mm": size.width,
        "height_mm": size.height,
        "small_text_mm": way.text_cap,
        "pictogram_side_mm": round(way.diamonds[0].width / 2**0.5, 1) if way.diamonds else None,
    }
