"""Reactivity groups: the chart's numbers and tags of our own, and which groups a tag brings with it."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache, lru_cache

from safety.hazards.classes import Hazard, UnknownHazard, plain, read_hazard
from safety.hazards.tables import rows
from safety.reactions.values import Substance

WATER = "106"


class UnknownGroup(ValueError):
    """A group that the table lacks; the sentence says which are there."""


@dataclass(frozen=True)
class Group:
    """One group, and the groups that whatever carries it belongs to as well."""

    name: str
    implies: tuple[str, ...]
    mark: str


@cache
def groups() -> dict[str, Group]:
    """Return the table, by number or tag."""
    return {
        row["group"]: Group(row["name"], tuple(row["implies"].split()), row["mark"])
        for row in rows("reactivity_groups")
    }


def read_group(text: str) -> str:
    """Return a group as the table writes it; raise UnknownGroup."""
    found = text.strip().lower()
    if found not in groups():
        tags = ", ".join(each for each in groups() if not each.isdigit())
        expected = f"a number from 1 to 34 or 101 to 107, or one of {tags}"
        raise UnknownGroup(f"“{text}”: {expected} was expected.")
    return found


def meant(given: Iterable[str]) -> frozenset[str]:
    """Return groups with those that their tags imply; raise UnknownGroup."""
    read = {read_group(each) for each in given}
    return frozenset(read.union(*(groups()[each].implies for each in read)))


@lru_cache(maxsize=2048)  # a full bay asks for each product once a pair
def traits(of: Substance) -> frozenset[str]:
    """Return all that rules look at: groups, what these imply, the label's statements, water."""
    water = {WATER} if of.water_based else set()
    return meant(of.groups) | labels(of) | water


def labels(of: Substance) -> frozenset[str]:
    """Return the statements of a label and of its classes: either may have been typed alone."""
    carried = {plain(code) for text in of.hazards if (read := _read(text)) for code in read.codes}
    return of.statements | carried


def _read(text: str) -> Hazard | None:
    try:
        return read_hazard(text)
    except UnknownHazard:  # the sheet's own page says so
        return None


def chart_groups(of: Substance) -> list[str]:
    """Return the groups of a substance, by number and then by tag."""
    found = traits(of) & set(groups())
    return sorted(found, key=lambda each: (not each.isdigit(), int(each) if each.isdigit() else 0, each))
