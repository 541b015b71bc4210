"""The cap of a bottle seen from above, as values: what the template draws and nothing else. Pure.

The drawing's square is 100 by 100 with its centre at (50, 50).
"""

from dataclasses import dataclass
from datetime import date
from math import cos, radians, sin
from typing import Literal, get_args

Style = Literal["open", "sealed", "out", "held", "none"]

# A date further off than this is written with its year: "30 JUN" would be read as the coming June.
NEAR_DAYS = 330
# The bar crosses the rim at half past one and half past seven and leaves the date alone (radius 29 of 50).
CUT_DEGREES = 45
CUT_INNER, CUT_OUTER = 31, 49


@dataclass(frozen=True)
class Line:
    """A text in the middle of the cap: its baseline and its size in units of the drawing."""

    text: str
    y: int
    size: int


@dataclass(frozen=True)
class Cap:
    """A cap ready to draw: `arc` is the ring in hundredths, `says` the same in words."""

    style: Style
    lines: tuple[Line, ...]
    arc: int
    cut: str
    says: str


def draw_cap(style: str, use_by: date | None, on: date, left: float = 0.0) -> Cap:
    """Return the cap of a container.

    `use_by` is the last usable local day (None: no date is known), `on` today,
    `left` the share of the open life that is left, 0 to 1 (values outside are taken as the nearer end).
    Raises ValueError for a style that has no form.
    """
    if style not in get_args(Style):
        raise ValueError(f"A cap is one of {', '.join(get_args(Style))}; “{style}” has no form.")
    known: Style = style  # type: ignore[assignment]
    return Cap(known, _lines(known, use_by, on), _arc(left), _cut(), _says(known, use_by))


def _lines(style: Style, use_by: date | None, on: date) -> tuple[Line, ...]:
    if style == "held":
        return (Line("HELD", 57, 20),)
    if use_by is None:
        return (Line("?", 63, 36),)
    if abs((use_by - on).days) <= NEAR_DAYS:
        return (Line(str(use_by.day), 51, 27), Line(f"{use_by:%b}".upper(), 69, 19))
    return (Line(f"{use_by:%b}".upper(), 48, 19), Line(str(use_by.year), 67, 21))


def _arc(left: float) -> int:
    """Return the ring in hundredths; what is left at all stays visible as 2."""
    share = min(max(left, 0.0), 1.0)
    return max(round(share * 100), 2) if share > 0 else 0


def _cut() -> str:
    """Return the path of the bar: two short pieces, on opposite sides of the rim."""
    across, up = sin(radians(CUT_DEGREES)), cos(radians(CUT_DEGREES))
    pieces = []
    for side in (1, -1):
        inner = f"{50 + side * CUT_INNER * across:.1f} {50 - side * CUT_INNER * up:.1f}"
        outer = f"{50 + side * CUT_OUTER * across:.1f} {50 - side * CUT_OUTER * up:.1f}"
        pieces.append(f"M{inner}L{outer}")
    return "".join(pieces)


def _says(style: Style, use_by: date | None) -> str:
    day = f"use by {use_by.day} {use_by:%B %Y}" if use_by else "no use-by date known"
    return {
        "open": f"Open, {day}",
        "sealed": f"Sealed, {day}",
        "out": f"Out of date, {day}",
        "held": f"Held, {day}",
        "none": day.capitalize(),
    }[style]
