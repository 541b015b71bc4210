"""Label sizes: the stock that we print on, what a package's capacity asks for, what was chosen and why."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from safety.hazards.tables import rows

DIAMOND = 2**0.5  # the box of a square that stands on its point, per side
DATE = 3.5  # the least capitals of the date: read at 0.7 m by D/200


@dataclass(frozen=True)
class Size:
    """A label stock in millimetres.

    names, date, says, word: capital heights of the name (first choice first), of the date, of what stands
    before it, of the signal word; sides: how long a diamond's side may be on it; matrix: our code's box.
    """

    name: str
    width: float
    height: float
    pad: float
    names: tuple[float, ...]
    sides: tuple[float, ...]
    matrix: float
    date: float = DATE
    says: float = 1.65
    word: float = 2.1

    @property
    def inner(self) -> tuple[float, float]:
        """Return width and height inside the margin."""
        return self.width - 2 * self.pad, self.height - 2 * self.pad

    def __str__(self) -> str:
        return f"{self.name} ({self.width:g} × {self.height:g} mm)"


STOCK = (
    Size("small", 50, 25, 1.5, (3.4, 3.0, 2.6), (10,), 7.2),
    Size("medium", 70, 37, 2.3, (4.4, 4.0, 3.6), (10,), 8.2),
    Size("tall", 74, 52, 2.6, (5.0, 4.4, 4.0, 3.6), (16, 12.5, 10), 10.0),
    Size("large", 99, 57, 4.0, (6.0, 5.0, 4.2, 4.0), (16, 12.5, 10), 11.0, 4.0, 1.9, 2.8),
    Size("wide", 105, 74, 4.2, (6.5, 5.5, 4.6, 4.0), (23, 16, 12.5, 10), 12.0, 4.2, 2.1, 3.2),
    Size("extra", 105, 148, 5.0, (6.9, 6.0, 5.0), (32, 23, 16, 12.5, 10), 16.0, 5.0, 2.4, 4.0),
    Size("drum", 148, 210, 6.0, (6.9, 6.0), (46, 32, 23, 16), 20.0, 6.0, 2.9, 5.0),
)
SIZES = {size.name: size for size in STOCK}


class UnknownSize(ValueError):
    """A label size that we do not know."""


class LabelTooSmall(ValueError):
    """The label cannot carry its content at a readable size; `next_size` can be tried, None at the end."""

    def __init__(self, name: str, size: Size) -> None:
        order = list(SIZES)
        place = order.index(size.name) + 1
        self.next_size = order[place] if place < len(order) else None
        self.here = (
            f"“{name}” does not fit a {size.name} label ({size.width:g} × {size.height:g} mm) "
            "so that it can be read"
        )
        larger = SIZES.get(self.next_size or "")
        super().__init__(
            self.instead(larger) if larger else f"{self.here}: shorten its name or print its card."
        )

    def instead(self, larger: Size) -> str:
        """Return the refusal with the size to take instead."""
        return f"{self.here}: take {larger}."


def size_called(name: str) -> Size:
    """Return a label size by name; raise UnknownSize."""
    if name not in SIZES:
        raise UnknownSize(f"“{name}” is not one of {', '.join(SIZES)}.")
    return SIZES[name]


@dataclass(frozen=True)
class Rule:
    """What a package of some capacity asks for, in millimetres; `up_to_ml` None is the row without an end."""

    up_to_ml: float | None
    width: float
    height: float
    side: float
    side_if_possible: float
    x_height: float
    mark: str
    x_mark: str

    @property
    def says(self) -> str:
        """Return the row in words, with its source and marks."""
        to = f"up to {_litres(self.up_to_ml)}" if self.up_to_ml else "of more than 500 l"
        return (
            f"CLP Table 1.3 [{self.mark}] asks for {self.width:g} × {self.height:g} mm and diamonds of "
            f"{self.side:g} mm a side for a package {to}"
        )


@cache
def rules() -> tuple[Rule, ...]:
    """Return the rows of the table, the smallest capacity first."""
    return tuple(
        Rule(
            float(row["up_to_ml"]) if row["up_to_ml"] else None,
            float(row["width_mm"]),
            float(row["height_mm"]),
            float(row["side_mm"]),
            float(row["side_if_possible_mm"]),
            float(row["x_height_mm"]),
            row["mark"],
            row["x_mark"],
        )
        for row in rows("label_sizes")
    )


def rule_for(capacity_ml: float) -> Rule:
    """Return the row for a package that holds so many ml; raise ValueError where it holds nothing."""
    if not capacity_ml > 0:
        raise ValueError(f"A package of {capacity_ml:g} ml holds nothing: more than 0 ml was expected.")
    return next(rule for rule in rules() if rule.up_to_ml is None or capacity_ml <= rule.up_to_ml)


def first_for(rule: Rule) -> Size:
    """Return the smallest stock that is as large as the rule asks, lying or standing."""
    long, short = max(rule.width, rule.height), min(rule.width, rule.height)
    enough = (
        size
        for size in STOCK
        if max(size.width, size.height) >= long and min(size.width, size.height) >= short
    )
    return next(enough)


@dataclass(frozen=True)
class Choice:
    """The size that was chosen, and why in one sentence."""

    size: Size
    says: str


def _litres(ml: float) -> str:
    return f"{ml / 1000:g} l"
