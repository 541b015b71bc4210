"""What the station says back: one sentence with a grade, what to do next, and the keys for it."""

from dataclasses import dataclass, field
from typing import Any

from inventory.stock.rules.acts import Act

from .state import State

RECORDED, ASK, STOP, UNKNOWN, TELL = "recorded", "ask", "stop", "unknown", "tell"


@dataclass(frozen=True)
class Key:
    """A key on screen: says its line when tapped; a line that ends in "…" is finished on the pad.

    `page` names a page instead, with its argument, where something is done elsewhere (a label, a product).
    """

    label: str
    line: str = ""
    main: bool = False
    page: str = ""
    about: str = ""


@dataclass(frozen=True)
class Answer:
    """One sentence (`says`), its grade, the next sentence, the keys. `opens` names a panel of the page."""

    grade: str
    says: str
    next: str = ""
    keys: tuple[Key, ...] = ()
    opens: str = ""
    labels: bool = False


@dataclass(frozen=True)
class Heard:
    """The state after a line, the answer, and what to write: ledger acts, and effects beside the ledger.

    Effects are plain values: {"does": "order_line", "id", "received"?, "damaged"?, "wrong"?,
    "closed_short"?}, {"does": "sign", "job", "steps", "needs"}, {"does": "rinsed", "job",
    "name", "stage", "place", "at"}, {"does": "wash", "container", "at"} and
    {"does": "answer", "job", "code", "about", "says"}. `what` says in words what undo would take back.
    `replay` lists the [line, instant] pairs that had waited for the badge; `undoes`: the reverses take back
    the last act; `keeps`: lines of an act that this one replaces in part.
    """

    state: State
    answer: Answer
    acts: tuple[Act, ...] = ()
    effects: tuple[dict[str, Any], ...] = field(default=(), hash=False)
    what: str = ""
    about: str = ""
    set_aside: bool = False
    undoes: bool = False
    keeps: tuple[int, ...] = ()
    replay: tuple[tuple[str, str], ...] = ()
