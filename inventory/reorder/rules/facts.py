"""The values that the order rules take. Amounts are in the product's base unit (µl, mg, pieces, µm)."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta

from inventory.units import Dimension

HISTORY_DAYS = 365
# A product first used yesterday has no daily mean yet: its use counts over at least four weeks (our choice).
SHORTEST_HISTORY_DAYS = 28


class WrongFacts(ValueError):
    """The facts of a product contradict themselves; the sentence says which and what to change."""


@dataclass(frozen=True)
class Supplier:
    """Who sells; `minimum_order_minor` is the least order they accept, in minor units of money."""

    name: str
    minimum_order_minor: int = 0


@dataclass(frozen=True)
class Pack:
    """A size that is bought. Packs come in whole multiples of `multiple`, and at least `minimum` of them."""

    code: str
    amount: int
    price_minor: int | None
    multiple: int = 1
    minimum: int = 1
    noun: str = "pack"

    def __post_init__(self) -> None:
        if self.amount <= 0:
            raise WrongFacts(f"Pack {self.code} holds nothing. Give the amount of one pack.")
        if self.multiple < 1 or self.minimum < 1:
            raise WrongFacts(f"Pack {self.code} is sold in multiples of less than one. Give 1 or more.")


@dataclass(frozen=True)
class Stock:
    """One container, or one lot, that may be used through `use_by_on`; None never dies.

    `asks` names the term that has passed where it asks and does not stop: the scan station may let it be used
    after a test, but an order does not rely on it.
    """

    content: int
    use_by_on: date | None = None
    sealed: bool = True
    asks: str = ""

    def __post_init__(self) -> None:
        if self.content < 0:
            raise WrongFacts("A container holds less than nothing. Count it again.")


@dataclass(frozen=True)
class OnOrder:
    """An amount ordered and not yet received; without `due_on` it is due after the lead time."""

    amount: int
    due_on: date | None = None


@dataclass(frozen=True)
class Booked:
    """What one open job still needs on a day (planned minus already used).

    `mixed` is the part of it that bottles mixed at the parts it asks for serve. `instead` is the part that
    this product serves in place of the usual one of its kind: it says nothing about its own mean use.
    """

    on: date
    amount: int
    mixed: int = 0
    instead: int = 0

    @property
    def unmixed(self) -> int:
        """What has to come out of stock that is not mixed."""
        return self.amount - self.mixed


@dataclass(frozen=True)
class ProductFacts:
    """All that the rules ask about one product.

    `mean_per_day`, `spread_per_day`: use from the ledger and its standard deviation, in base units a day.
    `lead_spread_days`: standard deviation of the lead time; `spread_per_booking`: of the use of a booked job.
    `cancelled`: the share of bookings that is cancelled, 0 until 20 bookings are known.
    `bookings_seen` and `days_booked_ahead` (mean) choose the way in which the unbooked part is reckoned.
    `system`: the units in which the shop reads amounts, "metric", "us" or "imperial".
    `sealed_life_days`: how many days a new pack may be used after it comes; None never dies.
    `mixed`: concentrate in mixed bottles that are in date. It serves booked jobs at its own mix and nothing
    else, so it is no part of `stock`; what it serves stands beside each booking.
    `elsewhere`: what jobs want of its kind and get out of other products on hand; it is in no booking here.
    """

    code: str
    name: str
    supplier: Supplier
    dimension: Dimension
    mean_per_day: float
    spread_per_day: float
    lead_days: int
    packs: tuple[Pack, ...] = ()
    stock: tuple[Stock, ...] = ()
    on_order: tuple[OnOrder, ...] = ()
    booked: tuple[Booked, ...] = ()
    sealed_life_days: int | None = None
    lead_spread_days: float = 0.0
    spread_per_booking: float = 0.0
    cancelled: float = 0.0
    bookings_seen: int = 0
    days_booked_ahead: float | None = None
    system: str = "metric"
    mixed: int = 0
    elsewhere: tuple[Booked, ...] = ()

    def __post_init__(self) -> None:
        if self.mean_per_day < 0 or self.spread_per_day < 0:
            raise WrongFacts(f"{self.name}: use per day is below nothing. Leave returns out of the history.")
        if self.lead_days < 0:
            raise WrongFacts(f"{self.name}: the lead time is below 0 days. Give 0 or more.")
        if not 0 <= self.cancelled < 1:
            raise WrongFacts(f"{self.name}: the share of cancelled bookings must be from 0 to below 1.")


def use_per_day(uses: Iterable[tuple[date, int]], on: date) -> tuple[float, float]:
    """Return mean and spread of use a day over the last 12 months, or since the first use, in base units.

    The spread is that of compound demand, the root of λE[u²], so a day without a job counts as well.
    """
    recent = [(day, used) for day, used in uses if on - timedelta(HISTORY_DAYS) < day <= on and used > 0]
    if not recent:
        return 0.0, 0.0
    days = max((on - min(day for day, _ in recent)).days + 1, SHORTEST_HISTORY_DAYS)
    return sum(used for _, used in recent) / days, (sum(used * used for _, used in recent) / days) ** 0.5
