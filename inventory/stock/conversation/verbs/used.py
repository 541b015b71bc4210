"""What a use writes, and what is said of it."""

from dataclasses import replace
from typing import Any

from inventory.stock.rules.acts import Act

from .. import words
from ..answers import Heard, Key
from ..facts import Bottle
from ..guards import CHECK, concerns
from ..objections import Taking
from ..turn import Turn

NAME = "use"
FINISHED = Key("Bottle finished", "FINISHED")


def record(turn: Turn, taking: Taking, slots: dict[str, Any]) -> Heard:
    """Write a use: a count first where there was more than booked, a reverse where it is put right."""
    bottle, how = taking.bottle, str(slots["how"])
    replaced = turn.state.last_done if slots.get("planned") else None
    facts: dict[str, object] = {"measured": how in {"measured", "weighed"}}
    if how == "planned":
        facts["assumed"] = True
    for fact in ("declared", "answered"):
        if slots.get(fact):
            facts[fact] = slots[fact]
    acts = [Act("reverse", turn.facts.at, reverses=replaced.seqs[-1])] if replaced else []
    content = bottle.content
    if taking.amount > content:
        acts.append(Act("count", turn.facts.at, target=bottle.code, amount=taking.amount))
        content = taking.amount
    job = taking.job.code if taking.job else None
    acts.append(
        Act(
            "use",
            turn.facts.at,
            source=bottle.code,
            amount=taking.amount,
            job=job,
            step=taking.step or None,
            facts=facts,
        )
    )
    heard = replace(
        _said(turn, taking, slots, content - taking.amount, tuple(acts)),
        effects=_answers(turn, taking, slots),
    )
    return (
        replace(heard, keeps=replaced.seqs[:-1], state=heard.state.without(replaced)) if replaced else heard
    )


def _answers(turn: Turn, taking: Taking, slots: dict[str, Any]) -> tuple[dict[str, Any], ...]:
    """Return what was answered to the pre-job check, so that it is not asked again for this car."""
    said = set(slots.get("answered", ()))
    return tuple(
        {
            "does": "answer",
            "job": turn.state.job,
            "code": found.code,
            "about": list(found.about),
            "says": found.says,
        }
        for found in turn.facts.findings
        if found.grade == "ask" and CHECK + found.code in said and concerns(found, taking)
    )


def _said(turn: Turn, taking: Taking, slots: dict[str, Any], left: int, acts: tuple[Act, ...]) -> Heard:
    bottle, named = taking.bottle, words.name(taking.bottle)
    if slots["how"] == "worn":
        limit = bottle.product.wear_uses if bottle.product else None
        of = f" of {limit}" if limit else ""
        return turn.recorded(f"{named}: use {bottle.uses + 1}{of}.", acts=acts, what=f"a use of {named}")
    took = f"took {turn.of(bottle, taking.amount)}{' as planned' if slots['how'] == 'planned' else ''}"
    rest = f"{turn.of(bottle, left)} left" if left else "it is empty"
    what = f"{turn.of(bottle, taking.amount)} of {named}"
    state, next, keys = turn.state.idle(bottle=bottle.code), "", _after_keys(bottle, left)
    if slots["how"] == "planned":
        # What the check asked was of this amount, and is kept with the job.
        kept = [one for one in slots.get("answered", ()) if one != "too_little" and not one.startswith(CHECK)]
        waiting = {"bottle": bottle.code, "planned": taking.amount, "step": taking.step, "answered": kept}
        state = replace(turn.state, bottle=bottle.code, verb=NAME, waits="other_amount", slots=waiting)
        next = "Took another amount? Type it."
    if slots.get("declared"):
        next = "Written down as already used, and flagged for the owner."
    if bottle.state == "sealed":
        next = f"That opened it. {next}".strip()
    if not left:
        next = (
            "Nothing left in the book. RINSE it, or DISCARD it."
            if bottle.refillable
            else "If some is left: COUNT. If not: DISCARD."
        )
    return turn.recorded(f"{named}: {took}, {rest}.", next, *keys, acts=acts, what=what, state=state)


def _after_keys(bottle: Bottle, left: int) -> tuple[Key, ...]:
    if left:
        return (Key("Another amount", "USE"), FINISHED, Key("Undo", "UNDO"))
    return (
        *((Key("Rinse it", "RINSE", main=True),) if bottle.refillable else ()),
        Key("Discard it", "DISCARD"),
        Key("Undo", "UNDO"),
    )
