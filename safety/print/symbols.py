"""Codes that a scanner reads, drawn as vector squares with their quiet zone inside the box given."""

from functools import cache
from typing import Any, cast

import zxingcpp

from safety.print.pen import INK, WHITE, Pen

QUIET = {"matrix": 1, "qr": 4}  # modules of white, by the symbols' own standards


@cache
def modules(text: str, kind: str) -> tuple[tuple[bool, ...], ...]:
    """Return the symbol as rows of dark and light, without quiet zone. kind: "matrix" or "qr"."""
    if kind == "matrix":
        code = zxingcpp.create_barcode(text, zxingcpp.BarcodeFormat.DataMatrix)
    else:
        code = zxingcpp.create_barcode(text, zxingcpp.BarcodeFormat.QRCode, ec_level="M")
    # The picture speaks the buffer protocol, which its type stubs do not say.
    picture: Any = code.to_image(scale=1, add_quiet_zones=False)
    return tuple(tuple(value == 0 for value in row) for row in cast(Any, memoryview(picture).tolist()))


def draw(pen: Pen, text: str, kind: str, x: float, top: float, box: float) -> None:
    """Draw the symbol of a text in a square box, millimetres, white ground and quiet zone included."""
    rows = modules(text, kind)
    quiet = QUIET[kind]
    module = box / (len(rows) + 2 * quiet)
    pen.fill(x, top, box, box, WHITE)
    pen.canvas.setFillColor(INK)
    path = pen.canvas.beginPath()
    for down, row in enumerate(rows):
        for start, end in runs(row):
            left, bottom = x + (quiet + start) * module, top + (quiet + down + 1) * module
            path.rect(pen.x(left), pen.y(bottom), pen.x((end - start) * module), pen.x(module))
    pen.canvas.drawPath(path, stroke=0, fill=1)


def runs(row: tuple[bool, ...]) -> list[tuple[int, int]]:
    """Return the dark runs of a row as (start, end)."""
    found: list[tuple[int, int]] = []
    for place, dark in enumerate(row):
        if dark and found and found[-1][1] == place:
            found[-1] = (found[-1][0], place + 1)
        elif dark:
            found.append((place, place + 1))
    return found
