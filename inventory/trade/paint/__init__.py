"""Paint budget: what the gauge read, what a job plans to take off, what is left above the shop's floor."""

from .budget import PaintBudget, budget
from .left import FilmLeft, PanelLeft
from .removal import measured, planned_removal, usual_cuts
from .values import Cut, Floor, Measured, Panel, Reading, Removal

__all__ = [
    "Cut",
    "FilmLeft",
    "Floor",
    "Measured",
    "PaintBudget",
    "Panel",
    "PanelLeft",
    "Reading",
    "Removal",
    "budget",
    "measured",
    "planned_removal",
    "usual_cuts",
]
