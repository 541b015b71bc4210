"""Which groups a product is proposed for, by what it holds, what its label says, and what it is for.

The owner confirms: a proposal is from memory, and what it does not find is not absent. An ingredient below
the amount from which its row counts is named in the reasons and left out.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from safety.hazards.tables import rows
from safety.reactions.groups import WATER

Ingredient = Mapping[str, Any]
WATER_CAS = "7732-18-5"
MUCH_WATER = 10.0
# What a product of these kinds is called after: one ingredient of it that no row knows may be just that.
CALLED_AFTER = {
    "acid": (frozenset({"1", "2", "3"}), "an acid cleaner is counted as mineral and organic acid."),
    "iron": (frozenset({"20"}), "an iron remover is counted as ammonium thioglycolate."),
}


@dataclass(frozen=True)
class Row:
    """One row of the table: what it goes by (cas, word, kind, statement), and from how many percent."""

    by: str
    value: str
    groups: frozenset[str]
    from_percent: float
    note: str


@dataclass(frozen=True)
class Proposal:
    """Groups for the owner to confirm, and a sentence for each reason."""

    groups: frozenset[str]
    because: tuple[str, ...]


@cache
def table() -> tuple[Row, ...]:
    """Return the table of words in its order."""
    return tuple(
        Row(
            row["by"],
            row["value"],
            frozenset(row["groups"].split()),
            float(row["from_percent"] or 0),
            row["note"],
        )
        for row in rows("reactivity_words")
    )


def propose(
    kind: str,
    composition: Iterable[Ingredient],
    statements: Iterable[str] = (),
    water_based: bool | None = None,
) -> Proposal:
    """Return the groups proposed for a product; `water_based` None lets water listed or its kind decide."""
    listed = list(composition)
    found = [*_by_composition(listed), *_by_statements(statements), *_by_water(kind, listed, water_based)]
    if not listed:
        found += _by_kind(kind)
    else:
        found += _by_its_name(kind, listed, found)
    groups = frozenset[str]().union(*(each for each, _ in found))
    return Proposal(groups, tuple(dict.fromkeys(says for _, says in found)))


Found = tuple[frozenset[str], str]
NONE: frozenset[str] = frozenset()


def _by_composition(listed: list[Ingredient]) -> Iterator[Found]:
    for one in listed:
        name, most = str(one.get("name", "")), upper(one.get("percent"))
        if str(one.get("cas") or "") == WATER_CAS:
            continue
        row = row_of(name, str(one.get("cas") or ""))
        if row is None:
            yield NONE, f"{name}: no row of the table knows it; say its groups yourself."
        elif most is not None and most < row.from_percent:
            yield NONE, f"{name}: {most:g} %, counted from {row.from_percent:g} %."
        else:
            yield row.groups, f"{name}: {' + '.join(sorted(row.groups, key=_by_number)) or 'none'}."


def upper(percent: object) -> float | None:
    """Return the upper end of a percentage, None where nobody gave one."""
    if isinstance(percent, list | tuple):
        percent = percent[-1] if percent else None
    return float(percent) if isinstance(percent, int | float) else None


def row_of(name: str, cas: str) -> Row | None:
    """Return the row of a CAS number, else one of all words in the name that no longer word there holds."""
    numbered = (row for row in table() if row.by == "cas" and cas and row.value == cas)
    return next(numbered, None) or _by_words(f" {name.lower()} ")


def _by_words(name: str) -> Row | None:
    hits = [row for row in table() if row.by == "word" and row.value in name]
    words = [row.value.strip() for row in hits]
    kept = [row for row in hits if not any(row.value.strip() in word != row.value.strip() for word in words)]
    if not kept:
        return None
    counted_from = min(row.from_percent for row in kept)
    return Row("word", name.strip(), frozenset[str]().union(*(row.groups for row in kept)), counted_from, "")


def _by_statements(statements: Iterable[str]) -> Iterator[Found]:
    said = set(statements)
    for row in table():
        if row.by == "statement" and row.value in said:
            yield row.groups, f"Its label says {row.value}: {' + '.join(sorted(row.groups, key=_by_number))}."


def _by_water(kind: str, listed: list[Ingredient], water_based: bool | None) -> Iterator[Found]:
    if water_based is not None:
        if water_based:
            yield frozenset({WATER}), "It is said to be water-based: 106."
        return
    shares = [upper(one.get("percent")) for one in listed if one.get("cas") == WATER_CAS]
    if any(share is None or share >= MUCH_WATER for share in shares):
        yield frozenset({WATER}), "Water is listed: 106."
    elif any(row.by == "watery kind" and row.value == kind for row in table()):
        yield frozenset({WATER}), "Products of its kind are mostly water-based: 106."


def _by_kind(kind: str) -> Iterator[Found]:
    for row in table():
        if row.by == "kind" and row.value == kind:
            yield row.groups, row.note


def _by_its_name(kind: str, listed: list[Ingredient], found: Iterable[Found]) -> Iterator[Found]:
    """Yield the kind's own groups where an ingredient is unknown and nothing found is what its name says."""
    wanted, why = CALLED_AFTER.get(kind, (NONE, ""))
    known = frozenset[str]().union(*(groups for groups, _ in found))
    named = [(str(one.get("name", "")), str(one.get("cas") or "")) for one in listed]
    unknown = any(cas != WATER_CAS and row_of(name, cas) is None for name, cas in named)
    if wanted and unknown and not known & wanted:
        yield from ((groups, f"What it acts by is not known: {why}") for groups, _ in _by_kind(kind))


def _by_number(group: str) -> tuple[bool, int, str]:
    return (not group.isdigit(), int(group) if group.isdigit() else 0, group)
