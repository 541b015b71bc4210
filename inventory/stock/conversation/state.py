"""Where a station's conversation stands: who, where, which car, which bottle, what it waits for."""

from dataclasses import asdict, dataclass, field, fields, replace
from typing import Any, Self

# So many acts can be taken back one after another by one person.
REMEMBERED = 20


@dataclass(frozen=True)
class Done:
    """One act of one person at this station: its ledger lines, what else it changed, what it was in words."""

    who: str
    seqs: tuple[int, ...]
    what: str
    effects: tuple[dict[str, Any], ...] = field(default=(), hash=False)


@dataclass(frozen=True)
class State:
    """Codes and plain values only, so that it can be kept as JSON between two scans.

    `verb` is what is under way, `waits` what it waits for ("amount", "lot", "yes" …), `slots` what it knows.
    `delivery` lasts over several products: place, order, the last pack. `waiting` holds [line, instant] pairs
    that were scanned before a badge.
    """

    who: str = ""
    place: str = ""
    job: str = ""
    bottle: str = ""
    verb: str = ""
    waits: str = ""
    slots: dict[str, Any] = field(default_factory=dict, hash=False)
    delivery: dict[str, Any] = field(default_factory=dict, hash=False)
    waiting: tuple[tuple[str, str], ...] = ()
    done: tuple[Done, ...] = field(default=(), hash=False)

    def as_json(self) -> dict[str, Any]:
        """Return plain JSON values; `from_json` gives an equal state back."""
        return asdict(self)

    @classmethod
    def from_json(cls, kept: dict[str, Any]) -> Self:
        """Return the state that was kept; what this version does not know is dropped."""
        known = {each.name: kept[each.name] for each in fields(cls) if each.name in kept}
        known["waiting"] = tuple((line, at) for line, at in known.get("waiting", ()))
        known["done"] = tuple(
            Done(each["who"], tuple(each["seqs"]), each["what"], tuple(each["effects"]))
            for each in known.get("done", ())
        )
        return cls(**known)

    def idle(self, **changes: Any) -> Self:
        """Return this state with nothing under way."""
        return replace(self, **{"verb": "", "waits": "", "slots": {}, **changes})

    def remember(self, done: Done) -> Self:
        """Return this state with one more act that can be taken back."""
        return replace(self, done=(*self.done, done)[-REMEMBERED:])

    @property
    def last_done(self) -> Done | None:
        """What the person at the station did last here."""
        return next((each for each in reversed(self.done) if each.who == self.who), None)

    def without(self, done: Done) -> Self:
        """Return this state without an act that was taken back."""
        return replace(self, done=tuple(each for each in self.done if each != done))
