"""The month's report, what to order soon, and the orders as they stand."""

from inventory.reorder.queries.facts import products_of
from inventory.reorder.queries.orders import (
    Row,
    lines_of,
    order_called,
    order_rows,
    packs_called,
    supplier_rows,
)
from inventory.reorder.queries.report import ToOrder, now, report, to_order, today

__all__ = [
    "Row",
    "ToOrder",
    "lines_of",
    "now",
    "order_called",
    "order_rows",
    "packs_called",
    "products_of",
    "report",
    "supplier_rows",
    "to_order",
    "today",
]
