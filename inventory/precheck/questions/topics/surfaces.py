"""What a car's surfaces arrive with, and what the job does to them in order."""

from dataclasses import dataclass


@dataclass(frozen=True)
class SurfaceFacts:
    """What a car's surfaces arrive with, and what the job does to them in order."""
