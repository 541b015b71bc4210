"""Use: on a car or in the shop; an amount, as planned, what is left, or by weight before and after."""

from dataclasses import replace
from typing import Any

from inventory.stock.rules.mixes import gross
from inventory.stock.rules.reserve import Need, in_order, serves
from inventory.units import Amount as Base
from inventory.units import AmountError, Dimension, by_density, parse_amount, show

from .. import words
from ..answers import Heard, Key
from ..facts import Bottle
from ..guards import DECLARED, USING, first_objection
from ..objections import Objection, Taking
from ..turn import Turn
from . import another
from .used import FINISHED, NAME, record


def begin(turn: Turn, **slots: Any) -> Heard:
    """USE: ask how much, or for the bottle first."""
    bottle = turn.bottle
    if bottle is None:
        return turn.ask("Use what?", "Scan the bottle.", verb=NAME, waits="bottle", **slots)
    if bottle.product and bottle.product.wears:
        return settle(turn, {"bottle": bottle.code, "amount": 0, "how": "worn", **slots})
    keys = (Key("As planned", "PLANNED", main=True), FINISHED) if need_of(turn, bottle) else (FINISHED,)
    says = f"How much of {words.name(bottle)}? The book says {words.holds(bottle, turn.facts)}."
    if "planned" in slots:
        says = f"How much of {words.name(bottle)} instead of {turn.of(bottle, int(slots['planned']))}?"
    elif turn.job and not need_of(turn, bottle):
        says = f"{words.name(bottle)} is not planned for {turn.job.name}. How much of it?"
    next = "Type the amount, or FINISHED for all of it; by weight: before 412 g, then after 380 g."
    return turn.ask(says, next, *keys, verb=NAME, waits="amount", **slots)


def already(turn: Turn) -> Heard:
    """ALREADY: it is on the car, so it is written down and flagged, whatever the date said."""
    return begin(turn, declared=True)


def go_on(turn: Turn) -> Heard | None:
    """Take the bottle, or the amount in any of its spellings."""
    said, waits, slots = turn.said, turn.state.waits, turn.state.slots
    if waits == "bottle":
        if said.kind != "container" or said.code not in turn.facts.bottles:
            return None
        return begin(replace(turn, state=replace(turn.state, bottle=said.code)), **slots)
    return amount_of(turn, slots)


def amount_of(turn: Turn, slots: dict[str, Any]) -> Heard | None:
    """Return what a line means as an amount of the bottle in hand, or None where it is none."""
    bottle, said = turn.bottle, turn.said
    if bottle is None:
        return None
    if said.command == "planned":
        return planned(turn, bottle, slots)
    if said.command == "finished":
        return settle(
            turn, {**slots, "bottle": bottle.code, "amount": _whole(bottle, slots), "how": "finished"}
        )
    if said.weight:
        return _weighed(turn, bottle, slots)
    if not (said.amount or said.number is not None):
        return None
    try:
        base = words.read_amount_in(said.text, bottle, turn.facts.shop)
    except AmountError as refusal:
        return turn.ask(str(refusal), verb=NAME, waits="amount", **slots)
    return settle(turn, {**slots, "bottle": bottle.code, "amount": base, "how": "measured"})


def on_a_car(turn: Turn, bottle: Bottle) -> Heard:
    """A bottle scanned onto a car: as planned at once where a step wants it, else how much is asked."""
    if bottle.product and bottle.product.wears:
        return settle(turn, {"bottle": bottle.code, "amount": 0, "how": "worn"})
    if need_of(turn, bottle) is not None or _objects(turn, bottle):
        return planned(turn, bottle, {})
    return begin(turn)


def _objects(turn: Turn, bottle: Bottle) -> bool:
    objection = first_objection(_taking(turn, bottle, 0, {}), turn.facts, (), USING)
    return objection is not None and objection.grade == "stop"


def planned(turn: Turn, bottle: Bottle, slots: dict[str, Any]) -> Heard:
    """Take what the step was planned to take and has not had yet."""
    if "planned" in slots:
        if slots["planned"] == (plan := slots.get("plan", slots["planned"])):
            return turn.tell("It is recorded so already.", "Scan the next thing.")
        return settle(turn, {**slots, "bottle": bottle.code, "amount": plan, "how": "planned"})
    need = need_of(turn, bottle)
    base = gross(need.amount, bottle.shelf.parts) if need else 0
    if base > bottle.content:
        base, slots = bottle.content, {**slots, "wanted": base}
    if need is None and turn.job and not _objects(turn, bottle):
        return turn.ask(
            f"No open step of {turn.job.name} plans {words.name(bottle)}.",
            "Type the amount.",
            FINISHED,
            verb=NAME,
            waits="amount",
            **slots,
        )
    if need is None and turn.job is None:
        return turn.ask(
            "As planned for which car?",
            "Scan the job's code first, or type the amount.",
            FINISHED,
            verb=NAME,
            waits="amount",
            **slots,
        )
    return settle(turn, {**slots, "bottle": bottle.code, "amount": base, "how": "planned"})


