"""What an amount is: an integer of the base unit of its dimension."""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

LARGEST = 2**63 - 1  # what a database column holds


class Dimension(StrEnum):
    """What is measured; a product is kept in exactly one."""

    VOLUME = "volume"
    MASS = "mass"
    PIECES = "pieces"
    LENGTH = "length"


BASE_UNIT = {
    Dimension.VOLUME: "µl",
    Dimension.MASS: "mg",
    Dimension.PIECES: "pieces",
    Dimension.LENGTH: "µm",
}


class AmountError(ValueError):
    """An amount that is refused; its text is a sentence that names the way out."""


@dataclass(frozen=True)
class Amount:
    """So many base units (µl, mg, pieces, µm) of a dimension."""

    base: int
    dimension: Dimension

    @property
    def unit(self) -> str:
        """The base unit that `base` counts."""
        return BASE_UNIT[self.dimension]


def whole(exact: Fraction, said: str) -> int:
    """Round half-even, once, to base units.

    Raises AmountError where something would become nothing, or does not fit a column.
    """
    base = round(exact)
    if exact and not base:
        raise AmountError(f"“{said}” is less than can be recorded: it rounds to 0. Check the unit.")
    if base > LARGEST:
        raise AmountError(f"“{said}” is more than can be recorded. Check the number and the unit.")
    return base
