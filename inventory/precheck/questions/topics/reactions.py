"""What may meet what on a job's car and in its bays."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime

from safety.reactions.values import Substance


@dataclass(frozen=True)
class Wetted:
    """A step as chemistry sees it: the products that it puts on the car, and whether it rinses them off.

    `rinses`: everything is rinsed to a clear drain in it, after what it puts on.
    """

    step: str
    name: str
    starts_at: datetime
    ends_at: datetime
    bay: str | None
    products: tuple[str, ...] = ()
    rinses: bool = False
    signed: bool = False


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


@dataclass(frozen=True)
class ReactionFacts:
    """What may meet what on a job's car and in its bays; `substances` by the product's code."""

    steps: tuple[Wetted, ...] = ()
    in_bays: tuple[InBay, ...] = ()
    substances: Mapping[str, Substance] = field(default_factory=dict, hash=False)
