"""Rinse: what was in it is gone, so that something else may go in: a bottle, a car's floor, a waste can."""

from typing import Any

from inventory.stock.rules.acts import Act

from .. import words
from ..answers import Heard, Key
from ..facts import JobFacts, PlaceFacts, StepFacts
from ..guards import YES
from ..turn import Turn
from .with_bottle import in_hand, next_bottle

NAME = "rinse"
# The step that a rinse without a plan becomes, and its stage in a job without steps.
ADDED, FIRST = "Rinse to a clear drain", "wash"


def begin(turn: Turn) -> Heard:
    """RINSE: the car in hand, or a bottle of our own.

    A bottle that is empty wants rinsing itself; a full one only where nothing on the car does.
    """
    bottle = turn.bottle
    ours = bottle is not None and bottle.refillable
    if turn.job and (not ours or (bottle and bottle.content and turn.facts.unrinsed)):
        return _the_car(turn, turn.job)
    return the_bottle(turn)


def the_bottle(turn: Turn) -> Heard:
    """RINSE BOTTLE: the bottle in hand, whatever is on the car.

    What is left in it is poured away only where the person says so.
    """
    bottle = turn.bottle
    if bottle is None:
        return in_hand(turn, NAME, "Rinse what?")
    if bottle.state == "gone":
        return turn.stop(
            f"{words.name(bottle)} was booked out of the shop.", "If it is here after all: UNDO that entry."
        )
    if not bottle.content and not bottle.refillable:
        return turn.stop(
            f"{words.name(bottle)} is a maker's: nothing goes into it again.",
            "DISCARD it. Only refillable bottles are rinsed here.",
            Key("Discard it", "DISCARD"),
        )
    if bottle.content and not bottle.refillable:
        return turn.stop(
            f"{words.name(bottle)} still holds {words.holds(bottle, turn.facts)}.",
            "Use it up, or DISCARD it.",
            Key("Discard it", "DISCARD"),
        )
    if bottle.content:
        says = f"{words.name(bottle)} still holds {words.holds(bottle, turn.facts)}. Pour it away and rinse?"
        next = "Down which drain: the data sheet's section 13 says. YES when it is rinsed."
        return turn.ask(
            says, next, Key("Yes, poured away", YES, main=True), Key("No", "NO"), verb=NAME, waits="yes"
        )
    return settle(turn, {})


def go_on(turn: Turn) -> Heard | None:
    """Take the bottle."""
    return next_bottle(turn, the_bottle)


def settle(turn: Turn, slots: dict[str, Any]) -> Heard:
    """Write it."""
    if "place" in slots:
        return _emptied(turn, turn.facts.places[slots["place"]])
    bottle = turn.bottle
    assert bottle is not None
    poured = Act("count", turn.facts.at, target=bottle.code, amount=0, facts={"poured_away": True})
    acts = (*((poured,) if bottle.content else ()), Act("rinse", turn.facts.at, target=bottle.code))
    return turn.recorded(
        f"Rinsed {words.short(bottle.code)}. It may take anything now.",
        "Scan what it is filled from, then FILL.",
        Key("Undo", "UNDO"),
        acts=acts,
        what=f"the rinsing of {bottle.noun} {words.short(bottle.code)}",
    )


def at_can(turn: Turn, can: PlaceFacts) -> Heard:
    """A can by itself: what is in it, and whether it was emptied and rinsed."""
    if not can.holds:
        return turn.tell(f"{can.name} is empty by the book.", "Scan what is tipped in, then the can.")
    says = f"{can.name} holds {' and '.join(can.holds)}. Was it emptied and rinsed?"
    yes, no = Key("Yes, emptied and rinsed", YES), Key("No", "NO", main=True)
    next = "Section 13 of each data sheet says where it goes. YES once it is rinsed to clear water."
    return turn.ask(says, next, yes, no, verb=NAME, waits="yes", place=can.code)


def _emptied(turn: Turn, can: PlaceFacts) -> Heard:
    effect = {"does": "emptied", "place": can.code, "at": turn.facts.at.isoformat()}
    return turn.recorded(
        f"{can.name} is emptied and rinsed. It may take anything now.",
        "Scan the next thing.",
        Key("Undo", "UNDO"),
        effects=(effect,),
        what=f"the emptying of {can.name}",
    )


def _the_car(turn: Turn, job: JobFacts) -> Heard:
    """Sign the car's planned rinse; where none is left in the plan, add one that is done now."""
    planned = job.rinse
    effect = _signed(job, planned) if planned else _added(turn, job)
    name = planned.name if planned else ADDED
    says = (
        f"Signed a rinse to a clear drain on {job.name}. Nobody had planned it: the job has it as done now."
    )
    if planned:
        says = f"Signed {name} on {job.name}: rinsed to a clear drain."
    bottle = turn.bottle
    keys = (Key("Rinse the bottle", "RINSE BOTTLE"),) if bottle and bottle.refillable else ()
    out = f" RINSE BOTTLE rinses out {words.name(bottle)}." if bottle and keys else ""
    return turn.recorded(
        says,
        f"What comes after it may begin.{out}",
        Key("Undo", "UNDO"),
        *keys,
        effects=(effect,),
        what=f"the signature under {name} on {job.name}",
    )


def _signed(job: JobFacts, step: StepFacts) -> dict[str, Any]:
    return {"does": "sign", "job": job.code, "steps": [step.code], "needs": []}


def _added(turn: Turn, job: JobFacts) -> dict[str, Any]:
    now = job.at_hand(turn.facts.at) or next(reversed(job.steps), None)
    at, place = turn.facts.at.isoformat(), turn.state.place or turn.facts.station_at
    stage = now.stage if now else FIRST
    return {
        "does": "rinsed", "job": job.code, "name": ADDED, "stage": stage, "place": place, "at": at,
    }  # fmt: skip
