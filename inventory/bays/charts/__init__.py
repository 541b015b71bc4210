"""The air of a step over time as a picture. Pure."""

from inventory.bays.charts.picture import PENS, TEXT, air_picture

__all__ = ["PENS", "TEXT", "air_picture"]
