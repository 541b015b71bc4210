"""Numbers in words for the report: amounts with their unit, days."""

from datetime import date

from inventory.reorder.rules.facts import ProductFacts
from inventory.reorder.rules.packs import Choice
from inventory.units import Dimension, show

# Base units in one unit of a spreadsheet column, and that unit's sign.
COLUMN_UNITS: dict[Dimension, tuple[int, str]] = {
    Dimension.VOLUME: (1000, "ml"),
    Dimension.MASS: (1000, "g"),
    Dimension.PIECES: (1, "pieces"),
    Dimension.LENGTH: (1_000_000, "m"),
}


def amount(base: float, product: ProductFacts) -> str:
    """Return an expected amount in the shop's units, three figures of it: 1234567 µl is "1.23 l"."""
    rounded = round(base, 3 - len(str(int(abs(base))))) if abs(base) >= 1000 else base
    if product.dimension == Dimension.LENGTH:
        return f"{rounded / COLUMN_UNITS[Dimension.LENGTH][0]:.2f}".rstrip("0").rstrip(".") + " m"
    return show(max(0, round(rounded)), product.dimension, product.system)


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


def short_day(on: date) -> str:
    """Return "9 Dec"."""
    return f"{on.day} {on:%b}"


def packs(choice: Choice, product: ProductFacts) -> str:
    """Return "2 × 5 l can", or "5 × bag of 5" for pieces."""
    pack = choice.pack
    if product.dimension == Dimension.PIECES:
        return f"{choice.packs} × {pack.noun} of {pack.amount}"
    return f"{choice.packs} × {amount(pack.amount, product)} {pack.noun}"
