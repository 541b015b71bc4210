"""What verbs about one bottle share: asking for it, and taking it."""

from collections.abc import Callable
from dataclasses import replace

from ..answers import Heard
from ..turn import Turn


def in_hand(turn: Turn, verb: str, says: str) -> Heard:
    """Ask for the bottle that a verb is about."""
    return turn.ask(says, "Scan the bottle.", verb=verb, waits="bottle")


def next_bottle(turn: Turn, begin: Callable[[Turn], Heard]) -> Heard | None:
    """Begin with the bottle that was scanned, or None where it is none."""
    if turn.said.kind != "container" or turn.said.code not in turn.facts.bottles:
        return None
    return begin(replace(turn, state=replace(turn.state, bottle=turn.said.code, slots={}, waits="", verb="")))
