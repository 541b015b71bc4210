"""Count: what is really in it."""

from inventory.stock.rules.acts import Act
from inventory.units import AmountError

from .. import words
from ..answers import Heard, Key
from ..turn import Turn
from .with_bottle import in_hand, next_bottle

NAME = "count"


def begin(turn: Turn) -> Heard:
    """COUNT: ask how much is in it."""
    if turn.bottle is None:
        return in_hand(turn, NAME, "Count what?")
    says = f"How much is in {words.name(turn.bottle)}? The book says {words.holds(turn.bottle, turn.facts)}."
    return turn.ask(
        says,
        "Type the amount, or FINISHED where it is empty.",
        Key("It is empty", "FINISHED"),
        verb=NAME,
        waits="amount",
    )


def go_on(turn: Turn) -> Heard | None:
    """Take the bottle, then the amount."""
    bottle, said = turn.bottle, turn.said
    if turn.state.waits == "bottle" or bottle is None:
        return next_bottle(turn, begin)
    if said.command != "finished" and not said.amount and said.number is None:
        return None
    try:
        base = 0 if said.command == "finished" else words.read_amount_in(said.text, bottle, turn.facts.shop)
    except AmountError as refusal:
        return turn.again(str(refusal))
    act = Act("count", turn.facts.at, target=bottle.code, amount=base)
    booked = words.holds(bottle, turn.facts)
    says = f"{words.name(bottle)} holds {turn.of(bottle, base)}. The book said {booked}."
    return turn.recorded(
        says, "", Key("Undo", "UNDO"), acts=(act,), what=f"the count of {words.name(bottle)}"
    )
