"""Discard and return: the bottle leaves the shop, whatever its date; what is in it goes with it."""

from collections.abc import Callable

from inventory.stock.rules.acts import Act

from .. import words
from ..answers import Heard, Key
from ..turn import Turn
from .with_bottle import in_hand, next_bottle

_SAYS = {
    "discard": ("Discard what?", "Discarded", "Dispose of it as section 13 of its data sheet says."),
    "return": ("Send back what?", "Sent back", "Pack it as its data sheet's section 14 says."),
}


def leaving(kind: str) -> Callable[[Turn], Heard]:
    """Return the beginning of DISCARD or RETURN."""

    def begin(turn: Turn) -> Heard:
        question, done, next = _SAYS[kind]
        bottle = turn.bottle
        if bottle is None:
            return in_hand(turn, kind, question)
        if bottle.state == "gone":
            return turn.stop(
                f"{words.name(bottle)} was booked out of the shop already.", "Scan the next thing."
            )
        act = Act(kind, turn.facts.at, target=bottle.code)
        with_it = f" with {words.holds(bottle, turn.facts)} in it" if bottle.content else ""
        return turn.recorded(
            f"{done} {words.name(bottle)}{with_it}.",
            next,
            Key("Undo", "UNDO"),
            acts=(act,),
            what=f"{words.name(bottle)} leaving the shop",
            state=turn.state.idle(bottle=""),
        )

    return begin


discard = leaving("discard")
give_back = leaving("return")


def discard_on(turn: Turn) -> Heard | None:
    """Take the bottle to discard."""
    return next_bottle(turn, discard)


def give_back_on(turn: Turn) -> Heard | None:
    """Take the bottle to send back."""
    return next_bottle(turn, give_back)
