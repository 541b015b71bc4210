"""In one cabinet, shelf or tray: the rules first, then the transport table as a second flag."""

from dataclasses import dataclass, replace

from safety.findings import GRADES, Finding
from safety.reactions.families import (
    ACIDS,
    BLEACH,
    FLUORIDE,
    OXIDISERS,
    WATER_REACTIVE,
    WATERY,
    between,
    burns,
)
from safety.reactions.groups import traits
from safety.reactions.meeting import meet
from safety.reactions.saying import both, finding
from safety.reactions.segregation import Flag, transport
from safety.reactions.values import EVERYWHERE, Pair, Substance

CODE = "reaction.place"
HARMS = frozenset({"GT", "E", "P", "F"})
MOVE = "Move one of them to another cabinet before anything else."
APART = "Stand them apart, each in a tray of its own, so that leaks cannot meet."


@dataclass(frozen=True)
class Never:
    """Two families that never share a cabinet."""

    name: str
    left: frozenset[str]
    right: frozenset[str]


NEVER = (
    Never("bleach beside acid", BLEACH, ACIDS),
    Never("a fluoride beside acid", FLUORIDE, ACIDS),
    Never("something that reacts with water beside something water-based", WATER_REACTIVE, WATERY),
)
OXIDISER = "an oxidiser beside something flammable"


def in_one_place(a: Substance, b: Substance) -> Finding | None:
    """Return what is said of two closed containers in one cabinet, shelf or tray; None is nothing found."""
    pairs = tuple(pair for pair in meet(a, b) if pair.where == EVERYWHERE)
    harmful = tuple(pair for pair in pairs if HARMS & set(pair.codes))
    flag = transport(a, b)
    if name := never(a, b):
        says = f"{both(a, b)} never stand in one cabinet, on one shelf or tray: {name}."
        why = harmful or pairs or (_by_name(a, b, name),)
        return flagged(finding(CODE, "stop", says, why, MOVE, (a, b)), flag)
    if harmful:
        says = f"{both(a, b)} stand together, and harm if they leak."
        return flagged(finding(CODE, grade(a, b, harmful), says, harmful, APART, (a, b)), flag)
    return None if flag is None or a == b else carried(a, b, flag)


def _by_name(a: Substance, b: Substance, name: str) -> Pair:
    """Return what the rule's own name says, where a label alone told of the harm and no cell of the chart."""
    says = f"{name[:1].upper()}{name[1:]} may burn or give off harmful gas if both leak."
    return Pair(a.name, b.name, ("F",), "this shop's rule for cabinets", "M", says, "cabinet")


def never(a: Substance, b: Substance) -> str:
    """Return why two substances never share a cabinet, "" where no such rule holds."""
    if a == b:
        return ""
    for each in NEVER:
        if between(a, b, each.left, each.right):
            return each.name
    oxidises = (traits(a) & OXIDISERS and burns(b)) or (traits(b) & OXIDISERS and burns(a))
    return OXIDISER if oxidises else ""


def grade(a: Substance, b: Substance, harmful: tuple[Pair, ...]) -> str:
    """Return ask; tell for two that both react with water and about whom only column 107 speaks.

    Every coating of this kind would otherwise ask beside every other, for the solvent in both.
    """
    alike = all("107" in traits(each) for each in (a, b))
    return "tell" if alike and {pair.rule for pair in harmful} == {"107"} else "ask"


def flagged(found: Finding, flag: Flag | None) -> Finding:
    """Return a finding with what transport says folded in, never milder than either."""
    if flag is None:
        return found
    gravest = min(found.grade, flag.grade, key=GRADES.index)
    because = f"{found.because} In transport: {flag.says}"
    return replace(found, grade=gravest, because=because, source=f"{found.source}; {flag.source}")


def carried(a: Substance, b: Substance, flag: Flag) -> Finding:
    """Return what transport alone says."""
    return Finding(
        code=f"{CODE}_transport",
        grade=flag.grade,
        says=f"{both(a, b)} stand together. {flag.says}",
        because="The transport table is a second flag; the reaction rules found nothing, which is not safe.",
        do=APART,
        source=flag.source,
        about=tuple(sorted((a.name, b.name))),
    )
