"""What a lot's dates are, from the ledger's lines about it: the first date printed, then corrections."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from typing import Any

from .fold import in_force
from .lines import Line, Refused

DATES = ("expires_on", "best_before_on", "made_on")


@dataclass(frozen=True)
class LotState:
    """The dates of a batch, and why it must not be used, if so."""

    expires_on: date | None = None
    best_before_on: date | None = None
    made_on: date | None = None
    retest_on: date | None = None
    held: str = ""
    recalled: bool = False


def fold_lot(lines: Iterable[Line]) -> LotState:
    """Return a lot after its lines."""
    state = LotState()
    for line in in_force(lines):
        state = step_lot(state, line)
    return state


def step_lot(state: LotState, line: Line) -> LotState:
    """Return a lot after one more line about it; lines that only touch a bottle of it change nothing."""
    facts = line.facts
    if line.kind == "receive":
        printed: dict[str, Any] = {
            name: _day(facts, name) for name in DATES if getattr(state, name) is None and name in facts
        }
        return replace(state, **printed)
    if line.target or line.source:
        return state
    if line.kind == "correct":
        corrected: dict[str, Any] = {name: _day(facts, name) for name in DATES if name in facts}
        return replace(state, **corrected)
    if line.kind == "quarantine":
        if state.held:
            raise Refused(
                f"The lot is held already: {state.held}. An owner releases it first.",
                code="held",
                seq=line.seq,
            )
        return replace(state, held=str(facts.get("reason") or "held"), recalled=bool(facts.get("recalled")))
    if line.kind == "release":
        return replace(state, held="", recalled=False)
    if line.kind == "retest":
        until = _day(facts, "until")
        if until is None:
            raise Refused("A retest names the day until which it holds: `until`.", code="facts", seq=line.seq)
        return replace(state, retest_on=until)
    return state


def _day(facts: dict[str, object], name: str) -> date | None:
    value = facts.get(name)
    return date.fromisoformat(str(value)) if value else None
