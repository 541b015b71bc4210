"""The month's report and its files, what to order soon, and the orders as they stand."""

from inventory.reorder.queries.facts import lead_days, products_of
from inventory.reorder.queries.files import CONTENT_TYPES, file_of, paper_of
from inventory.reorder.queries.orders import (
    Row,
    lines_of,
    order_called,
    order_rows,
    packs_called,
    packs_of_report,
    standing_of,
    supplier_rows,
    to_come,
)
from inventory.reorder.queries.report import (
    ToOrder,
    month_in_view,
    now,
    pack_size,
    report,
    soon_of,
    to_order,
    today,
)

__all__ = [
    "CONTENT_TYPES",
    "Row",
    "ToOrder",
    "file_of",
    "lead_days",
    "lines_of",
    "month_in_view",
    "now",
    "order_called",
    "order_rows",
    "pack_size",
    "packs_called",
    "packs_of_report",
    "paper_of",
    "products_of",
    "report",
    "soon_of",
    "standing_of",
    "supplier_rows",
    "to_come",
    "to_order",
    "today",
]
