"""What the rules hand back: a line a product, an order a supplier, the month's report."""

from dataclasses import dataclass
from datetime import date

from inventory.reorder.rules.coming import Coming
from inventory.reorder.rules.demand import CYCLE_SERVICE, Want
from inventory.reorder.rules.facts import ProductFacts, Supplier
from inventory.reorder.rules.packs import Choice


@dataclass(frozen=True)
class Line:
    """What to order of one product and why; `choice` is None where nothing is to be ordered.

    `coming` is stock to come without this order, `coming_with_order` with it, placed on the report's day.
    Amounts in base units: `usable` is on hand less what dies unused until the period ends, `on_order` what
    comes in time and gets used, `needed` what is lacking. `order_by_on` is the last day to order so that it
    comes on the day stock runs out, the report's day where that has passed, None where stock lasts.
    """

    product: ProductFacts
    wanted: Want
    coming: Coming
    coming_with_order: Coming
    usable: float
    on_order: float
    needed: float
    choice: Choice | None
    order_by_on: date | None
    because: str = ""

    @property
    def empty_on(self) -> date | None:
        """The first day whose expected use is not all there."""
        return self.coming.empty_on

    @property
    def packs(self) -> int:
        """Packs to order, 0 for none."""
        return self.choice.packs if self.choice else 0

    @property
    def cost_minor(self) -> int | None:
        """Cost of the packs in minor units; None where the price is not recorded."""
        return self.choice.cost_minor if self.choice else 0

    @property
    def expected_to_expire_minor(self) -> int | None:
        """Value of what is ordered and expected to die unused; None where the price is not recorded."""
        return self.choice.unused_minor if self.choice else 0


@dataclass(frozen=True)
class SupplierOrder:
    """What to order from one supplier, the first to run out on top, and what there is enough of."""

    supplier: Supplier
    lines: tuple[Line, ...]
    enough: tuple[Line, ...]
    says: str = ""

    @property
    def total_minor(self) -> int:
        """Cost of the lines whose price is recorded."""
        return sum(line.cost_minor or 0 for line in self.lines)

    @property
    def unpriced(self) -> int:
        """How many lines have no price."""
        return sum(line.cost_minor is None for line in self.lines)

    @property
    def expected_to_expire_minor(self) -> int:
        """Value of what is ordered and expected to die unused, of the lines whose price is recorded."""
        return sum(line.expected_to_expire_minor or 0 for line in self.lines)


@dataclass(frozen=True)
class Report:
    """The reorder report of a month (its first day). `chain_head` is the head of the ledger read, as text."""

    shop: str
    month: date
    made_on: date
    currency: str
    orders: tuple[SupplierOrder, ...]
    chain_head: str
    says: str = ""
    service: float = CYCLE_SERVICE

    @property
    def total_minor(self) -> int:
        """Cost of all orders whose price is recorded."""
        return sum(order.total_minor for order in self.orders)

    @property
    def unpriced(self) -> int:
        """How many lines have no price."""
        return sum(order.unpriced for order in self.orders)

    @property
    def lines(self) -> tuple[Line, ...]:
        """All lines to order."""
        return tuple(line for order in self.orders for line in order.lines)
