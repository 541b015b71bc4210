"""The pages of orders."""

from inventory.reorder.views.orders import cancel, close_rest, order, orders, place_draft, postpone
from inventory.reorder.views.report import download, place, report

__all__ = [
    "cancel",
    "close_rest",
    "download",
    "order",
    "orders",
    "place",
    "place_draft",
    "postpone",
    "report",
]
