"""The air of a step over time as a picture. Pure."""

from inventory.bays.charts.picture import TEXT, Drawing, Line, Words, air_picture
from inventory.bays.charts.svg import svg

__all__ = ["TEXT", "Drawing", "Line", "Words", "air_picture", "svg"]
