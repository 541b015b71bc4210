"""The conversation: where it stands, one line, what is known → where it stands now, an answer, acts.

Pure: the same three values always give the same three back, for the page, the command and the tests.
"""

from dataclasses import replace

from .answers import Answer, Heard, Key
from .facts import Facts
from .guards import CHECK
from .lines import Said
from .state import State
from .turn import Turn
from .verbs import BEGIN, GO_ON, SETTLE, another, receive, use, weather
from .verbs.delivery import against
from .verbs.looking import at_bottle, at_job, at_place, reprint, who

# More than anybody scans before they notice that no badge came; a station without one must not grow for ever.
MOST_WAITING = 50


def hear(state: State, said: Said, facts: Facts) -> Heard:
    """Return what one line does. It never raises for what a person may scan or type.

    A reading of which values are missing is let go when something else begins or after some minutes, and the
    answer says so.
    """
    late = weather.too_late(state, said, facts.at)
    heard = _hear(state.idle() if late else state, said, facts)
    if late or weather.left(state, heard):
        place = facts.places.get(state.slots["place"])
        told = weather.dropped(place, state.slots["values"], late=late)
        answer = replace(heard.answer, next=f"{told} {heard.answer.next}".strip())
        return replace(heard, answer=answer)
    return heard


def _hear(state: State, said: Said, facts: Facts) -> Heard:
    turn = Turn(state, said, facts)
    if said.command == "emergency":
        return Heard(
            state,
            Answer(
                "tell",
                "Emergency.",
                "Look after yourself first, then the other person, then call.",
                opens="emergency",
            ),
        )
    if said.kind == "person":
        return who(turn)
    if turn.person is None:
        return _wait_for_badge(turn)
    return _answered(turn) or _went_on(turn) or _begun(turn)


def _wait_for_badge(turn: Turn) -> Heard:
    if len(turn.state.waiting) >= MOST_WAITING:
        says = f"{MOST_WAITING} scans wait for a badge already: this one is not kept."
        return Heard(turn.state, Answer("stop", says, "Scan your badge, then scan this again."))
    kept = (*turn.state.waiting, (turn.said.text, turn.facts.at.isoformat()))
    many = "This scan waits" if len(kept) == 1 else f"{len(kept)} scans wait"
    return Heard(
        replace(turn.state, waiting=kept),
        Answer("ask", f"{many}: who are you?", "Scan your badge, and nothing is lost."),
    )


def _recorded_so_far(state: State) -> bool:
    """Say whether what is under way wrote something already: an amount to be put right, a bottle filled."""
    filled = state.waits == "target" and state.bottle != state.slots.get("source")
    return filled or state.waits == "other_amount"


def _answered(turn: Turn) -> Heard | None:
    """A yes to the question that stands; a no, or an undo before anything was recorded, lets it go."""
    state, said = turn.state, turn.said
    recorded_so_far = _recorded_so_far(state)
    if said.command == "undo" and state.verb and not recorded_so_far:
        heard = turn.tell(
            "Nothing was recorded.", "What was asked is let go. UNDO again takes back the act before."
        )
        return (
            replace(heard, state=another.reopened(heard.state, state.slots))
            if "planned" in state.slots
            else heard
        )
    if said.command not in {"yes", "no"}:
        return None
    if not state.verb or recorded_so_far:
        return turn.tell("There is no question to answer.", "Scan the next thing.")
    if said.command == "no" and "planned" in state.slots:
        return another.let_go(turn)
    if said.command == "no":
        return turn.tell("Nothing was recorded.", "Scan the next thing.")
    if state.waits != "yes":
        return turn.again("That needs more than a yes.", "Answer it, or NO to let it go.")
    slots = {name: value for name, value in state.slots.items() if name != "asked"}
    if "asked" in state.slots:
        slots["answered"] = [*slots.get("answered", ()), *str(state.slots["asked"]).split("+")]
    return SETTLE[state.verb](turn, slots)


def _went_on(turn: Turn) -> Heard | None:
    """What is under way takes the line, if it is what it waits for."""
    state, said = turn.state, turn.said
    if not state.verb or state.waits == "yes":
        return None
    if state.verb == weather.NAME:
        return weather.go_on(turn)
    if said.command == "use" and state.verb == "use" and "planned" in state.slots:
        return use.begin(turn, **state.slots)
    if said.command in BEGIN and said.command not in {"done", "already"}:
        return receive.unfinished(turn)
    return GO_ON[state.verb](turn) or receive.unfinished(turn)


def _begun(turn: Turn) -> Heard:
    """A line that begins something: a command, a code, a maker's symbol, an amount of what is in hand."""
    said, idle = turn.said, replace(turn, state=turn.state.idle())
    if said.command in BEGIN:
        return BEGIN[said.command](idle)
    if said.command == "reprint":
        return reprint(idle)
    if said.kind in _CODES:
        return _CODES[said.kind](idle)
    if said.packs:
        return receive.scanned(idle)
    if said.measured:
        return weather.read(idle)
    if (said.amount or said.weight or said.command in {"planned", "finished"}) and turn.bottle:
        kept = turn.state.slots if turn.state.verb == "use" and turn.state.waits == "yes" else {}
        slots = {
            name: value
            for name, value in kept.items()
            if name in another.SLOTS | {"before", "declared", "answered"}
        }
        # What the check asked, it asked of another amount.
        slots["answered"] = [one for one in slots.get("answered", ()) if not one.startswith(CHECK)]
        return use.amount_of(idle, slots) or _lost(turn)
    return _lost(turn)


def _lost(turn: Turn) -> Heard:
    said = turn.said
    if said.number is not None and turn.bottle:
        return turn.unknown(
            f"“{said.text}” alone says nothing here.", "Give its unit, or say USE or COUNT first."
        )
    if said.amount or said.weight or said.number is not None or said.command in {"planned", "finished"}:
        return turn.unknown("Of what? No bottle is in hand.", "Scan the bottle, then the amount.")
    if said.command:
        return turn.unknown(f"{said.text} does not fit here.", "Scan the next thing.")
    if said.error:
        return turn.unknown(said.error, "It is set aside; go on with the next thing.", set_aside=True)
    return turn.unknown(
        f"“{said.text}” is no code, command or amount here.",
        "Scan it again, or type what is printed beside it.",
        Key("Undo", "UNDO"),
        set_aside=True,
    )


_CODES = {
    "container": at_bottle,
    "place": at_place,
    "job": at_job,
    "vehicle": at_job,
    "product": receive.scanned,
    "order": against,
}
