"""Stock to come as a picture and as a table. Pure."""

from inventory.reorder.charts.labels import TEXT
from inventory.reorder.charts.picture import PENS, Chart, Stroke, Words, stock_chart
from inventory.reorder.charts.svg import svg
from inventory.reorder.charts.weeks import Week, weeks

__all__ = ["PENS", "TEXT", "Chart", "Stroke", "Week", "Words", "stock_chart", "svg", "weeks"]
