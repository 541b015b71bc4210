"""The transport table: a second flag for what stands together, never the first.

Trap: it leaves acid beside acid and flammable beside corrosive blank, so alone it lets bleach stand beside
acid. Source: 49 CFR 177.848(d) and (e)(3); which class a product falls under is ours, from memory.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from safety.hazards.classes import Hazard, UnknownHazard, read_hazard
from safety.hazards.tables import rows
from safety.reactions.values import Substance

CORROSIVE_LIQUID = "8-liq"
BELOW_IT = ("4.1", "4.2", "4.3", "5.1", "5.2")
SOURCE = "49 CFR 177.848(d) (read in a copy; classes of the products from memory: check them)"
SOURCE_LIQUID = "49 CFR 177.848(e)(3) (read; classes of the products from memory: check them)"
# Our choice: what may not travel together asks on a shelf, what must be kept from leaking together is told.
GRADES = {"X": "ask", "O": "tell", "*": "tell"}
MEANING = {
    "X": "may not travel in one vehicle",
    "O": "may travel together only where leaks cannot meet",
    "*": "fall under the rules of their own for explosives",
}


@dataclass(frozen=True)
class Flag:
    """What transport says of two substances."""

    grade: str
    says: str
    source: str


@cache
def table() -> dict[tuple[str, str], str]:
    """Return the cells by row and column, "" where nothing restricts transport."""
    return {
        (row["row"], column): cell
        for row in rows("segregation")
        for column, cell in row.items()
        if column != "row"
    }


def transport_classes(of: Substance) -> frozenset[str]:
    """Return the columns that hazard classes fall under; a class that cannot be read has none."""
    return frozenset(found for text in of.hazards for found in _classes(text, of.liquid))


def _classes(text: str, liquid: bool) -> Iterator[str]:
    try:
        hazard = read_hazard(text)
    except UnknownHazard:  # the sheet's own page says so
        return
    for row in rows("transport_classes"):
        if _matches(row, hazard) and (liquid or row["transport"] != CORROSIVE_LIQUID):
            yield row["transport"]


def _matches(row: dict[str, str], hazard: Hazard) -> bool:
    named = row["class"] == hazard.of.name and row["category"] in ("", hazard.of.category)
    return named and (not row["code"] or row["code"] in hazard.codes)


def transport(a: Substance, b: Substance) -> Flag | None:
    """Return the strictest that transport says of two substances, None where it restricts nothing."""
    met = {(x, y) for x in transport_classes(a) for y in transport_classes(b)}
    met |= {(y, x) for x, y in met}
    for x, y in sorted(met):
        if x == CORROSIVE_LIQUID and y in BELOW_IT and table()[x, y] != "X":
            says = f"A corrosive liquid stands neither above nor beside class {y}."
            return Flag("ask", says, SOURCE_LIQUID)
    for cell, grade in GRADES.items():
        for x, y in sorted(met):
            if table()[x, y] == cell:
                return Flag(grade, f"Classes {x} and {y} {MEANING[cell]}.", SOURCE)
    return None
