"""What the instruments in the bays of a job's steps read."""

from dataclasses import dataclass


@dataclass(frozen=True)
class WeatherFacts:
    """What the instruments in the bays of a job's steps read."""
