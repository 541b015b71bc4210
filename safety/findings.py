"""A finding outside a job: what is so, why with the numbers, what to do, and whose word it is."""

from collections.abc import Iterable
from dataclasses import dataclass

GRADES = ("stop", "ask", "tell")
# How a mark is said beside the value that it belongs to.
MARKS = {"M": "from memory: check it", "S2": "read in a copy", "S": "read", "typed": "typed by the shop"}


@dataclass(frozen=True)
class Finding:
    """One cause, one finding; `about` names what it is about, by name."""

    code: str
    grade: str
    says: str
    because: str
    do: str
    source: str
    about: tuple[str, ...] = ()


def gravest_first(found: Iterable[Finding]) -> tuple[Finding, ...]:
    """Return findings by grade; within a grade as they were asked for."""
    return tuple(sorted(found, key=lambda one: GRADES.index(one.grade)))
