"""Amounts for the eye: at most four figures, at most two decimals, exact where that is short.

Two decimals, never three, so that what is shown can be typed back: "1.235 l" has two readings.
"""

from dataclasses import dataclass
from decimal import ROUND_HALF_EVEN, Decimal
from fractions import Fraction

from inventory.units.amounts import Dimension
from inventory.units.spellings import (
    FLUID_OUNCE,
    GALLON,
    NAMED_SYSTEMS,
    OUNCE,
    POUND,
    check_system,
    factor,
)


@dataclass(frozen=True)
class _Rung:
    name: str
    base: Fraction


_METRIC = {
    Dimension.VOLUME: (_Rung("l", Fraction(10**6)), _Rung("ml", Fraction(10**3)), _Rung("µl", Fraction(1))),
    Dimension.MASS: (_Rung("kg", Fraction(10**6)), _Rung("g", Fraction(10**3)), _Rung("mg", Fraction(1))),
    Dimension.LENGTH: (_Rung("µm", Fraction(1)),),
}


def show(base: int, dimension: Dimension | str, system: str | None = "metric") -> str:
    """Return `base` (µl, mg, pieces, µm) in the shop's units: "1.2 l", "850 g", "12 pieces", "16 fl oz"."""
    check_system(system)
    dimension = Dimension(dimension)
    if base < 0:
        return f"−{show(-base, dimension, system)}"  # a difference, as a count finds it
    if dimension is Dimension.PIECES:
        return f"{base} piece" if base == 1 else f"{base} pieces"
    ladder = _shop_ladder(dimension, system)
    # Less than one of the smallest shop unit says more in millilitres or grams than in hundredths.
    if ladder and base >= ladder[-1].base:
        return _on(ladder, base)
    return metric(base, dimension)


def metric(base: int, dimension: Dimension) -> str:
    """Return `base` in metric units (pieces: as counted)."""
    return show(base, dimension) if dimension is Dimension.PIECES else _on(_METRIC[dimension], base)


def _shop_ladder(dimension: Dimension, system: str | None) -> tuple[_Rung, ...]:
    if system not in NAMED_SYSTEMS:
        return ()
    units = {Dimension.VOLUME: (GALLON, FLUID_OUNCE), Dimension.MASS: (POUND, OUNCE)}.get(dimension, ())
    return tuple(_Rung(unit.name, factor(unit, system)) for unit in units)


def _on(ladder: tuple[_Rung, ...], base: int) -> str:
    if not base:
        return f"0 {ladder[-2 if len(ladder) > 1 else -1].name}"
    for rung in ladder:
        if (short := _short(base, rung)) is not None:
            return f"{short} {rung.name}"
    rung = next((rung for rung in ladder if base >= rung.base), ladder[-1])
    return f"{_figures(_rounded(base / rung.base))} {rung.name}"


def _short(base: int, rung: _Rung) -> str | None:
    """The figures of `base` on this rung if they are few and read back as `base`."""
    value = base / rung.base
    rounded = _rounded(value)
    exact = round(Fraction(rounded) * rung.base) == base
    few = len(_figures(rounded).replace(".", "").strip("0")) <= 4
    tenths = rounded == round(rounded, 1)
    enough = value >= 1 or (tenths and value >= Fraction(1, 2)) or rung.base == 1
    return _figures(rounded) if exact and few and enough else None


def _rounded(value: Fraction) -> Decimal:
    """Four figures, but never fewer than the whole part and never more than two decimals."""
    places = max(0, min(2, 4 - len(str(int(value)))))
    scaled = round(value * 10**places)
    return Decimal(scaled).scaleb(-places).quantize(Decimal(1).scaleb(-places), ROUND_HALF_EVEN)


def _figures(value: Decimal) -> str:
    text = f"{value:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text
