"""Numbers in words for the report: amounts with their unit, money, days."""

from datetime import date

from inventory.reorder.rules.facts import Dimension

# Base units in one unit of a spreadsheet column, and that unit's sign.
COLUMN_UNITS: dict[Dimension, tuple[int, str]] = {
    "volume": (1000, "ml"),
    "mass": (1000, "g"),
    "pieces": (1, "pc"),
    "length": (1_000_000, "m"),
}
# From this many base units up, people say the larger unit.
LARGE_UNITS: dict[Dimension, tuple[int, str]] = {"volume": (1_000_000, "l"), "mass": (1_000_000, "kg")}


def amount(base: float, dimension: Dimension) -> str:
    """Return an amount of base units in words, three figures of it: 1500000 µl is "1.5 l"."""
    size, unit = COLUMN_UNITS[dimension]
    if dimension in LARGE_UNITS and round(abs(base) / size) >= 1000:
        size, unit = LARGE_UNITS[dimension]
    return f"{figures(base / size)} {unit}"


def figures(number: float) -> str:
    """Return a number to about three figures, without idle zeros: 1234.4 is "1234", 0.25 is "0.25"."""
    places = 0 if abs(number) >= 100 else 1 if abs(number) >= 10 else 2
    text = f"{number:.{places}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text == "-0" else text


def column_number(base: float, dimension: Dimension) -> float:
    """Return base units as the number of a spreadsheet cell, in the unit of COLUMN_UNITS."""
    return base / COLUMN_UNITS[dimension][0]


def day(on: date) -> str:
    """Return "9 December"."""
    return f"{on.day} {on:%B}"


def day_and_year(on: date) -> str:
    """Return "9 December 2026"."""
    return f"{day(on)} {on.year}"


def days(number: int) -> str:
    """Return "1 day" or "6 days"."""
    return "1 day" if number == 1 else f"{number} days"


def packs(number: int, noun: str, size: str) -> str:
    """Return "2 × 5 l bottle"."""
    return f"{number} × {size} {noun}"


def short_day(on: date) -> str:
    """Return "9 Dec"."""
    return f"{on.day} {on:%b}"
