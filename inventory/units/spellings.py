"""The closed list of unit spellings, and what each converts to.

Factors come from pint, in Decimal. Pint is handed the names of this table only, never a user's text:
its own parser reads "0,5 L" as 0 and "16 fl oz" as a femtolitre-ounce. It is imported where it is used,
since its registry takes about a second to build.
"""

from dataclasses import dataclass
from decimal import Decimal, localcontext
from fractions import Fraction
from functools import cache
from typing import TYPE_CHECKING

from inventory.units.amounts import AmountError, Dimension

if TYPE_CHECKING:
    import pint

NAMED_SYSTEMS = ("us", "imperial")
SYSTEMS = (*NAMED_SYSTEMS, "metric")
IN_BRACKETS = {"us": "US", "imperial": "imperial"}
READ_UNITS = "µl, ml, cc, cl, dl, l, fl oz, pt, qt, gal, mg, g, kg, oz, lb, pieces, µm or mil"


@dataclass(frozen=True)
class Unit:
    """A unit as it is written back (`name`) and pint's name for it, one a system where systems differ."""

    name: str
    dimension: Dimension
    pint_name: str = ""
    us: str = ""
    imperial: str = ""

    @property
    def by_system(self) -> bool:
        """Whether US and imperial measure differ."""
        return bool(self.us)

    @property
    def metric(self) -> bool:
        """Whether the unit needs no second reading in words."""
        return self.name not in {"fl oz", "pt", "qt", "gal", "oz", "lb", "mil"}


VOLUME, MASS, LENGTH = Dimension.VOLUME, Dimension.MASS, Dimension.LENGTH
LITRE = Unit("l", VOLUME, "liter")
FLUID_OUNCE = Unit("fl oz", VOLUME, us="fluid_ounce", imperial="imperial_fluid_ounce")
GALLON = Unit("gal", VOLUME, us="gallon", imperial="imperial_gallon")
OUNCE = Unit("oz", MASS, "ounce")
POUND = Unit("lb", MASS, "pound")
PIECE = Unit("pieces", Dimension.PIECES)

_SPELT: tuple[tuple[str, Unit], ...] = (
    ("µl|ul", Unit("µl", VOLUME, "microliter")),
    ("ml|cc", Unit("ml", VOLUME, "milliliter")),
    ("cl", Unit("cl", VOLUME, "centiliter")),
    ("dl", Unit("dl", VOLUME, "deciliter")),
    ("l|ltr|litre|litres|liter|liters", LITRE),
    ("fl oz|fl. oz.|fl. oz|fl oz.|floz", FLUID_OUNCE),
    ("pt", Unit("pt", VOLUME, us="pint", imperial="imperial_pint")),
    ("qt", Unit("qt", VOLUME, us="quart", imperial="imperial_quart")),
    ("gal", GALLON),
    ("mg", Unit("mg", MASS, "milligram")),
    ("g", Unit("g", MASS, "gram")),
    ("kg", Unit("kg", MASS, "kilogram")),
    ("oz", OUNCE),
    ("lb|lbs", POUND),
    ("pc|pcs|piece|pieces", PIECE),
    ("µm|um", Unit("µm", LENGTH, "micrometer")),
    ("mil", Unit("mil", LENGTH, "thou")),
)
SPELLINGS = {spelling: unit for spellings, unit in _SPELT for spelling in spellings.split("|")}
_PINT_BASE = {VOLUME: "microliter", MASS: "milligram", LENGTH: "micrometer"}


def check_system(system: str | None) -> None:
    """Refuse the name of a system of measures that is not known."""
    if system is not None and system not in SYSTEMS:
        raise AmountError(f"“{system}” is no system of measures: name us, imperial or metric.")


def factor(unit: Unit, system: str | None = None) -> Fraction:
    """How many base units one of `unit` is, exactly; `system` is us or imperial where the two differ."""
    if unit.dimension is Dimension.PIECES:
        return Fraction(1)
    name = (unit.us if system == "us" else unit.imperial) if unit.by_system else unit.pint_name
    return _converted(name, _PINT_BASE[unit.dimension])


@cache
def _registry() -> "pint.UnitRegistry[Decimal]":
    import pint

    return pint.UnitRegistry(non_int_type=Decimal)


@cache
def _converted(name: str, base: str) -> Fraction:
    with localcontext(prec=60):
        one = _registry().Quantity(Decimal(1), name).to(base).magnitude
        # Cubing an inch leaves noise in the 60th digit; no factor here has more than 12 decimals.
        return Fraction(round(one, 12))
