"""Which placed order lines a receipt answers: the order in hand first, then the oldest."""

from collections.abc import Sequence
from typing import Protocol, TypeVar


class Awaiting(Protocol):
    """A line that awaits packs; lines come oldest order first."""

    @property
    def order(self) -> str: ...
    @property
    def outstanding(self) -> int: ...


Line = TypeVar("Line", bound=Awaiting)


def allocate(packs: int, lines: Sequence[Line], *, first: str = "") -> list[tuple[Line, int]]:
    """Return how many packs go on each line; what is more than was ordered goes on none."""
    given: list[tuple[Line, int]] = []
    for line in sorted(lines, key=lambda line: line.order != first):
        if n := min(packs, line.outstanding):
            given.append((line, n))
            packs -= n
    return given


def is_complete(packs: int, received: int, closed_short: bool) -> bool:
    """Say whether nothing more is awaited on a line; damaged and wrong ones are still owed."""
    return closed_short or received >= packs
