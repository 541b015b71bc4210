"""Discard and return: the bottle leaves the shop, whatever its date; what is in it goes with it.

Where the shop has waste cans, what is left in a bottle is tipped into one of them, or leaves in its bottle.
"""

from typing import Any

from inventory.stock.rules.acts import Act

from .. import words
from ..answers import Heard, Key
from ..facts import Bottle, PlaceFacts
from ..guards import YES
from ..turn import Turn
from .with_bottle import in_hand, next_bottle

DISCARD, RETURN = "discard", "return"
TIP, TIPPED = "tip", "tipped."
_SAYS = {
    DISCARD: ("Discard what?", "Discarded", "Dispose of it as section 13 of its data sheet says."),
    RETURN: ("Send back what?", "Sent back", "Pack it as its data sheet's section 14 says."),
}
AS_IT_IS = Key("It leaves in its own bottle", "DONE")


def discard(turn: Turn) -> Heard:
    """DISCARD: ask into which can, where there is one and something is left."""
    bottle = turn.bottle
    if bottle is None or bottle.state == "gone" or not (turn.facts.cans and bottle.content):
        return _leaves(turn, DISCARD)
    says = f"Into which can does {words.name(bottle)} go, with {words.holds(bottle, turn.facts)} in it?"
    next = "Scan the can, or DONE if it leaves in its own bottle, closed."
    return turn.ask(says, next, AS_IT_IS, verb=DISCARD, waits="can")


def give_back(turn: Turn) -> Heard:
    """RETURN: back to who sold it."""
    return _leaves(turn, RETURN)


def discard_on(turn: Turn) -> Heard | None:
    """Take the bottle to discard, then the can."""
    if turn.state.waits != "can":
        return next_bottle(turn, discard)
    if turn.said.command == "done":
        return _leaves(turn, DISCARD)
    place = turn.facts.places.get(turn.said.code) if turn.said.kind == "place" else None
    if place is None:
        return None
    if not place.can:
        return turn.again(f"{place.name} is no can.", "Scan the can it is tipped into, or DONE.", AS_IT_IS)
    return settle(turn, {"place": place.code, "answered": [TIP]})


def give_back_on(turn: Turn) -> Heard | None:
    """Take the bottle to send back."""
    return next_bottle(turn, give_back)


def tippable(turn: Turn) -> bool:
    """Say whether the bottle in hand holds something that a can could take."""
    bottle = turn.bottle
    return bottle is not None and bottle.state != "gone" and bool(bottle.product and bottle.content)


def into(turn: Turn, can: PlaceFacts) -> Heard:
    """Tip the bottle in hand into a can that was scanned without a word: that is asked first."""
    return settle(turn, {"place": can.code})


def settle(turn: Turn, slots: dict[str, Any]) -> Heard:
    """Tip it in, or say why never, or ask."""
    bottle, can = turn.bottle, turn.facts.places[slots["place"]]
    assert bottle is not None
    answered = slots.get("answered", ())
    for found in turn.facts.tipped:
        if found.grade == "stop":
            return turn.stop(found.says, found.do)
        if (code := f"{TIPPED}{found.code}") not in answered:
            return _ask(turn, found.says, found.do, slots, code)
    if not answered:
        says = f"Tip {words.name(bottle)} into {can.name}, {words.holds(bottle, turn.facts)}?"
        return _ask(turn, says, "YES discards the bottle with it.", slots, TIP)
    return _leaves(turn, DISCARD, can, [code for code in answered if code != TIP])


def _ask(turn: Turn, says: str, next: str, slots: dict[str, Any], code: str) -> Heard:
    yes, no = Key("Yes, tip it in", YES), Key("No", "NO", main=True)
    return turn.ask(says, next, yes, no, verb=DISCARD, waits="yes", **{**slots, "asked": code})


def _leaves(turn: Turn, kind: str, can: PlaceFacts | None = None, answered: list[str] | None = None) -> Heard:
    question, done, next = _SAYS[kind]
    bottle = turn.bottle
    if bottle is None:
        return in_hand(turn, kind, question)
    if bottle.state == "gone":
        return turn.stop(f"{words.name(bottle)} was booked out of the shop already.", "Scan the next thing.")
    facts: dict[str, object] = {"answered": answered} if answered else {}
    act = Act(kind, turn.facts.at, target=bottle.code, place=can.code if can else None, facts=facts)
    return turn.recorded(
        f"{done} {words.name(bottle)}{_with_it(turn, bottle)}{f', into {can.name}' if can else ''}.",
        next,
        Key("Undo", "UNDO"),
        acts=(act,),
        what=f"{words.name(bottle)} leaving the shop",
        state=turn.state.idle(bottle=""),
    )


def _with_it(turn: Turn, bottle: Bottle) -> str:
    return f" with {words.holds(bottle, turn.facts)} in it" if bottle.content else ""
