"""The GHS diamonds, drawn faithfully from the vector files of the package ghs-hazard-pictogram (MIT)."""

from functools import cache
from io import BytesIO
from pathlib import Path

import ghs_hazard_pictogram
from reportlab.graphics import renderPDF
from reportlab.graphics.shapes import Drawing
from svglib.svglib import svg2rlg

from safety.print.pen import Pen

FOLDER = Path(ghs_hazard_pictogram.__file__).parent / "pictograms"
NAMES = {
    "GHS01": "explosive",
    "GHS02": "flame",
    "GHS03": "flame over circle",
    "GHS04": "gas cylinder",
    "GHS05": "corrosion",
    "GHS06": "skull and crossbones",
    "GHS07": "exclamation mark",
    "GHS08": "health hazard",
    "GHS09": "environment",
}


class UnknownPictogram(ValueError):
    """A pictogram that is none of GHS01 to GHS09."""


@cache
def svg(code: str) -> str:
    """Return the vector file of one diamond; raise UnknownPictogram.

    Opened by file name: the package's own table points GHS01 at the flame. Colours are mended: the reader
    takes "White" for no colour and would leave GHS07 blank.
    """
    if code not in NAMES:
        raise UnknownPictogram(f"“{code}” is not one of GHS01 to GHS09.")
    source = (FOLDER / f"{code.lower()}.svg").read_text(encoding="utf-8")
    for name in ("White", "Red", "Black"):
        source = source.replace(f"fill:{name}", f"fill:{name.lower()}")
    return source


@cache
def drawing(code: str) -> Drawing:
    """Return one diamond as shapes."""
    shapes = svg2rlg(BytesIO(svg(code).encode()))
    if shapes is None:
        raise UnknownPictogram(f"The file of {code} cannot be read.")
    return shapes


def draw(pen: Pen, code: str, x: float, top: float, box: float) -> None:
    """Draw a diamond in a square box of that many millimetres (the diamond's side is box / 1.414)."""
    shapes = drawing(code)
    canvas = pen.canvas
    form = f"pictogram-{code}"
    if not canvas.hasForm(form):
        canvas.beginForm(form, 0, 0, shapes.width, shapes.height)
        renderPDF.draw(shapes, canvas, 0, 0)
        canvas.endForm()
    canvas.saveState()
    canvas.translate(pen.x(x), pen.y(top + box))
    canvas.scale(pen.x(box) / shapes.width, pen.x(box) / shapes.height)
    canvas.doForm(form)
    canvas.restoreState()
