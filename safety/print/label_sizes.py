"""Label stock, and the refusal of a label that cannot carry its content."""

from __future__ import annotations

from dataclasses import dataclass

SMALLEST_BOX = 14.2  # a diamond of 10 mm a side stands in a box of 14.1 mm
DATE = 3.5  # the least capitals of the date: read at 0.7 m by D/200


@dataclass(frozen=True)
class Size:
    """A label stock in millimetres; `full` labels carry the statements, the small form does not.

    date, says, word: capital heights of the date, of what stands before it, of the signal word.
    """

    name: str
    width: float
    height: float
    pad: float
    full: bool
    names: tuple[float, ...]
    boxes: tuple[float, ...]
    matrix: float
    date: float = DATE
    says: float = 1.65
    word: float = 2.1

    @property
    def inner(self) -> tuple[float, float]:
        """Return width and height inside the margin."""
        return self.width - 2 * self.pad, self.height - 2 * self.pad


STOCK = (
    Size("small", 50, 25, 1.5, False, (3.4, 3.0, 2.6), (SMALLEST_BOX,), 7.2),
    Size("medium", 70, 37, 2.3, True, (4.4, 4.0, 3.6), (SMALLEST_BOX,), 8.2),
    Size("tall", 74, 52, 2.6, True, (5.0, 4.4, 4.0, 3.6), (18.0, SMALLEST_BOX), 10.0),
    Size("large", 99, 57, 4.0, True, (6.0, 5.0, 4.2, 4.0), (22.7, 18.0, SMALLEST_BOX), 11.0, 4.0, 1.9, 2.8),
    Size("extra", 105, 148, 5.0, True, (9.0, 7.0, 5.5), (32.6, 26.0, 22.7, 18.0), 16.0, 5.0, 2.4, 4.0),
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
        here = f"“{name}” does not fit a {size.name} label ({size.width:g} × {size.height:g} mm)"
        larger = SIZES.get(self.next_size or "")
        way_out = (
            f"take {larger.name} ({larger.width:g} × {larger.height:g} mm)."
            if larger
            else "shorten its name or print its card."
        )
        super().__init__(f"{here} so that it can be read: {way_out}")


def size_called(name: str) -> Size:
    """Return a label size by name; raise UnknownSize."""
    if name not in SIZES:
        raise UnknownSize(f"“{name}” is not one of {', '.join(SIZES)}.")
    return SIZES[name]
