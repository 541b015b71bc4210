"""What a container is, from its lines: one function a kind, played in (happened_at, seq).

Skips reversed lines and their reverses. A line that does not fit what the container is at that moment is
refused by name, so that a late entry or a reverse is accepted only where every later line still stands.
"""

from collections.abc import Callable, Iterable
from dataclasses import replace
from datetime import date, datetime
from typing import cast

from .lines import NEAT, Held, Line, NotHereYet, Parts, Refused, TooLittle

FINAL = "gone"


def fold(code: str, lines: Iterable[Line]) -> Held:
    """Return what container `code` is after its lines, in any order given.

    Raises Refused (with the seq of the line in the way) where a line does not fit.
    """
    state = Held()
    for line in in_force(lines):
        state = step(code, state, line)
    return state


def in_force(lines: Iterable[Line]) -> list[Line]:
    """Return the lines that count, in the order in which things happened."""
    known = list(lines)
    undone = {line.reverses for line in known if line.reverses is not None}
    counted = (line for line in known if line.kind != "reverse" and line.seq not in undone)
    return sorted(counted, key=lambda line: (line.at, line.seq))


def step(code: str, state: Held, line: Line) -> Held:
    """Return the container after one more line; raises Refused where the line does not fit."""
    if line.kind != "receive":
        _must_be_here(code, state, line)
    after = _KINDS[line.kind](code, state, line)
    return replace(after, last_at=line.at, last_seq=line.seq)


def _must_be_here(code: str, state: Held, line: Line) -> None:
    if state.state == "expected":
        raise NotHereYet(f"{code} had not been received by then. Receive it first.", code="early", seq=line.seq)
    if state.state == FINAL:
        raise Refused(f"{code} left the shelf before that. Undo that first.", code="gone", seq=line.seq)


def _receive(code: str, state: Held, line: Line) -> Held:
    if state.state != "expected":
        raise Refused(f"{code} is here already. Scan what you want to do with it.", code="twice", seq=line.seq)
    facts, content = line.facts, _integer(line, "content")
    opened_at, mixed_at = _instant(facts, "opened_at"), _instant(facts, "mixed_at")
    sealed = bool(facts.get("sealed", True))
    return replace(
        state,
        state="empty" if content == 0 else "sealed" if sealed else "open",
        product=_text(facts, "product"),
        parts=_parts(facts),
        lots=frozenset(_texts(facts, "lots")),
        place=line.place,
        content=content,
        received_at=line.at,
        opened_at=None if sealed else opened_at or line.at,
        mixed_at=mixed_at,
        estimated=bool(facts.get("estimated", False)),
        rinsed=content == 0,
    )


def _open(code: str, state: Held, line: Line) -> Held:
    if state.state != "sealed":
        raise Refused(f"{code} is {state.state} already; only a sealed one is opened.", code="open", seq=line.seq)
    return replace(state, state="open", opened_at=line.at)


def _use(code: str, state: Held, line: Line) -> Held:
    left = _less(code, state, line)
    return replace(
        left,
        uses=state.uses + cast(int, line.facts.get("uses", 1)),
        minutes=state.minutes + cast(int, line.facts.get("minutes", 0)),
    )


def _less(code: str, state: Held, line: Line) -> Held:
    amount = line.amount or 0
    if state.state == "sealed":
        raise Refused(f"{code} is still sealed. Open it first.", code="sealed", seq=line.seq)
    if amount > state.content:
        raise TooLittle(f"{code} holds less than that.", code="too_little", seq=line.seq)
    content = state.content - amount
    return replace(state, content=content, state="open" if content else "empty")


def _fill(code: str, state: Held, line: Line) -> Held:
    return _less(code, state, line) if line.source == code else _more(code, state, line)


