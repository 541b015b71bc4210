"""A car's panels, what the gauge read on them, and what the job cuts."""

from dataclasses import dataclass


@dataclass(frozen=True)
class PaintFacts:
    """A car's panels, what the gauge read on them, and what the job cuts."""
