"""Whole packs: rounded up, in the multiples sold, no more than will be used before they die.

Whole packs come first, then the cap (in whole packs rounded up, never below what booked jobs need), then the
least that the supplier sells. Where that least is above the cap, the value expected to expire is told.
"""

from dataclasses import dataclass
from math import ceil

from inventory.reorder.rules.facts import Pack

# An amount this close above a whole pack is a rounding of sums, not a need for one more.
SAME = 1e-9


@dataclass(frozen=True)
class Choice:
    """So many packs of one size; `unused` of their amount is expected to die, in base units.

    `capped` says that more is lacking but would die unused, `above_cap` that the least the supplier sells is
    more than will be used.
    """

    pack: Pack
    packs: int
    unused: float
    capped: bool = False
    above_cap: bool = False

    @property
    def amount(self) -> int:
        """What the packs hold together."""
        return self.packs * self.pack.amount

    @property
    def cost_minor(self) -> int | None:
        """Price of the packs in minor units, None where the price of one is not known."""
        return None if self.pack.price_minor is None else self.packs * self.pack.price_minor

    @property
    def unused_minor(self) -> int | None:
        """Value of what is expected to die, None where the price is not known."""
        if self.pack.price_minor is None:
            return None
        return round(self.unused * self.pack.price_minor / self.pack.amount)


def whole(amount: float, pack: Pack) -> int:
    """Return the packs that hold at least `amount`, in the multiple sold."""
    lots = ceil(amount / (pack.amount * pack.multiple) - SAME)
    return max(0, lots) * pack.multiple


def packs_of(pack: Pack, needed: float, for_bookings: float, useful: float | None) -> Choice:
    """Return how many packs of one size to order.

    `needed` is what the order-up-to level lacks, `for_bookings` what booked jobs lack, `useful` what is
    expected to be used of a new pack before it dies (None: it does not die).
    """
    lacking = whole(max(needed, for_bookings), pack)
    cap = lacking if useful is None else whole(max(useful, for_bookings), pack)
    packs = min(lacking, cap)
    ordered = max(packs, whole(pack.minimum * pack.amount, pack)) if packs else 0
    if useful is None:
        return Choice(pack, ordered, 0.0)
    unused = max(0.0, ordered * pack.amount - max(useful, for_bookings))
    return Choice(pack, ordered, unused, capped=ordered < lacking, above_cap=ordered > cap)


def cheapest(
    packs: tuple[Pack, ...], needed: float, for_bookings: float, useful: float | None
) -> Choice | None:
    """Return the size that covers the need for the least money, then with the least left over."""
    choices = [packs_of(pack, needed, for_bookings, useful) for pack in packs]
    known = [choice for choice in choices if choice.packs]
    return min(known, key=lambda choice: (_price(choice), choice.amount), default=None)


def _price(choice: Choice) -> float:
    return float("inf") if choice.cost_minor is None else choice.cost_minor