def _more(code: str, state: Held, line: Line) -> Held:
    facts, product, parts = line.facts, _text(line.facts, "product"), _parts(line.facts)
    fresh = state.content == 0 and state.rinsed
    same = state.product == product and state.parts == parts
    if not fresh and not same:
        raise Refused(
            f"{code} last held something else. Rinse it and scan RINSE, then fill it.",
            code="other_content",
            seq=line.seq,
        )
    if state.state == "sealed":
        raise Refused(f"{code} is a sealed bottle of its maker. Nothing goes into it.", code="sealed", seq=line.seq)
    before = Held() if fresh else state
    return replace(
        state,
        state="open",
        product=product,
        parts=parts,
        lots=before.lots | frozenset(_texts(facts, "lots")),
        content=state.content + _integer(line, "added"),
        opened_at=_earliest(before.opened_at, _instant(facts, "opened_at")),
        mixed_at=_earliest(before.mixed_at, line.at if parts != NEAT else _instant(facts, "mixed_at")),
        estimated=before.estimated or bool(facts.get("estimated", False)),
        retest_on=before.retest_on,
        rinsed=False,
    )


def _rinse(code: str, state: Held, line: Line) -> Held:
    if state.content:
        raise Refused(f"{code} still holds something. Use it, or empty it, then rinse.", code="full", seq=line.seq)
    return Held(state="empty", place=state.place, received_at=state.received_at, uses=state.uses, held=state.held)


def _move(code: str, state: Held, line: Line) -> Held:
    return replace(state, place=line.place)


def _count(code: str, state: Held, line: Line) -> Held:
    content = _integer(line, "content")
    if state.product is None and content:
        raise Refused(f"{code} has never been filled. Fill it first, then count.", code="unfilled", seq=line.seq)
    sealed = state.state == "sealed" and content == state.content
    return replace(
        state,
        content=content,
        state="sealed" if sealed else "open" if content else "empty",
        opened_at=state.opened_at if sealed else state.opened_at or line.at,
    )


def _gone(code: str, state: Held, line: Line) -> Held:
    return replace(state, state=FINAL, content=0)


def _quarantine(code: str, state: Held, line: Line) -> Held:
    return replace(state, held=_text(line.facts, "reason") or "held")


def _release(code: str, state: Held, line: Line) -> Held:
    return replace(state, held="")


def _retest(code: str, state: Held, line: Line) -> Held:
    return replace(state, retest_on=date.fromisoformat(_text(line.facts, "until") or ""))


def _correct(code: str, state: Held, line: Line) -> Held:
    if "lots" in line.facts:
        state = replace(state, lots=frozenset(_texts(line.facts, "lots")))
    if "opened_at" in line.facts:
        state = replace(state, opened_at=_instant(line.facts, "opened_at"), estimated=False)
    return state


_KINDS: dict[str, Callable[[str, Held, Line], Held]] = {
    "receive": _receive,
    "open": _open,
    "use": _use,
    "fill": _fill,
    "rinse": _rinse,
    "move": _move,
    "count": _count,
    "discard": _gone,
    "return": _gone,
    "quarantine": _quarantine,
    "release": _release,
    "retest": _retest,
    "correct": _correct,
}


def _integer(line: Line, name: str) -> int:
    value = line.facts.get(name)
    if not isinstance(value, int) or value < 0:
        raise Refused(f"A {line.kind} line says how much: `{name}`, 0 or more.", code="facts", seq=line.seq)
    return value


def _text(facts: dict[str, object], name: str) -> str | None:
    value = facts.get(name)
    return None if value is None else str(value)


def _texts(facts: dict[str, object], name: str) -> list[str]:
    return [str(value) for value in cast("list[object]", facts.get(name, []))]


def _parts(facts: dict[str, object]) -> Parts:
    product, water = cast("list[int]", facts.get("parts", list(NEAT)))
    return product, water


def _instant(facts: dict[str, object], name: str) -> datetime | None:
    value = facts.get(name)
    return None if value is None else datetime.fromisoformat(str(value))


def _earliest(*instants: datetime | None) -> datetime | None:
    return min((instant for instant in instants if instant), default=None)
