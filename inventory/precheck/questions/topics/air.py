"""What evaporates in the bays of a job's steps, and who breathes it."""

from dataclasses import dataclass


@dataclass(frozen=True)
class AirFacts:
    """What evaporates in the bays of a job's steps, and who breathes it."""
