"""In one bay: bleach and acid both in use stop; closed bottles that merely share a bay are told."""

from collections.abc import Iterable
from dataclasses import replace
from itertools import combinations

from safety.findings import Finding
from safety.reactions.families import ACIDS, BLEACH, between
from safety.reactions.meeting import meet
from safety.reactions.saying import both, finding
from safety.reactions.shelf import HARMS
from safety.reactions.values import EVERYWHERE, Substance

IN_USE, NEAR = "reaction.bay", "reaction.bay_closed"
ONE_AFTER = "Finish one, rinse car and floor to a clear drain, air the bay, then take the other."
KEEP_CLOSED = "Keep them closed, and never let one into the other's bucket or drain."


def in_one_bay(a: Substance, b: Substance, both_in_use: bool = False) -> Finding | None:
    """Return what is said of two products in one bay; None is nothing found."""
    pairs = tuple(pair for pair in meet(a, b) if pair.where == EVERYWHERE and HARMS & set(pair.codes))
    if not pairs:
        return None
    if both_in_use and between(a, b, BLEACH, ACIDS):
        says = f"{both(a, b)} are both in use in one bay: bleach and acid never are."
        return finding(IN_USE, "stop", says, pairs, ONE_AFTER, (a, b))
    says = f"{both(a, b)} share a bay."
    return finding(NEAR, "tell", says, pairs, KEEP_CLOSED, (a, b))


def all_in_one_bay(closed: Iterable[Substance], in_use: Iterable[Substance]) -> tuple[Finding, ...]:
    """Return the stops of a bay, one for a pair, and one note for all that merely share it; gravest first.

    A note for every pair of a full bay would hide the one that matters.
    """
    used = list(dict.fromkeys(in_use))
    there = [(one, True) for one in used] + [(one, False) for one in dict.fromkeys(closed) if one not in used]
    found = [in_one_bay(a, b, x and y) for (a, x), (b, y) in combinations(there, 2)]
    stops = [each for each in found if each is not None and each.grade == "stop"]
    notes = [each for each in found if each is not None and each.grade == "tell"]
    return (*stops, *([folded(notes)] if notes else []))


def folded(notes: list[Finding]) -> Finding:
    """Return the first note with the names of all other pairs in its reason."""
    first, *rest = notes
    if not rest:
        return first
    pairs = "; ".join(" and ".join(each.about) for each in rest)
    names = sorted({name for each in notes for name in each.about})
    # sources are joined by semicolons: what two pairs share is said once
    sources = "; ".join(dict.fromkeys(part for each in notes for part in each.source.split("; ")))
    return replace(first, because=f"{first.because} Also apart: {pairs}.", source=sources, about=tuple(names))
