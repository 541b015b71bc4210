"""In one vessel: bucket, waste can, sprayer, or a bottle that is topped up.

Gas that harms or burns, fire, explosion or hardening is refused, always; the rest asks. Two parts of one kit
at the maker's ratio are meant to react.
"""

from safety.findings import Finding
from safety.reactions.families import known_weak
from safety.reactions.groups import WATER, labels, traits
from safety.reactions.meeting import gravest_first, meet
from safety.reactions.saying import both, finding
from safety.reactions.values import Pair, Substance

REFUSED, ASKED, UNKNOWN = "reaction.vessel", "reaction.vessel_heat", "reaction.vessel_unknown"
HEAT_OF_WATER = frozenset({"S19", "1-106", "2-106"})
OTHER_VESSEL = "Take another vessel, clean and rinsed; never top up one with the other."
INTO_WATER = "Acid or caustic into water, slowly, never the reverse; close it when it is cool."
PLAIN_WATER = Substance("water", frozenset({WATER}), water_based=True)
GAS = "G"
OPEN = "Better take another vessel; if it must be, a little at a time, and leave it open until it rests."


def in_one_vessel(a: Substance, b: Substance, kit_parts: bool = False) -> Finding | None:
    """Return the refusal, or the question, for two substances in one vessel; None is nothing found."""
    if kit_parts or a == b:
        return None
    pairs = gravest_first(meet(a, b))
    if any(pair.grave for pair in pairs):
        says = f"{both(a, b)} never go into one vessel."
        return finding(REFUSED, "stop", says, pairs, OTHER_VESSEL, (a, b))
    if pairs:
        return _asked(a, b, pairs)
    nameless = sorted(each.name for each in (a, b) if not traits(each))
    return _unknown(nameless[0], a, b) if nameless else None


def thinned(of: Substance) -> Finding | None:
    """Return what is said of pouring water to it: refused, or asked where gas would press a lid.

    What only warms up is mixed every day, and what holds water already has met it.
    """
    if WATER in traits(of):
        return None
    found = in_one_vessel(of, PLAIN_WATER)
    gassing = any(GAS in pair.codes for pair in meet(of, PLAIN_WATER))
    return found if found and (found.grade == "stop" or gassing) else None


def _asked(a: Substance, b: Substance, pairs: tuple[Pair, ...]) -> Finding:
    watery = {pair.rule for pair in pairs} <= HEAT_OF_WATER
    harmless = watery and (known_weak(a) or known_weak(b)) and not _strong(a, b)
    says = f"{both(a, b)} react in one vessel."
    grade = "tell" if harmless else "ask"
    return finding(ASKED, grade, says, pairs, INTO_WATER if watery else OPEN, (a, b))


def _strong(a: Substance, b: Substance) -> bool:
    return any("H314" in labels(each) for each in (a, b))


def _unknown(name: str, a: Substance, b: Substance) -> Finding:
    return Finding(
        code=UNKNOWN,
        grade="ask",
        says=f"Nobody has said which reactivity groups {name} belongs to, so nothing could be found.",
        because="Nothing found is not safe.",
        do=f"Take another vessel, or let the owner confirm the groups of {name}.",
        source="House rule: what is unknown is never counted as nothing.",
        about=tuple(sorted((a.name, b.name))),
    )
