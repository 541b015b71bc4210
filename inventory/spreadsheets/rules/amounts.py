"""Amounts in two cells: a whole number and its unit, so that no decimal mark can be misread on the way."""

from decimal import Decimal
from functools import lru_cache

from inventory.spreadsheets.rules.table import Cell
from inventory.spreadsheets.rules.values import Wrong, text_of
from inventory.units import BASE_UNIT, AmountError, Dimension, parse_amount

# The unit that people read, and how many base units it has.
READABLE = {Dimension.VOLUME: ("ml", 1_000), Dimension.MASS: ("g", 1_000)}


def unit_for(dimension: str, *amounts: int) -> str:
    """Return ml or g where all the amounts (base units) are whole in it, else the base unit."""
    readable, size = READABLE.get(Dimension(dimension), (BASE_UNIT[Dimension(dimension)], 1))
    return readable if all(amount % size == 0 for amount in amounts) else BASE_UNIT[Dimension(dimension)]


def number_in(amount: int, dimension: str, unit: str) -> int:
    """Return an amount of base units in the unit that `unit_for` chose."""
    readable, size = READABLE.get(Dimension(dimension), ("", 1))
    return amount // size if unit == readable else amount


@lru_cache(maxsize=4096, typed=True)
def read_number_and_unit(cell: Cell, unit: Cell, dimension: str | None, system: str, mark: str) -> int:
    """Return base units of "500" with "ml" beside it, or of "500 ml" in one cell.

    A real number of a workbook has a decimal point and one reading; a text is read by the shop's mark. Raises
    Wrong with both readings where there are two.
    """
    said, beside = text_of(cell).strip(), text_of(unit).strip()
    bare = not any(letter.isalpha() for letter in said)
    decimal = "point" if isinstance(cell, int | Decimal) else mark or None
    try:
        return parse_amount(
            f"{said} {beside}" if bare else said, dimension=dimension, system=system, decimal=decimal
        ).base
    except AmountError as error:
        raise Wrong(str(error)) from None
