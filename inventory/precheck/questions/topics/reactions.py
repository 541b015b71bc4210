"""What may meet what on a job's car and in its bays."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime

from safety.reactions.values import Substance


@dataclass(frozen=True)
class Wetted:
    """A step as chemistry sees it: the products that it puts on the car, and whether it rinses them off.

    `rinses`: everything is rinsed to a clear drain in it, after what it puts on. `traced`: which of the
    products only a scan books, so that a signature says nothing of them.
    """

    step: str
    name: str
    starts_at: datetime
    ends_at: datetime
    bay: str | None
    products: tuple[str, ...] = ()
    rinses: bool = False
    signed_at: datetime | None = None
    traced: tuple[str, ...] = ()


@dataclass(frozen=True)
class Used:
    """A product that the ledger says was used on the car, planned or not, and when."""

    product: str
    at: datetime


@dataclass(frozen=True)
class InBay:
    """A product in a bay: standing there, or used there by another car's step in the meantime."""

    bay: str
    product: str
    starts_at: datetime | None = None
    ends_at: datetime | None = None
    car: str = ""

    @property
    def in_use(self) -> bool:
        """Whether another car's step uses it."""
        return self.starts_at is not None


def on_the_car(steps: Iterable[Wetted], used: Iterable[Used]) -> tuple[str, ...]:
    """Return the products put on the car since its last rinse was signed, whether planned or not."""
    return tuple(dict.fromkeys(one.product for one in _since_the_rinse(steps, used)))


def last_on_the_car(steps: Iterable[Wetted], used: Iterable[Used]) -> Used | None:
    """Return what was put on last, if no rinse was signed after it.

    What only a scan books and nobody scanned is not said to be on the car, though it may be: `on_the_car`
    goes on counting it, for what it must not meet.
    """
    booked = [replace(step, products=_without(step.products, step.traced)) for step in steps]
    return max(_since_the_rinse(booked, used), key=lambda one: one.at, default=None)


def _without(products: Iterable[str], traced: Iterable[str]) -> tuple[str, ...]:
    left = set(traced)
    return tuple(each for each in products if each not in left)


def _since_the_rinse(steps: Iterable[Wetted], used: Iterable[Used]) -> list[Used]:
    """What a signed step was to take and nobody scanned was on by its planned end, or when it was signed."""
    done = [step for step in steps if step.signed_at]
    rinsed_at = max((step.signed_at for step in done if step.rinses and step.signed_at), default=None)
    lines = list(used)
    scanned = {one.product for one in lines}
    lines += [
        Used(each, min(step.ends_at, step.signed_at))
        for step in done
        for each in step.products
        if step.signed_at and each not in scanned
    ]
    return [one for one in lines if rinsed_at is None or one.at > rinsed_at]


@dataclass(frozen=True)
class ReactionFacts:
    """What may meet what on a job's car and in its bays; `substances` by the product's code."""

    steps: tuple[Wetted, ...] = ()
    in_bays: tuple[InBay, ...] = ()
    used: tuple[Used, ...] = ()
    substances: Mapping[str, Substance] = field(default_factory=dict, hash=False)
