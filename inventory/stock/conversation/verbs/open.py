"""Open: asks nothing, and says until when the opened bottle is good."""

from dataclasses import replace

from inventory.stock.rules.acts import Act
from inventory.stock.rules.use_by import use_by

from .. import words
from ..answers import Heard, Key
from ..facts import Bottle
from ..guards import OPENING, first_objection
from ..instead import label_key
from ..objections import Taking
from ..turn import Turn

NAME = "open"


def begin(turn: Turn) -> Heard:
    """OPEN: the bottle in hand, else ask for it."""
    bottle = turn.bottle
    if bottle is None:
        return turn.ask("Open what?", "Scan the bottle.", verb=NAME, waits="bottle")
    if bottle.state != "sealed":
        return turn.tell(f"{words.name(bottle)} is {bottle.state} already.", dies(turn, bottle))
    soft = ("past_estimate",)
    if objection := first_objection(Taking(bottle, 0), turn.facts, soft, OPENING):
        return turn.stop(objection.says, objection.next, *objection.keys)
    act = Act("open", turn.facts.at, target=bottle.code)
    opened = replace(
        bottle, shelf=replace(bottle.shelf, dates=replace(bottle.shelf.dates, opened_at=turn.facts.at))
    )
    says = f"Opened {words.short(bottle.code)}. {dies(turn, opened)}"
    return turn.recorded(
        says,
        "Write the date on its cap, or print its label.",
        label_key(bottle.code),
        Key("Use it", "USE"),
        Key("Undo", "UNDO"),
        acts=(act,),
        what=f"the opening of {words.name(bottle)}",
    )


def go_on(turn: Turn) -> Heard | None:
    """Take the bottle."""
    if turn.said.kind != "container" or turn.said.code not in turn.facts.bottles:
        return None
    return begin(replace(turn, state=replace(turn.state, bottle=turn.said.code)))


def dies(turn: Turn, bottle: Bottle) -> str:
    """Return "Use by 24 February.", or what else limits it, or that nothing does."""
    term = use_by(bottle.shelf.dates, turn.facts.zone)
    if term:
        return f"Use by {words.until(term, turn.facts)}."
    life = bottle.product.open if bottle.product and bottle.state == "sealed" else None
    return f"No date on it; once opened it lasts {life}." if life else "No date limits it."
