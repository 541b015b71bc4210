"""Local exhaust that somebody examined, and what a competent person measured at the nose, in a place."""

from dataclasses import dataclass
from datetime import date

from safety.air.measured import Sample

WORDS = {"vapour": "vapour", "dust": "dust and mist", "both": "vapour, dust and mist"}
CATCHES = {"vapour": ("vapour", "both"), "dust": ("dust", "both")}


@dataclass(frozen=True)
class Exhaust:
    """What catches vapour, dust and mist, or both, where it arises; examined to a day."""

    name: str
    catches: str
    examined_on: date
    until_on: date
    ended_on: date | None = None

    def holds(self, on: date) -> bool:
        """Say whether its examination counts on a day."""
        gone = self.ended_on is not None and self.ended_on <= on
        return self.examined_on <= on <= self.until_on and not gone

    @property
    def words(self) -> str:
        """What it catches, as people say it."""
        return WORDS[self.catches]

    def takes(self, form: str) -> bool:
        """Say whether it catches a "vapour", or "dust" and mist."""
        return self.catches in CATCHES[form]


@dataclass(frozen=True)
class Measurement:
    """What was measured while so much of a product was used in so many minutes, and under which exhaust."""

    product: str
    name: str
    dimension: str
    amount: int
    minutes: int
    exhaust: str
    measured_on: date
    until_on: date
    by_whom: str
    samples: tuple[Sample, ...] = ()

    def holds(self, on: date) -> bool:
        """Say whether it counts on a day."""
        return self.measured_on <= on <= self.until_on
