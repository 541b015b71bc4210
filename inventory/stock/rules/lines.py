"""The values that the ledger's rules work on: a line as it was recorded, and what a container is after it."""

from dataclasses import dataclass, field
from datetime import date, datetime

Parts = tuple[int, int]
NEAT: Parts = (1, 0)


@dataclass(frozen=True)
class Line:
    """One line of the ledger, in codes; `amount` in the source's base unit, instants aware.

    `facts` by kind: receive {content, product, parts, lots, sealed, opened_at?, estimated?, mixed_at?};
    fill {added, product, parts, lots, opened_at?, mixed_at?}; count {content}; quarantine {reason};
    retest {until, test, evidence}; correct {…the field and its new value}; use {minutes?, uses?, measured,
    assumed, part?}; `part`: the step wanted more than the bottle gave, and another one gives the rest.
    """

    seq: int
    kind: str
    at: datetime
    source: str | None = None
    target: str | None = None
    lot: str | None = None
    place: str | None = None
    amount: int | None = None
    reverses: int | None = None
    facts: dict[str, object] = field(default_factory=dict, hash=False)


@dataclass(frozen=True)
class Held:
    """What one container is, after its lines: a copy of this stands beside the container."""

    state: str = "expected"
    product: str | None = None
    parts: Parts = NEAT
    lots: frozenset[str] = frozenset()
    place: str | None = None
    content: int = 0
    received_at: datetime | None = None
    opened_at: datetime | None = None
    mixed_at: datetime | None = None
    estimated: bool = False
    held: str = ""
    uses: int = 0
    minutes: int = 0
    retest_on: date | None = None
    rinsed: bool = True
    last_at: datetime | None = None
    last_seq: int = 0


class Refused(Exception):
    """The ledger refuses a line; the text is a whole sentence with the way out."""

    def __init__(self, says: str, *, code: str = "refused", seq: int | None = None) -> None:
        super().__init__(says)
        self.says, self.code, self.seq = says, code, seq


class NotHereYet(Refused):
    """Something would happen to a container before it was received."""


class TooLittle(Refused):
    """More would be taken than the book holds; counting first is the way out."""
