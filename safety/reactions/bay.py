"""In one bay: bleach and acid both in use stop; what a rinse must part on a car, both in use, asks.

Closed bottles that merely share a bay are told.
"""

from collections.abc import Iterable
from dataclasses import replace
from itertools import combinations

from safety.findings import GRADES, Finding
from safety.reactions.car import rinsed_apart
from safety.reactions.chart import SOURCE as CHART
from safety.reactions.families import ACIDS, BLEACH, between
from safety.reactions.meeting import meet
from safety.reactions.saying import both, finding
from safety.reactions.shelf import HARMS
from safety.reactions.values import EVERYWHERE, Substance

NAMED = 3
IN_USE, NEAR = "reaction.bay", "reaction.bay_closed"
ONE_AFTER = "Finish one, rinse car and floor to a clear drain, air the bay, then take the other."
KEEP_CLOSED = "Keep them closed, and never let one into the other's bucket or drain."


def in_one_bay(a: Substance, b: Substance, both_in_use: bool = False) -> Finding | None:
    """Return what is said of two products in one bay; None is nothing found."""
    parted = rinsed_apart(a, b) if both_in_use else ()
    pairs = tuple(pair for pair in meet(a, b) if pair.where == EVERYWHERE and HARMS & set(pair.codes))
    if not pairs and not parted:
        return None
    if both_in_use and between(a, b, BLEACH, ACIDS):
        says = f"{both(a, b)} are both in use in one bay: bleach and acid never are."
        return finding(IN_USE, "stop", says, pairs, ONE_AFTER, (a, b))
    if parted:
        says = f"{both(a, b)} are both in use in one bay, and a rinse must part them."
        return finding(IN_USE, "ask", says, parted, ONE_AFTER, (a, b))
    says = f"{both(a, b)} share a bay."
    return finding(NEAR, "tell", says, pairs, KEEP_CLOSED, (a, b))


def all_in_one_bay(closed: Iterable[Substance], in_use: Iterable[Substance]) -> tuple[Finding, ...]:
    """Return the stops, then the asks of a bay, one for a pair, and one note for all that merely share it.

    A note for every pair of a full bay would hide the one that matters.
    """
    used = list(dict.fromkeys(in_use))
    there = [(one, True) for one in used] + [(one, False) for one in dict.fromkeys(closed) if one not in used]
    found = [in_one_bay(a, b, x and y) for (a, x), (b, y) in combinations(there, 2)]
    in_hand = [each for each in found if each is not None and each.code == IN_USE]
    stops = tuple(sorted(in_hand, key=lambda each: GRADES.index(each.grade)))
    notes = [each for each in found if each is not None and each.grade == "tell"]
    own_first = sorted(notes, key=lambda each: each.source.startswith(CHART))
    return (*stops, folded(own_first)) if notes else stops


def folded(notes: list[Finding]) -> Finding:
    """Return the first note with the next few pairs in its reason, and the number of those left out."""
    first, *rest = notes
    if not rest:
        return first
    named = [" and ".join(each.about) for each in rest[:NAMED]]
    left = len(rest) - len(named)
    more = f"; and {left} more {'pair' if left == 1 else 'pairs'}" if left else ""
    # Sources are joined by semicolons: what several pairs share is said once.
    sources = dict.fromkeys(part for each in notes[: NAMED + 1] for part in each.source.split("; "))
    about = {name for each in notes for name in each.about}
    because = f"{first.because} Also apart: {'; '.join(named)}{more}."
    return replace(first, because=because, source="; ".join(sources), about=tuple(sorted(about)))
