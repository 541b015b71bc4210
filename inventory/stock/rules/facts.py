"""Reads the facts of a ledger line: JSON that carries codes, integers and ISO instants."""

from datetime import date, datetime
from typing import cast

from .lines import NEAT, Line, Parts, Refused


def integer(line: Line, name: str) -> int:
    """Return a whole number of base units, 0 or more; refuse the line without it."""
    value = line.facts.get(name)
    if not isinstance(value, int) or value < 0:
        raise Refused(f"A {line.kind} line says how much: `{name}`, 0 or more.", code="facts", seq=line.seq)
    return value


def text(facts: dict[str, object], name: str) -> str | None:
    """Return a fact as text, None where it is not given."""
    value = facts.get(name)
    return None if value is None else str(value)


def texts(facts: dict[str, object], name: str) -> list[str]:
    """Return a fact that is a list of texts."""
    return [str(value) for value in cast("list[object]", facts.get(name, []))]


def parts_of(facts: dict[str, object]) -> Parts:
    """Return the parts of product and of water; neat where none are given."""
    product, water = cast("list[int]", facts.get("parts", list(NEAT)))
    return product, water


def instant(facts: dict[str, object], name: str) -> datetime | None:
    """Return a fact that is an aware instant, None where it is not given."""
    value = facts.get(name)
    return None if value is None else datetime.fromisoformat(str(value))


def day(facts: dict[str, object], name: str) -> date | None:
    """Return a fact that is a day, None where it is not given."""
    value = facts.get(name)
    return None if value is None else date.fromisoformat(str(value))


def earliest(*instants: datetime | None) -> datetime | None:
    """Return the first of the instants that are known."""
    return min((instant for instant in instants if instant), default=None)
