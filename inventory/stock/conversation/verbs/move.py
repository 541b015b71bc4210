"""Move: a bottle to another place; a product that is not on that place's poster asks first."""

from dataclasses import replace
from typing import Any

from inventory.stock.rules.acts import Act

from .. import words
from ..answers import Heard, Key
from ..facts import Bottle, PlaceFacts, ProductFacts
from ..guards import YES
from ..turn import Turn
from . import away
from .with_bottle import in_hand, next_bottle

NAME = "move"
BESIDE = "beside."


def begin(turn: Turn) -> Heard:
    """MOVE: ask where to."""
    if turn.bottle is None:
        return in_hand(turn, NAME, "Move what?")
    return turn.ask(f"Where does {words.name(turn.bottle)} go?", "Scan the place.", verb=NAME, waits="place")


def bring_back(turn: Turn) -> Heard:
    """BRING BACK: to this station's own place."""
    if turn.bottle and turn.facts.station_place:
        return settle(turn, {"place": turn.facts.station_place})
    return begin(turn)


def go_on(turn: Turn) -> Heard | None:
    """Take the bottle, then the place."""
    if turn.state.waits == "bottle":
        return next_bottle(turn, begin)
    if turn.said.kind != "place" or turn.said.code not in turn.facts.places:
        return None
    return settle(turn, {"place": turn.said.code})


def settle(turn: Turn, slots: dict[str, Any]) -> Heard:
    """Write it, or ask first."""
    bottle, place = turn.bottle, turn.facts.places[slots["place"]]
    assert bottle is not None
    if bottle.state == "gone":
        return turn.stop(
            f"{words.name(bottle)} was booked out of the shop.", "If it is here after all: UNDO that entry."
        )
    if place.can:
        return away.into(turn, place)
    if question := not_on_poster(bottle.product, place, slots):
        return turn.ask(
            *question,
            Key("Yes, put it there", YES),
            Key("No", "NO", main=True),
            verb=NAME,
            waits="yes",
            **{**slots, "asked": "not_admitted"},
        )
    if objection := put_beside(turn, slots):
        return objection
    facts: dict[str, object] = {"answered": slots["answered"]} if slots.get("answered") else {}
    act = Act("move", turn.facts.at, target=bottle.code, place=place.code, facts=facts)
    return turn.recorded(
        f"Moved {words.name(bottle)} to {place.name}.",
        " ".join(part for part in (*told(turn), _came_from(bottle)) if part),
        Key("Undo", "UNDO"),
        acts=(act,),
        what=f"the move of {words.name(bottle)}",
        state=replace(turn.state.idle(), bottle=bottle.code),
    )


def put_beside(turn: Turn, slots: dict[str, Any], verb: str = NAME) -> Heard | None:
    """Stop or ask where what stands in the place already must not stand beside it; None where nothing is."""
    answered = slots.get("answered", ())
    for found in turn.facts.put_away:
        if found.grade == "stop":
            return turn.stop(found.says, found.do)
        code = f"{BESIDE}{found.code}"
        if found.grade == "ask" and code not in answered:
            yes, no = Key("Yes, put it there", YES), Key("No", "NO", main=True)
            return turn.ask(found.says, found.do, yes, no, verb=verb, waits="yes", **{**slots, "asked": code})
    return None


def told(turn: Turn) -> list[str]:
    """Return what is only told of where it was put, with what to do."""
    said = (f"{found.says} {found.do}" for found in turn.facts.put_away if found.grade == "tell")
    return [one.strip() for one in said]


def not_on_poster(
    product: ProductFacts | None, place: PlaceFacts, slots: dict[str, Any]
) -> tuple[str, str] | None:
    """Return the question where a poster hangs that does not list a product, unless it was answered."""
    if product is None or not product.on_posters or place.admits is None or product.code in place.admits:
        return None
    if "not_admitted" in slots.get("answered", ()):
        return None
    return (
        f"{product.name} is not on the poster of {place.name}. Put it there all the same?",
        "If it is to stay, an owner admits it there and prints the poster anew.",
    )


def _came_from(bottle: Bottle) -> str:
    return f"It was at {bottle.place_name}." if bottle.place_name else ""