def need_of(turn: Turn, bottle: Bottle) -> Need | None:
    """Return the car's first open need that a bottle serves: named products before kinds, then by step."""
    mine = [need for need in turn.facts.needs if turn.job and need.job == turn.job.code and need.amount]
    free = replace(bottle.shelf, held="")
    return next((need for need in in_order(mine) if serves(need, free)), None)


def _whole(bottle: Bottle, slots: dict[str, Any]) -> int:
    return another.before(bottle, slots).content


def _weighed(turn: Turn, bottle: Bottle, slots: dict[str, Any]) -> Heard:
    try:
        weight = parse_amount(
            turn.said.amount, dimension=Dimension.MASS, decimal=turn.facts.shop.decimal
        ).base
        if turn.said.weight == "before" or "before" not in slots:
            slots = {**slots, "before": weight}
            says = f"{words.short(bottle.code)} weighs {show(weight, Dimension.MASS)} before."
            return turn.ask(
                says, "Use it, weigh it again, and type: after 380 g.", verb=NAME, waits="amount", **slots
            )
        lost = int(slots["before"]) - weight
        if lost < 0:
            return turn.again("It weighs more than before.", "Weigh it again, and type: after 380 g.")
        wanted = Dimension(bottle.product.dimension if bottle.product else Dimension.MASS)
        density = bottle.product.density_mg_per_l if bottle.product else None
        base = by_density(Base(lost, Dimension.MASS), wanted, density).base if lost else 0
    except AmountError as refusal:
        return turn.ask(str(refusal), verb=NAME, waits="amount", **slots)
    left = {name: value for name, value in slots.items() if name != "before"}
    return settle(turn, {**left, "bottle": bottle.code, "amount": base, "how": "weighed"})


def settle(turn: Turn, slots: dict[str, Any]) -> Heard:
    """Ask what must be asked, stop what must be stopped, else write it."""
    bottle = another.before(turn.facts.bottles[slots["bottle"]], slots)
    taking = _taking(turn, bottle, slots["amount"], slots)
    guards = DECLARED if slots.get("declared") else USING
    objection = first_objection(taking, turn.facts, slots.get("answered", ()), guards)
    if objection is None:
        return record(turn, taking, slots)
    if objection.grade == "stop":
        return _stopped(turn, taking, objection, slots)
    return turn.ask(
        objection.says,
        objection.next,
        *objection.keys,
        verb=NAME,
        waits="yes",
        **{**slots, "step": taking.step, "asked": objection.code},
    )


def _stopped(turn: Turn, taking: Taking, objection: Objection, slots: dict[str, Any]) -> Heard:
    """Refuse. Where another amount was refused, the recorded one stays, and may still be put right."""
    keys = (*objection.keys, Key("It is on the car already", "ALREADY")) if turn.job else objection.keys
    heard = turn.stop(objection.says, objection.next, *(keys if objection.code != "gone" else ()))
    if not (recorded := int(slots.get("planned", 0))):
        return heard
    says = f"{objection.next} {turn.of(taking.bottle, recorded)} stay recorded: type another amount, or UNDO."
    state = another.reopened(heard.state, slots)
    return replace(heard, state=state, answer=replace(heard.answer, next=says))


def _taking(turn: Turn, bottle: Bottle, amount: int, slots: dict[str, Any]) -> Taking:
    need, at_hand = need_of(turn, bottle), turn.job.at_hand(turn.facts.at) if turn.job else None
    step = turn.facts.step_of.get(need.id, "") if need else at_hand.code if at_hand else ""
    more = amount - int(slots.get("planned", 0))
    planned = (need is not None and more <= gross(need.amount, bottle.shelf.parts)) or more <= 0 < amount
    answered = frozenset(map(str, slots.get("answered", ())))
    step = slots.get("step") or step
    return Taking(bottle, amount, turn.job, step, turn.state.who, planned, answered)
