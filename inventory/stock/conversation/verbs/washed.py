"""Washed: a pad or towel is clean again, but for what washing leaves in it."""

from inventory.stock.rules.washing import STAYS, is_washed, not_washed

from .. import words
from ..answers import Heard, Key
from ..facts import Bottle
from ..turn import Turn
from .with_bottle import next_bottle

NAME = "washed"


def begin(turn: Turn) -> Heard:
    """WASHED: the pad or towel in hand, else ask for it."""
    if turn.bottle is None or not counts(turn.bottle):
        return turn.ask("What was washed?", "Scan the pad or towel.", verb=NAME, waits="bottle")
    return _washed(turn)


def go_on(turn: Turn) -> Heard | None:
    """Take the pad or towel; with a car in hand it is washed, not used on it."""
    return next_bottle(turn, _washed)


def counts(bottle: Bottle) -> bool:
    """Say whether the washing of what is in hand is kept."""
    return bottle.product is not None and is_washed(bottle.product.kind, bottle.product.wears)


def _washed(turn: Turn) -> Heard:
    bottle = turn.bottle
    assert bottle is not None
    if not counts(bottle):
        why = not_washed(bottle.product.kind if bottle.product else "")
        return turn.stop(f"{words.name(bottle)} {why}", "Nothing was recorded.")
    effect = {"does": "wash", "container": bottle.code, "at": turn.facts.at.isoformat()}
    return turn.recorded(
        f"Washed {words.name(bottle)}.",
        STAYS,
        Key("Undo", "UNDO"),
        effects=(effect,),
        # Out of hand: the next WASHED asks for the next pad.
        state=turn.state.idle(bottle=""),
        what=f"the washing of {words.name(bottle)}",
    )
