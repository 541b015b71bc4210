"""Safety signs of our own drawing, under the public rules of shape and colour (Directive 92/58/EEC Annex II):
mandatory round and blue, prohibition round with red rim and bar, rescue and fire square.

Never mixed with GHS diamonds. Each is drawn in a unit square (0…1, y upwards) and scaled by the pen.
"""

from collections.abc import Callable

from reportlab.lib.colors import Color
from reportlab.pdfgen.canvas import Canvas

from safety.print.pen import BLUE, GREEN, INK, RED, WHITE, Pen


def draw(pen: Pen, sign: str, x: float, top: float, box: float) -> None:
    """Draw a sign in a square box of that many millimetres."""
    canvas = pen.canvas
    canvas.saveState()
    canvas.translate(pen.x(x), pen.y(top + box))
    canvas.scale(pen.x(box), pen.x(box))
    canvas.setLineCap(1)
    canvas.setLineJoin(1)
    SIGNS[sign](canvas)
    canvas.restoreState()


def disc(canvas: Canvas, colour: Color) -> None:
    """Fill the round ground."""
    canvas.setFillColor(colour)
    canvas.circle(0.5, 0.5, 0.5, stroke=0, fill=1)
    canvas.setFillColor(WHITE)
    canvas.setStrokeColor(WHITE)


def shape(canvas: Canvas, start: tuple[float, float], *curves: tuple[float, ...]) -> None:
    """Fill a closed path of lines (2 numbers) and curves (6 numbers)."""
    path = canvas.beginPath()
    path.moveTo(*start)
    for one in curves:
        (path.lineTo if len(one) == 2 else path.curveTo)(*one)
    path.close()
    canvas.drawPath(path, stroke=0, fill=1)


def eyes(canvas: Canvas) -> None:
    """An eye behind a lens."""
    disc(canvas, BLUE)
    shape(canvas, (0.14, 0.5), (0.3, 0.74, 0.7, 0.74, 0.86, 0.5), (0.7, 0.26, 0.3, 0.26, 0.14, 0.5))
    canvas.setFillColor(BLUE)
    canvas.circle(0.5, 0.5, 0.145, stroke=0, fill=1)
    canvas.setFillColor(WHITE)
    canvas.circle(0.5, 0.5, 0.06, stroke=0, fill=1)


def hands(canvas: Canvas) -> None:
    """A glove, fingers up, with its cuff."""
    disc(canvas, BLUE)
    canvas.setLineWidth(0.085)
    for x, tip in ((0.36, 0.7), (0.465, 0.78), (0.57, 0.76), (0.67, 0.66)):
        canvas.line(x, 0.48, x, tip)
    canvas.line(0.38, 0.4, 0.235, 0.53)
    shape(
        canvas,
        (0.32, 0.5),
        (0.713, 0.5),
        (0.713, 0.36),
        (0.7, 0.3, 0.67, 0.28, 0.65, 0.27),
        (0.39, 0.27),
        (0.34, 0.31),
    )
    canvas.roundRect(0.375, 0.15, 0.29, 0.085, 0.02, stroke=0, fill=1)


def breath(canvas: Canvas) -> None:
    """A head with a half mask and its filter."""
    disc(canvas, BLUE)
    shape(
        canvas,
        (0.5, 0.86),
        (0.68, 0.86, 0.75, 0.72, 0.73, 0.5),
        (0.71, 0.28, 0.6, 0.14, 0.5, 0.14),
        (0.4, 0.14, 0.29, 0.28, 0.27, 0.5),
        (0.25, 0.72, 0.32, 0.86, 0.5, 0.86),
    )
    canvas.setFillColor(BLUE)
    canvas.circle(0.405, 0.62, 0.035, stroke=0, fill=1)
    canvas.circle(0.595, 0.62, 0.035, stroke=0, fill=1)
    shape(
        canvas,
        (0.5, 0.53),
        (0.6, 0.5),
        (0.7, 0.42),
        (0.66, 0.28),
        (0.56, 0.2),
        (0.44, 0.2),
        (0.34, 0.28),
        (0.3, 0.42),
        (0.4, 0.5),
    )
    canvas.setFillColor(WHITE)
    canvas.circle(0.5, 0.35, 0.095, stroke=0, fill=1)
    canvas.setStrokeColor(BLUE)
    canvas.setLineWidth(0.02)
    for x in (0.46, 0.5, 0.54):
        canvas.line(x, 0.31, x, 0.39)


