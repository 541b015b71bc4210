"""Stock to come as a picture and as a table. Pure."""

from inventory.reorder.charts.labels import TEXT
from inventory.reorder.charts.picture import PENS, stock_chart
from inventory.reorder.charts.weeks import Week, weeks

__all__ = ["PENS", "TEXT", "Week", "stock_chart", "weeks"]
