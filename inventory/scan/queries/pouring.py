"""What somebody is about to pour onto the car in hand, as far as the plan does not hold it.

What the stage at hand plans by its name is judged with the plan, once a car. All else is judged by itself: a
bottle that nobody planned, one that serves "any" of its kind, one of a later stage, and more than planned.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime

from inventory.models import Container, Product, Step
from inventory.precheck import queries as precheck
from inventory.stock.conversation import Heard, Said, State
from inventory.stock.conversation.facts import Bottle, Facts
from inventory.stock.rules.at_hand import at_hand
from inventory.stock.rules.mixes import share
from inventory.stock.rules.reserve import Need, in_order, serves

USING = frozenset({"use", "planned", "finished", "yes"})


def in_hand(
    state: State, said: Said, facts: Facts, steps: Sequence[Step], rows: Iterable[Container]
) -> precheck.Pouring | None:
    """Return what a line is about to pour, before its amount is known; None where the plan holds it."""
    code = bottle_in_hand(state, said)
    bottle, product = facts.bottles.get(code), product_of(code, rows)
    if not (uses(state, said) and bottle and product and bottle.content):
        return None
    now = _now(steps, facts.at)
    need = next(iter(_needs(facts, state, bottle)), None)
    if need is None:
        return precheck.Pouring(product, step=now.code if now else "")
    step = next((row for row in steps if row.code == facts.step_of.get(need.id)), None)
    if need.product and step and now and step.stage == now.stage:
        return None
    return precheck.Pouring(product, step=step.code if step else "")


def more_than_planned(
    state: State, heard: Heard, facts: Facts, rows: Iterable[Container]
) -> precheck.Pouring | None:
    """Return what an answer writes, or asks about, beyond what its step plans; None where that is nothing.

    Amounts are concentrate. What is taken back in the same breath counts off.
    """
    taking = _written(state, heard) or _asked_about(heard)
    bottle = facts.bottles.get(taking.bottle) if taking else None
    product = product_of(bottle.code, rows) if bottle else None
    if taking is None or bottle is None or product is None:
        return None
    more = share(taking.amount, bottle.shelf.parts) - share(taking.back, bottle.shelf.parts)
    mine = (need for need in facts.needs if need.job == heard.state.job and _fits(need, bottle))
    planned = sum(need.amount for need in mine if facts.step_of.get(need.id) == taking.step)
    return precheck.Pouring(product, more, taking.step) if more > planned else None


@dataclass(frozen=True)
class _Taking:
    bottle: str
    amount: int
    back: int
    step: str


def _written(state: State, heard: Heard) -> _Taking | None:
    """Return what is written of a bottle for a car; what is declared is on it already, whatever is said."""
    use = next((act for act in heard.acts if act.kind == "use" and act.job), None)
    if use is None or use.facts.get("declared"):
        return None
    replaces = any(act.kind == "reverse" for act in heard.acts)
    back = int(state.slots.get("planned", 0)) if replaces else 0
    return _Taking(use.source or "", use.amount or 0, back, use.step or "")


def _asked_about(heard: Heard) -> _Taking | None:
    """Return what a yes would write: the question is put with what so much of it would do."""
    state, slots = heard.state, heard.state.slots
    if state.verb != "use" or state.waits != "yes" or not state.job or slots.get("declared"):
        return None
    step = str(slots.get("step", ""))
    return _Taking(str(slots["bottle"]), int(slots["amount"]), int(slots.get("planned", 0)), step)


def product_of(code: str, rows: Iterable[Container]) -> Product | None:
    """Return what is in a bottle."""
    return next((row.product for row in rows if row.code == code and row.product), None)


def bottle_in_hand(state: State, said: Said) -> str:
    """Return the code of the bottle that a line is about."""
    return said.code if said.kind == "container" else str(state.slots.get("bottle") or state.bottle)


def step_of(state: State, said: Said, facts: Facts) -> str:
    """Return the code of the step that plans what is in hand, "" where none does."""
    bottle = facts.bottles.get(bottle_in_hand(state, said))
    need = next(iter(_needs(facts, state, bottle)), None) if bottle and bottle.content else None
    waiting = "" if said.kind == "container" else str(state.slots.get("step") or "")
    return waiting or (facts.step_of.get(need.id, "") if need else "")


def uses(state: State, said: Said) -> bool:
    """Say whether a line takes something out of a bottle, or brings one to the car in hand."""
    if state.verb not in {"", "use"} or state.slots.get("declared"):
        return False
    amount = said.amount or said.weight or said.number is not None
    return bool(said.kind == "container" or said.command in USING or amount)


def _now(steps: Sequence[Step], at: datetime) -> Step | None:
    return at_hand([row for row in steps if row.signed_at is None], at)


def _needs(facts: Facts, state: State, bottle: Bottle) -> list[Need]:
    mine = [need for need in facts.needs if need.job == state.job and need.amount]
    return [need for need in in_order(mine) if _fits(need, bottle)]


def _fits(need: Need, bottle: Bottle) -> bool:
    return serves(need, replace(bottle.shelf, held=""))
