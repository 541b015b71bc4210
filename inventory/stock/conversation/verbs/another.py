"""Another amount of the same use: it takes the recorded one's place, until something else is scanned.

The slots that wait for it: `planned`, what is recorded now; `plan`, what was recorded as planned at first;
`added`, how much a count put into the book for it; `wanted`, what the step wants where the bottle holds less.
"""

from dataclasses import replace
from typing import Any

from ..answers import Heard
from ..facts import Bottle
from ..guards import CHECK
from ..objections import Taking
from ..state import State
from ..turn import Turn

NAME = "use"
WAITS = "other_amount"
SLOTS = frozenset({"bottle", "planned", "plan", "added", "wanted", "step"})


def waiting(state: State, taking: Taking, slots: dict[str, Any], added: int) -> State:
    """Return the state in which the amount that was recorded just now may still be put right."""
    kept = {
        "bottle": taking.bottle.code,
        "planned": taking.amount,
        "plan": slots.get("plan", taking.amount),
        "added": added,
        "step": taking.step,
        "answered": unasked(slots),
    }
    if "wanted" in slots:
        kept["wanted"] = slots["wanted"]
    return replace(state, bottle=taking.bottle.code, verb=NAME, waits=WAITS, slots=kept)


def unasked(slots: dict[str, Any]) -> list[str]:
    """Return what was answered of the bottle; what was asked of an amount is asked anew of another one."""
    return [one for one in slots.get("answered", ()) if one != "too_little" and not one.startswith(CHECK)]


def reopened(state: State, slots: dict[str, Any]) -> State:
    """Return the state that waits for another amount again, after one that was refused or let go."""
    kept = {name: value for name, value in slots.items() if name in SLOTS}
    return replace(state, verb=NAME, waits=WAITS, slots=kept)


def let_go(turn: Turn) -> Heard:
    """NO to another amount: the recorded one stays, and may still be put right."""
    slots = turn.state.slots
    recorded = turn.of(turn.facts.bottles[slots["bottle"]], int(slots["planned"]))
    heard = turn.tell(f"Nothing was changed: {recorded} stay recorded.", "Type another amount, or scan on.")
    return replace(heard, state=reopened(heard.state, slots))


def before(bottle: Bottle, slots: dict[str, Any]) -> Bottle:
    """Return a bottle as it was before the amount that another one replaces."""
    back = int(slots.get("planned", 0)) - int(slots.get("added", 0))
    return replace(bottle, shelf=replace(bottle.shelf, content=bottle.content + back)) if back else bottle


def seqs_back(seqs: tuple[int, ...], slots: dict[str, Any]) -> tuple[int, ...]:
    """Return the lines to take back, the last first: the use, and the count that made room for it."""
    return tuple(reversed(seqs[-2:] if slots.get("added") else seqs[-1:]))
