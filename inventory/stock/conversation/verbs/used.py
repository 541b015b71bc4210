"""What a use writes, and what is said of it."""

from dataclasses import replace
from typing import Any

from inventory.stock.rules.acts import Act

from .. import words
from ..answers import Heard, Key
from ..facts import Bottle
from ..guards import CHECK, concerns
from ..instead import next_bottle
from ..objections import Taking
from ..turn import Turn
from . import another

NAME = another.NAME
FINISHED = Key("Bottle finished", "FINISHED")


def record(turn: Turn, taking: Taking, slots: dict[str, Any]) -> Heard:
    """Write a use: a count first where there was more than booked, a reverse where it is put right."""
    bottle, how = taking.bottle, str(slots["how"])
    replaced = turn.state.last_done if "planned" in slots else None
    back = another.seqs_back(replaced.seqs, slots) if replaced else ()
    facts: dict[str, object] = {"measured": how in {"measured", "weighed"}}
    if how == "planned":
        facts["assumed"] = True
    for fact in ("declared", "answered"):
        if slots.get(fact):
            facts[fact] = slots[fact]
    if _wanted(taking, slots):
        facts["part"] = True
    acts = [Act("reverse", turn.facts.at, reverses=seq) for seq in back]
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
    if replaced is None:
        return heard
    keeps = replaced.seqs[: len(replaced.seqs) - len(back)]
    return replace(heard, keeps=keeps, state=heard.state.without(replaced))


def _wanted(taking: Taking, slots: dict[str, Any]) -> int:
    """Return what the step still wants where the bottle held less."""
    return max(0, int(slots.get("wanted", 0)) - taking.amount)


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
    what = f"{turn.of(bottle, taking.amount)} of {named}"
    state, next, keys = turn.state.idle(bottle=bottle.code), "", _after_keys(bottle, left)
    if slots["how"] == "planned" or "planned" in slots:
        added = max(0, taking.amount - bottle.content)
        state = another.waiting(turn.state, taking, slots, added)
        next = "Took another amount? Type it."
    if "planned" in slots:
        next = "Another amount takes its place, too. To add to it, scan the bottle again."
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
    if _wanted(taking, slots):
        next, keys = _from_the_next(turn, taking, keys)
    says = f"{named}: {_took(turn, taking, slots, left)}."
    return turn.recorded(says, next, *keys, acts=acts, what=what, state=state)


def _took(turn: Turn, taking: Taking, slots: dict[str, Any], left: int) -> str:
    """Return what was taken, instead of what, what is left, and what the step still wants."""
    bottle, wanted = taking.bottle, _wanted(taking, slots)
    took = f"took {turn.of(bottle, taking.amount)}"
    rest = f"{turn.of(bottle, left)} left" if left else "it is empty"
    if wanted and not left:
        rest = "all it holds by the book"
    elif slots["how"] == "planned":
        took += " as planned"
    if "planned" in slots:
        took += f" instead of {turn.of(bottle, int(slots['planned']))}"
    return f"{took}, {rest}; {turn.of(bottle, wanted)} are still wanted" if wanted else f"{took}, {rest}"


def _from_the_next(turn: Turn, taking: Taking, keys: tuple[Key, ...]) -> tuple[str, tuple[Key, ...]]:
    """Return where the rest comes from: the next bottle, of the same lot where a step keeps to one."""
    other = next_bottle(taking, turn.facts)
    if other is None:
        return "No other bottle here may give it. If this one gave more: type how much.", keys
    where = f" from {other.place_name}" if other.place_name else ""
    key = Key(f"Use {words.short(other.code)}", other.code, main=True)
    others = tuple(replace(one, main=False) for one in keys)
    way = f"Scan the next bottle, {words.short(other.code)}{where}, or type how much it really gave."
    return way, (key, *others)


def _after_keys(bottle: Bottle, left: int) -> tuple[Key, ...]:
    if left:
        return (Key("Another amount", "USE"), FINISHED, Key("Undo", "UNDO"))
    return (
        *((Key("Rinse it", "RINSE", main=True),) if bottle.refillable else ()),
        Key("Discard it", "DISCARD"),
        Key("Undo", "UNDO"),
    )
