"""What a car is made of: every surface the trade tells apart, and the area in which work reaches it."""

from dataclasses import dataclass
from functools import cache

from .reading import rows

AREAS = (
    "paint",
    "film",
    "plastic",
    "glass",
    "lamps",
    "wheels",
    "brakes",
    "metal",
    "top",
    "interior",
    "trim",
    "tyres",
)


@dataclass(frozen=True)
class Material:
    """A surface by its key: what it is called, the area it belongs to, what to know of it, and the mark."""

    key: str
    name: str
    area: str
    note: str
    mark: str


@cache
def materials() -> dict[str, Material]:
    """Return every surface of the table by its key, in the table's order."""
    return {row["key"]: Material(**row) for row in rows("surfaces")}


def area(key: str) -> str:
    """Return the area of a surface; raise KeyError for one that is not in the table."""
    return materials()[key].area
