"""What is said before something is poured into a bottle: bond what lights, keep dry what gives off gas."""

from typing import Any

from ..answers import Heard, Key
from ..guards import YES
from ..turn import Turn

WATERED, GASSING, BONDING = "reaction.watered", "reaction.watered_gas", "flammables.bonding"


def bonding(turn: Turn) -> str:
    """Return what is told before something that lights is poured, "" where nothing is."""
    told = next((one for one in turn.facts.poured_on if one.code == BONDING), None)
    return f" {told.says} {told.do}" if told else ""


def gassing(turn: Turn, slots: dict[str, Any], verb: str) -> Heard | None:
    """Ask where its water would press a lid; an answer holds for one bottle."""
    found = next((one for one in turn.facts.poured_on if one.code == GASSING), None)
    if found is None or GASSING in slots.get("answered", ()):
        return None
    yes, no = Key("Yes, its maker wants water", YES), Key("No", "NO", main=True)
    return turn.ask(found.says, found.do, yes, no, verb=verb, waits="yes", **{**slots, "asked": GASSING})
