"""In one bay: bleach and acid both in use stop; closed bottles that merely share a bay are told."""

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
