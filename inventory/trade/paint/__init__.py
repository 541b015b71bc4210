"""Paint budget: what the gauge read, what a job plans to take off, and what is left above the shop's floor."""

from .values import Cut, Floor, Measured, Panel, Reading, Removal

__all__ = ["Cut", "Floor", "Measured", "Panel", "Reading", "Removal"]
