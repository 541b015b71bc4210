"""One step takes a coating from one lot, unless its product allows more or an owner says why two are right.

Two lots may differ in shade and cure, and a fault could not be traced to one (common practice, no source).
What must stay the same is a batch: the lots in a bottle, or its product where that may mix lots.
"""

from collections.abc import Container, Iterable, Mapping, Sequence
from typing import Protocol, TypeVar

KIND = "coating"
# The check's finding, which an owner may override: (product or kind, step) is what it is about.
TWO_LOTS = "two_lots"
Batch = frozenset[str]
# (step, product or kind) -> what the step has had of it already
Had = Mapping[tuple[str, str], Batch]
NOTHING: Batch = frozenset()

DECLARE = (
    "What a second lot put on the car already is scanned at a station and said with ALREADY: "
    "it is written down and flagged."
)
CHECK_PAGE = "an owner says why two lots are right, on the check page"


class Bottle(Protocol):
    """A bottle, as far as its lot matters."""

    @property
    def batch(self) -> Batch:
        """What must stay the same."""

    @property
    def concentrate(self) -> int:
        """How much is in it."""


AnyBottle = TypeVar("AnyBottle", bound=Bottle)


def binds(kind: str, mixes_lots: bool | None) -> bool:
    """Say whether a step keeps to one lot of this."""
    return kind == KIND and not mixes_lots


def batch_of(product: str, lots: Batch, mixes_lots: bool) -> Batch:
    """Return what must stay the same of a bottle."""
    return frozenset({product}) if mixes_lots else lots


def joins(batch: Batch, had: Batch) -> bool:
    """Say whether a bottle may join what a step has had: the first one always may."""
    return not had or batch <= had


def of_one_lot(queue: Sequence[AnyBottle], amount: int, had: Batch = NOTHING) -> list[AnyBottle]:
    """Return the bottles of the lot that a step has, else of the first that suffices, else of the fullest."""
    if had:
        return [bottle for bottle in queue if joins(bottle.batch, had)]
    lots: dict[Batch, list[AnyBottle]] = {}
    for bottle in queue:
        lots.setdefault(bottle.batch, []).append(bottle)
    enough = [group for group in lots.values() if _all_of(group) >= amount]
    return enough[0] if enough else max(lots.values(), key=_all_of, default=[])


def _all_of(bottles: Iterable[Bottle]) -> int:
    return sum(bottle.concentrate for bottle in bottles)


def apart(amount: int, got: int, usable: int, had: Batch = NOTHING) -> bool:
    """Say whether lots are what is wrong: there is more, but of another lot.

    A step that has had nothing yet can still be ordered for: there too little in all is the graver cause.
    """
    return got < amount and (usable >= amount or (bool(had) and usable > got))


def says(name: str, needed: str, got: str, had: Batch = NOTHING) -> str:
    """Return what is so, amounts written."""
    if had:
        return f"{name}: {needed} more needed from the lot that the step has, {got} of it left."
    return f"{name}: {needed} needed from one lot, {got} in the fullest."


def refusal(name: str, needed: str, got: str, had: Batch, *, do: str, signed: bool) -> str:
    """Return why nothing is booked of two lots, with the way out; no check asks about a `signed` step.

    `do` is what is done about the first lot: "Scan", where it is scanned; "Give", where a form asks.
    """
    way = f"{do} what came of one lot" + ("." if signed else f", or {CHECK_PAGE}.")
    return f"{says(name, needed, got, had)} {way} {DECLARE}"


def stands(words: Container[tuple[str, str]], step: str, *things: str) -> bool:
    """Say whether an owner's word for two lots stands for a step, about a product or its kind."""
    return any((thing, step) in words for thing in things)
