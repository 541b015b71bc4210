"""What a car is made of: every surface the trade tells apart, and the area in which work reaches it."""

import re
from dataclasses import dataclass
from functools import cache

from .reading import listed, rows

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


# Every car has these.
UNASKED = frozenset({"clear_coat", "painted_plastic", "glass", "lamp", "textile", "rubber"})
# These wait from the day they were made.
FROM_A_DAY = frozenset({"fresh_refinish", "film"})
REST = "Wheels, brakes and bare metal"
GROUPS = {
    "paint": "Paint", "film": "Wrap and film", "plastic": "Trim", "trim": "Trim",
    "top": "Soft top and seats", "interior": "Soft top and seats",
}  # fmt: skip
# When it counts on a car that lists none of it: every car has it, a step ticks its area, some cars have it.
ALWAYS, TICKED, MAYBE, TICKED_MAYBE = "always", "ticked", "maybe", "ticked maybe"


@dataclass(frozen=True)
class Material:
    """A surface by its key: what it is called, the areas in which work reaches it, what to know of it.

    `area` is its own, `also` a further one. `stands` says when it counts on a car that lists none of the
    area; `words` are how people write it.
    """

    key: str
    name: str
    area: str
    note: str
    mark: str
    also: str
    stands: str
    words: tuple[str, ...]

    @property
    def areas(self) -> frozenset[str]:
        """Every area in which work reaches it."""
        return frozenset({self.area, self.also} - {""})


@cache
def materials() -> dict[str, Material]:
    """Return every surface of the table by its key, in the table's order."""
    return {row["key"]: Material(**{**row, "words": listed(row["words"])}) for row in rows("surfaces")}  # type: ignore[arg-type]


def area(key: str) -> str:
    """Return the area of a surface; raise KeyError for one that is not in the table."""
    return materials()[key].area


def named(text: str) -> str | None:
    """Return the surface that somebody wrote of, None where the words name none.

    A single word counts alone ("leather"), several within a longer text ("matte wrap on the roof"); the
    longest that is found wins.
    """
    said = " ".join(re.findall(r"[\w-]+", text.lower()))
    known = ((word, one.key) for one in materials().values() for word in (one.key, one.name, *one.words))
    found = [(word, key) for word, key in known if said == word or (" " in word and _within(word, said))]
    return max(found, key=lambda one: len(one[0]), default=("", None))[1]


def _within(phrase: str, text: str) -> bool:
    return f" {phrase} " in f" {text} "


def on_a_whole_car() -> tuple[tuple[str, tuple[Material, ...]], ...]:
    """Return what may be said of a whole car, in a few groups; what every car has is not asked."""
    grouped: dict[str, list[Material]] = {}
    for one in materials().values():
        if one.key not in UNASKED:
            grouped.setdefault(GROUPS.get(one.area, REST), []).append(one)
    return tuple((name, tuple(found)) for name, found in grouped.items())
