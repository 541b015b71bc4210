"""What a container is, from its lines: one function a kind, played in (happened_at, seq).

Skips reversed lines and their reverses. A line that does not fit what the container is at that moment is
refused by name, so that a late entry or a reverse is accepted only where every later line still stands.
"""

from collections.abc import Callable, Iterable
from dataclasses import replace
from typing import cast

from inventory.codes import pair

from .facts import day, earliest, instant, integer, parts_of, text, texts
from .lines import NEAT, Held, Line, NotHereYet, Refused, TooLittle

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
        raise NotHereYet(
            f"{pair(code)} had not been received by then. Receive it first.", code="early", seq=line.seq
        )
    if state.state == FINAL:
        raise Refused(f"{pair(code)} left the shelf before that. Undo that first.", code="gone", seq=line.seq)


def _receive(code: str, state: Held, line: Line) -> Held:
    if state.state != "expected":
        raise Refused(
            f"{pair(code)} is here already. Scan what you want to do with it.", code="twice", seq=line.seq
        )
    facts, content = line.facts, integer(line, "content")
    opened_at, mixed_at = instant(facts, "opened_at"), instant(facts, "mixed_at")
    sealed = bool(facts.get("sealed", True))
    return replace(
        state,
        state="empty" if content == 0 else "sealed" if sealed else "open",
        product=text(facts, "product"),
        parts=parts_of(facts),
        lots=frozenset(texts(facts, "lots")),
        place=line.place,
        content=content,
        received_at=line.at,
        opened_at=None if sealed or content == 0 else opened_at or line.at,
        mixed_at=mixed_at,
        estimated=bool(facts.get("estimated", False)),
        rinsed=content == 0 and facts.get("product") is None,
    )


def _open(code: str, state: Held, line: Line) -> Held:
    if state.state != "sealed":
        raise Refused(
            f"{pair(code)} is {state.state} already; only a sealed one is opened.", code="open", seq=line.seq
        )
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
    if amount < 0:
        raise Refused("Less than nothing cannot be taken. Say how much came out.", code="facts", seq=line.seq)
    if state.state == "sealed":
        raise Refused(f"{pair(code)} is still sealed. Open it first.", code="sealed", seq=line.seq)
    if amount > state.content:
        raise TooLittle(f"{pair(code)} holds less than that.", code="too_little", seq=line.seq)
    content = state.content - amount
    return replace(state, content=content, state="open" if content else "empty")


def _fill(code: str, state: Held, line: Line) -> Held:
    if line.source == line.target:
        raise Refused(
            f"{pair(code)} cannot be filled from itself. Scan the other bottle.", code="itself", seq=line.seq
        )
    return _less(code, state, line) if line.source == code else _more(code, state, line)


def _more(code: str, state: Held, line: Line) -> Held:
    facts, product, parts = line.facts, text(line.facts, "product"), parts_of(line.facts)
    if state.state == "sealed":
        raise Refused(
            f"{pair(code)} is a sealed bottle of its maker. Nothing goes into it.",
            code="sealed",
            seq=line.seq,
        )
    fresh = state.content == 0 and state.rinsed
    if not fresh and (state.product, state.parts) != (product, parts):
        says = f"{pair(code)} last held something else. Rinse it and scan RINSE, then fill it."
        raise Refused(says, code="other_content", seq=line.seq)
    before = Held() if fresh else state
    opened_at = instant(facts, "opened_at")
    opened_first = before.opened_at is not None and (opened_at is None or before.opened_at <= opened_at)
    return replace(
        state,
        state="open",
        product=product,
        parts=parts,
        lots=before.lots | frozenset(texts(facts, "lots")),
        content=state.content + integer(line, "added"),
        opened_at=earliest(before.opened_at, opened_at),
        mixed_at=earliest(
            before.mixed_at, instant(facts, "mixed_at") or (line.at if parts != NEAT else None)
        ),
        estimated=before.estimated if opened_first else bool(facts.get("estimated", False)),
        held=state.held or text(facts, "held") or "",
        retest_on=day(facts, "retest_on"),
        rinsed=False,
    )


def _rinse(code: str, state: Held, line: Line) -> Held:
    if state.content:
        raise Refused(
            f"{pair(code)} still holds something. Use it, or empty it, then rinse.", code="full", seq=line.seq
        )
    return Held(
        state="empty", place=state.place, received_at=state.received_at, held=state.held,
        uses=state.uses, minutes=state.minutes,
    )  # fmt: skip


def _move(code: str, state: Held, line: Line) -> Held:
    return replace(state, place=line.place)


def _count(code: str, state: Held, line: Line) -> Held:
    content = integer(line, "content")
    if state.product is None and content:
        raise Refused(
            f"{pair(code)} has never been filled. Fill it first, then count.", code="unfilled", seq=line.seq
        )
    sealed = state.state == "sealed" and content == state.content
    return replace(
        state,
        content=content,
        state="sealed" if sealed else "open" if content else "empty",
        opened_at=state.opened_at if sealed or state.product is None else state.opened_at or line.at,
        rinsed=state.rinsed and content == 0,
    )


def _gone(code: str, state: Held, line: Line) -> Held:
    return replace(state, state=FINAL, content=0)


def _quarantine(code: str, state: Held, line: Line) -> Held:
    if state.held:
        # A second reason in place of the first would leave with the first one's release.
        raise Refused(
            f"{pair(code)} is held already: {state.held}. An owner releases it first.",
            code="held",
            seq=line.seq,
        )
    return replace(state, held=text(line.facts, "reason") or "held")


def _release(code: str, state: Held, line: Line) -> Held:
    return replace(state, held="")


def _retest(code: str, state: Held, line: Line) -> Held:
    until = day(line.facts, "until")
    if until is None:
        raise Refused("A retest names the day until which it holds: `until`.", code="facts", seq=line.seq)
    return replace(state, retest_on=until)


def _correct(code: str, state: Held, line: Line) -> Held:
    if "lots" in line.facts:
        state = replace(state, lots=frozenset(texts(line.facts, "lots")))
    if "opened_at" in line.facts:
        if state.state == "sealed":
            raise Refused(f"{pair(code)} is still sealed. Open it first.", code="sealed", seq=line.seq)
        state = replace(state, opened_at=instant(line.facts, "opened_at"), estimated=False)
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
