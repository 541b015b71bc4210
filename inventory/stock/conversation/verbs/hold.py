"""Hold: not usable until an owner releases it, with the reason; a bottle, or its whole lot."""

from inventory.stock.rules.acts import Act

from .. import words
from ..answers import Heard, Key
from ..turn import Turn
from .with_bottle import in_hand, next_bottle

NAME = "hold"
REASONS = ("left open", "frozen", "overheated", "gelled", "dropped", "recalled")


def begin(turn: Turn) -> Heard:
    """HOLD: ask why."""
    bottle = turn.bottle
    if bottle is None:
        return in_hand(turn, NAME, "Hold what?")
    if bottle.shelf.held:
        return turn.tell(
            f"{words.name(bottle)} is held already: {bottle.shelf.held}.", "An owner releases it on its page."
        )
    keys = tuple(Key(reason.capitalize(), reason) for reason in REASONS)
    return turn.ask(
        f"Why is {words.name(bottle)} held?",
        "Choose or type the reason, or DONE to say none.",
        *keys,
        verb=NAME,
        waits="reason",
    )


def go_on(turn: Turn) -> Heard | None:
    """Take the bottle, then the reason."""
    bottle = turn.bottle
    if turn.state.waits == "bottle" or bottle is None:
        return next_bottle(turn, begin)
    if not turn.said.words and turn.said.command != "done":
        return None
    # DONE lets a scanner alone hold a bottle; the owner asks for the reason later.
    reason = turn.said.text[:120] if turn.said.words else "no reason said"
    act = Act("quarantine", turn.facts.at, target=bottle.code, facts={"reason": reason})
    says = f"{words.name(bottle)} is held: {reason}."
    return turn.recorded(
        says,
        "Nobody uses it until an owner releases it.",
        Key("Its whole lot too", "WHOLE LOT"),
        Key("Undo", "UNDO"),
        acts=(act,),
        what=f"the hold on {words.name(bottle)}",
    )


def whole_lot(turn: Turn) -> Heard:
    """WHOLE LOT: the lots of the held bottle in hand, later receipts included."""
    bottle = turn.bottle
    if bottle is None or not bottle.shelf.held:
        return turn.stop(
            "Which lot is held? Hold a bottle of it first.", "Scan a bottle, then HOLD, then the reason."
        )
    facts: dict[str, object] = {
        "reason": bottle.shelf.held,
        "recalled": bottle.shelf.held.lower() == "recalled",
    }
    lots = sorted(bottle.shelf.lots)
    acts = tuple(Act("quarantine", turn.facts.at, lot=lot, facts=facts) for lot in lots)
    named = ", ".join(number or "not given" for number in bottle.lot_numbers)
    says = f"Lot {named} is held: {bottle.shelf.held}. So is every bottle of it, here and still to come."
    return turn.recorded(says, "", Key("Undo", "UNDO"), acts=acts, what=f"the hold on lot {named}")


def release(turn: Turn) -> Heard:
    """RELEASE: a badge cannot."""
    page = (Key("Its page", page="container", about=turn.bottle.code),) if turn.bottle else ()
    return turn.stop(
        "A badge cannot release what is held: that takes an owner's password.",
        "An owner logs in and releases it on its page.",
        *page,
    )
