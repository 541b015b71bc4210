"""What a feature asks the ledger to write: values in codes, made by rules, written by `stock.ledger`."""

from dataclasses import dataclass, field
from datetime import date, datetime

from .lines import NEAT, Parts


@dataclass(frozen=True)
class LotFacts:
    """What is printed on a bottle about its batch; an empty number means "not given"."""

    number: str = ""
    expires_on: date | None = None
    best_before_on: date | None = None
    made_on: date | None = None


@dataclass(frozen=True)
class NewBottle:
    """A container that a receive brings: its own code (drawn by the ledger if empty), size and content."""

    product: str | None
    full: int
    noun: str = "bottle"
    code: str = ""
    pack: int | None = None
    lot: LotFacts = LotFacts()
    sealed: bool = True
    refillable: bool = False
    opened_at: datetime | None = None
    mixed_at: datetime | None = None
    estimated: bool = False
    parts: Parts = NEAT


@dataclass(frozen=True)
class Act:
    """One thing that happened; codes name containers, places, jobs and lots; amounts are base units.

    receive: new, amount (content), place · open: target · use: source, amount, job?, step? ·
    fill: source, target, amount (out of the source), added (into the target), parts · rinse: target ·
    move: target, place · count: target, amount (observed) · discard: target, place? (the can) ·
    return: target · quarantine, release: target or lot, reason · retest: target or lot, until ·
    correct: target or lot, facts · reverse: reverses (a seq).
    """

    kind: str
    at: datetime
    source: str | None = None
    target: str | None = None
    amount: int | None = None
    added: int | None = None
    parts: Parts = NEAT
    place: str | None = None
    job: str | None = None
    step: str | None = None
    lot: str | None = None
    reverses: int | None = None
    new: NewBottle | None = None
    facts: dict[str, object] = field(default_factory=dict, hash=False)