def body(canvas: Canvas) -> None:
    """An apron with its neck strap."""
    disc(canvas, BLUE)
    canvas.setLineWidth(0.045)
    canvas.arc(0.4, 0.66, 0.6, 0.9, 0, 180)
    shape(
        canvas,
        (0.375, 0.78),
        (0.625, 0.78),
        (0.64, 0.62, 0.68, 0.57, 0.74, 0.54),
        (0.74, 0.18),
        (0.26, 0.18),
        (0.26, 0.54),
        (0.32, 0.57, 0.36, 0.62, 0.375, 0.78),
    )
    canvas.setStrokeColor(BLUE)
    canvas.setLineWidth(0.025)
    canvas.rect(0.39, 0.28, 0.22, 0.15, stroke=1, fill=0)


def flame(canvas: Canvas) -> None:
    """A flame under the red bar: prohibition."""
    canvas.setFillColor(WHITE)
    canvas.circle(0.5, 0.5, 0.5, stroke=0, fill=1)
    canvas.setFillColor(INK)
    shape(
        canvas,
        (0.52, 0.82),
        (0.54, 0.68, 0.7, 0.6, 0.7, 0.4),
        (0.7, 0.26, 0.6, 0.18, 0.5, 0.18),
        (0.38, 0.18, 0.3, 0.27, 0.3, 0.4),
        (0.3, 0.5, 0.36, 0.55, 0.4, 0.62),
        (0.42, 0.57, 0.43, 0.54, 0.46, 0.53),
        (0.45, 0.64, 0.48, 0.74, 0.52, 0.82),
    )
    canvas.setFillColor(WHITE)
    shape(
        canvas,
        (0.51, 0.42),
        (0.53, 0.36, 0.58, 0.34, 0.57, 0.28),
        (0.56, 0.23, 0.46, 0.23, 0.44, 0.28),
        (0.43, 0.33, 0.49, 0.35, 0.51, 0.42),
    )
    canvas.setStrokeColor(RED)
    canvas.setLineWidth(0.1)
    canvas.setLineCap(0)
    canvas.circle(0.5, 0.5, 0.45, stroke=1, fill=0)
    canvas.line(0.182, 0.818, 0.818, 0.182)


def square(canvas: Canvas, colour: Color) -> None:
    """Fill the square ground."""
    canvas.setFillColor(colour)
    canvas.rect(0, 0, 1, 1, stroke=0, fill=1)
    canvas.setFillColor(WHITE)
    canvas.setStrokeColor(WHITE)


def rescue(canvas: Canvas) -> None:
    """A white cross on green: first aid."""
    square(canvas, GREEN)
    canvas.rect(0.4, 0.15, 0.2, 0.7, stroke=0, fill=1)
    canvas.rect(0.15, 0.4, 0.7, 0.2, stroke=0, fill=1)


def eyewash(canvas: Canvas) -> None:
    """An eye over the two jets that rinse it, white on green: rescue."""
    square(canvas, GREEN)
    shape(canvas, (0.16, 0.66), (0.32, 0.9, 0.68, 0.9, 0.84, 0.66), (0.68, 0.42, 0.32, 0.42, 0.16, 0.66))
    canvas.setFillColor(GREEN)
    canvas.circle(0.5, 0.66, 0.1, stroke=0, fill=1)
    canvas.setFillColor(WHITE)
    canvas.setLineWidth(0.04)
    for start, end in ((0.3, 0.41), (0.7, 0.59)):
        canvas.line(start, 0.2, start, 0.32)
        canvas.line(start, 0.32, end, 0.42)
    canvas.rect(0.2, 0.1, 0.6, 0.08, stroke=0, fill=1)


def extinguisher(canvas: Canvas) -> None:
    """An extinguisher on red: fire equipment."""
    square(canvas, RED)
    canvas.roundRect(0.36, 0.12, 0.28, 0.5, 0.06, stroke=0, fill=1)
    canvas.rect(0.45, 0.6, 0.1, 0.12, stroke=0, fill=1)
    canvas.setLineWidth(0.055)
    canvas.line(0.5, 0.74, 0.7, 0.82)
    canvas.line(0.5, 0.74, 0.72, 0.72)
    canvas.setLineWidth(0.045)
    canvas.line(0.48, 0.74, 0.28, 0.66)
    canvas.line(0.28, 0.66, 0.24, 0.42)


SIGNS: dict[str, Callable[[Canvas], None]] = {
    "eyes": eyes,
    "hands": hands,
    "breath": breath,
    "body": body,
    "flame": flame,
    "rescue": rescue,
    "eyewash": eyewash,
    "extinguisher": extinguisher,
}
