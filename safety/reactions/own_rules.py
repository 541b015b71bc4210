"""The shop's own rules, S1 to S19, and the net of what labels say: one table, one way of matching.

A side is met by any one of its words: a group, a tag, a statement; words joined by + are all needed, * is
whatever there is. Sources and marks stand in each row of the table.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from safety.hazards.tables import rows
from safety.reactions.groups import traits
from safety.reactions.values import Pair, Substance, in_full, ordered

ANYTHING = "*"
NO_SOURCE = "chemistry"  # its mark says that it is from memory
Side = tuple[frozenset[str], ...]


@dataclass(frozen=True)
class Rule:
    """One row: what on one side, what on the other, and what they do."""

    id: str
    about: str
    a: Side
    b: Side
    codes: tuple[str, ...]
    where: str
    says: str
    source: str
    mark: str


@cache
def own_rules() -> tuple[Rule, ...]:
    """Return the table in its order, S1 first."""
    return tuple(
        Rule(
            id=row["id"],
            about=row["about"],
            a=_side(row["a"]),
            b=_side(row["b"]),
            codes=ordered(set(row["codes"].split(","))),
            where=row["where"],
            says=row["says"],
            source=f"{in_full(row['id'])}: {row['basis'] or NO_SOURCE}",
            mark=row["mark"],
        )
        for row in rows("reactivity_rules")
    )


def _side(text: str) -> Side:
    return tuple(frozenset(words.split("+")) for words in text.split())


def meets(side: Side, found: frozenset[str]) -> bool:
    """Return whether one word of a side, or all that + joins, is among the traits of a substance."""
    return any(words <= found or words == {ANYTHING} for words in side)


def by_rules(a: Substance, b: Substance) -> Iterator[Pair]:
    """Yield what the rules say of two substances, whichever of them is on which side."""
    one, other = traits(a), traits(b)
    for rule in own_rules():
        there = meets(rule.a, one) and meets(rule.b, other)
        if there or (meets(rule.a, other) and meets(rule.b, one)):
            yield Pair(
                a.name, b.name, rule.codes, rule.source, rule.mark, rule.says, rule.id, rule.where, rule.about
            )
