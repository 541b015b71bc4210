"""The rules of ordering: values in, values out, no clock and no database."""

from inventory.reorder.rules import words
from inventory.reorder.rules.coming import Coming, Delivery, Loss, roll_forward
from inventory.reorder.rules.demand import (
    CYCLE_SERVICE,
    Want,
    fill_rate,
    reorder_point,
    still_to_book,
    want,
    z_of,
)
from inventory.reorder.rules.facts import (
    Booked,
    OnOrder,
    Pack,
    ProductFacts,
    Stock,
    Supplier,
    WrongFacts,
    use_per_day,
)
from inventory.reorder.rules.orders import Line, Report, SupplierOrder
from inventory.reorder.rules.packs import Choice, cheapest, packs_of
from inventory.reorder.rules.report import MonthIsOver, order_line, reorder_report
from inventory.reorder.rules.served import Demand, demand_of

__all__ = [
    "CYCLE_SERVICE",
    "Booked",
    "Choice",
    "Coming",
    "Delivery",
    "Demand",
    "Line",
    "Loss",
    "MonthIsOver",
    "OnOrder",
    "Pack",
    "ProductFacts",
    "Report",
    "Stock",
    "Supplier",
    "SupplierOrder",
    "Want",
    "WrongFacts",
    "cheapest",
    "demand_of",
    "fill_rate",
    "order_line",
    "packs_of",
    "reorder_point",
    "reorder_report",
    "roll_forward",
    "still_to_book",
    "use_per_day",
    "want",
    "words",
    "z_of",
]
