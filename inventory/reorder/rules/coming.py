"""Stock to come: the lots rolled forward day by day at the expected use, first expired first."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from inventory.reorder.rules.facts import ProductFacts, Stock

# Floating sums of uses: less than this of a base unit is nothing.
NOTHING = 1e-6


@dataclass(frozen=True)
class Loss:
    """An amount that nobody is expected to use before it dies at the end of `on`."""

    on: date
    amount: float
    delivered: bool


@dataclass(frozen=True)
class Delivery:
    """An amount that comes in the morning of `on`, usable through `use_by_on`."""

    on: date
    amount: float
    use_by_on: date | None = None


@dataclass(frozen=True)
class Coming:
    """The stock of the days to come, in base units.

    `levels` is the usable level at the end of each day, `short` what that day wanted and did not find.
    `dead` was out of date before the first day and is in no level.
    """

    from_on: date
    start: float
    levels: tuple[float, ...]
    short: tuple[float, ...]
    losses: tuple[Loss, ...]
    deliveries: tuple[Delivery, ...]
    dead: float

    @property
    def empty_on(self) -> date | None:
        """The first day whose expected use is not all there."""
        days = (day for day, missing in enumerate(self.short) if missing > NOTHING)
        first = next(days, None)
        return None if first is None else self.from_on + timedelta(days=first)

    def lost(self, *, delivered: bool) -> float:
        """Return what dies unused, of the stock on hand or of what was delivered."""
        return sum(loss.amount for loss in self.losses if loss.delivered == delivered)


@dataclass
class _Lot:
    left: float
    use_by_on: date
    sealed: bool
    delivered: bool


def roll_forward(
    stock: Sequence[Stock], deliveries: Sequence[Delivery], use: Sequence[float], from_on: date
) -> Coming:
    """Roll stock forward: deliveries in the morning, then the day's use, then what dies that night.

    A day's use that is not there is short, and is not made up for later.
    """
    lots = [
        _Lot(held.content, held.use_by_on or date.max, held.sealed, False)
        for held in stock
        if held.content and (held.use_by_on is None or held.use_by_on >= from_on)
    ]
    start = sum(lot.left for lot in lots)
    dead = sum(held.content for held in stock) - start
    levels: list[float] = []
    short: list[float] = []
    losses: list[Loss] = []
    for offset, wanted in enumerate(use):
        day = from_on + timedelta(days=offset)
        lots.extend(_arrived(deliveries, day, from_on))
        lots.sort(key=lambda lot: (lot.use_by_on, lot.sealed))
        short.append(_take(lots, wanted))
        losses.extend(Loss(day, lot.left, lot.delivered) for lot in lots if _dies(lot, day))
        lots = [lot for lot in lots if lot.left > NOTHING and lot.use_by_on > day]
        levels.append(sum(lot.left for lot in lots))
    return Coming(from_on, start, tuple(levels), tuple(short), tuple(losses), tuple(deliveries), dead)


def _arrived(deliveries: Sequence[Delivery], day: date, from_on: date) -> list[_Lot]:
    """Return what comes today; what should have come before the first day comes on it."""
    return [
        _Lot(due.amount, due.use_by_on or date.max, True, True)
        for due in deliveries
        if max(due.on, from_on) == day
    ]


def _take(lots: list[_Lot], wanted: float) -> float:
    for lot in lots:
        taken = min(lot.left, wanted)
        lot.left -= taken
        wanted -= taken
    return wanted


def _dies(lot: _Lot, day: date) -> bool:
    return lot.left > NOTHING and lot.use_by_on <= day


def deliveries_of(product: ProductFacts, from_on: date) -> tuple[Delivery, ...]:
    """Return what is on order as deliveries; what is overdue is expected on the first day."""
    due = [
        (max(from_on, line.due_on or from_on + timedelta(days=product.lead_days)), line.amount)
        for line in product.on_order
    ]
    return tuple(Delivery(on, amount, dies_on(product, on)) for on, amount in sorted(due))


def dies_on(product: ProductFacts, arrives_on: date) -> date | None:
    """Return the last day on which a pack that comes on `arrives_on` may be used."""
    if product.sealed_life_days is None:
        return None
    return arrives_on + timedelta(days=product.sealed_life_days)
