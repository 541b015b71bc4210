"""Heat: what a coating is rated for against how hot its surface gets, and Celsius against Fahrenheit."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

from safety.findings import Finding, gravest_first

from .naming import row, sentence
from .reading import in_words, rows

FREEZING_F, F_A_C = 32, 1.8  # exact by definition


@dataclass(frozen=True)
class HotSurface:
    """A surface that gets hot at work, from `low_c` to `high_c`; `mark` is in words."""

    key: str
    name: str
    low_c: int
    high_c: int
    note: str
    mark: str


@dataclass(frozen=True)
class Rated:
    """A product that is to go on a hot surface (a key of the table); `stands_c` None: nobody knows."""

    code: str
    name: str
    surface: str
    stands_c: int | None


@cache
def hot_surfaces() -> dict[str, HotSurface]:
    """Return the surfaces that get hot, by key."""
    return {
        one["key"]: HotSurface(
            one["key"], one["name"], int(one["low_c"]), int(one["high_c"]), one["note"], in_words(one["mark"])
        )
        for one in rows("working_temperatures")
    }


def heat_findings(products: Iterable[Rated]) -> tuple[Finding, ...]:
    """Return one finding a product: a stop, which protects the coating, below the surface; an ask if unknown.

    Raises KeyError for a surface that the table does not have.
    """
    by_product: dict[str, list[Rated]] = {}
    for one in products:
        by_product.setdefault(one.code, []).append(one)
    found = [_judged(uses) for uses in by_product.values()]
    return gravest_first(one for one in found if one is not None)


def _judged(uses: list[Rated]) -> Finding | None:
    product = uses[0]
    too_hot = [
        hot_surfaces()[one.surface]
        for one in uses
        if one.stands_c is None or hot_surfaces()[one.surface].high_c > one.stands_c
    ]
    if not too_hot:
        return None
    where = row([f"{one.name} up to {in_both(one.high_c)}" for one in too_hot])
    source = f"A table of working temperatures, {row(sorted({one.mark for one in too_hot}))}"
    if product.stands_c is None:
        grade, says = "ask", f"Nobody has said what heat {product.name} stands."
        do = f"Read its technical sheet, and type its rated temperature in: {_hottest(too_hot)} are wanted."
    else:
        grade, says = (
            "stop",
            f"{product.name} stands {in_both(product.stands_c)}, and its surface gets hotter.",
        )
        do = f"Take a coating that is rated for {_hottest(too_hot)} or more, or leave the surface out."
    because = f"{sentence(where)}, on the road."
    return Finding("heat.rating", grade, says, because, do, source, (product.code,))


def _hottest(surfaces: Iterable[HotSurface]) -> str:
    return in_both(max(one.high_c for one in surfaces))


def to_celsius(fahrenheit: float) -> float:
    """Return °F in °C."""
    return (fahrenheit - FREEZING_F) / F_A_C


def to_fahrenheit(celsius: float) -> float:
    """Return °C in °F."""
    return celsius * F_A_C + FREEZING_F


def in_both(celsius: int) -> str:
    """Return "300 °C (572 °F)"."""
    return f"{celsius} °C ({to_fahrenheit(celsius):.0f} °F)"
