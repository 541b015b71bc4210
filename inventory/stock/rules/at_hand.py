"""Which step of a job is at hand: the one whose time is now, else the first that nobody signed."""

from collections.abc import Sequence
from datetime import datetime
from typing import Protocol, TypeVar


class Timed(Protocol):
    """A step, wherever it is read."""

    @property
    def starts_at(self) -> datetime: ...
    @property
    def ends_at(self) -> datetime | None: ...


Each = TypeVar("Each", bound=Timed)


def at_hand(unsigned: Sequence[Each], at: datetime | None) -> Each | None:
    """Return the step at hand of those that nobody signed, in their order; without an instant the first."""
    now = (each for each in unsigned if at and each.ends_at and each.starts_at <= at < each.ends_at)
    return next(now, unsigned[0] if unsigned else None)
