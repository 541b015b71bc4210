"""What the instruments in the bays of a job's steps read, and what the coats of these steps want."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta

from safety.weather import ProductWindow

FRESH = timedelta(hours=2)


@dataclass(frozen=True)
class Reading:
    """Air, panel (None: not measured) and humidity in a bay at an instant, in °C and percent."""

    taken_at: datetime
    air_c: float
    panel_c: float | None
    humidity: float

    def counts(self, starts_at: datetime, at: datetime) -> bool:
        """Say whether it speaks for a step: at most two hours old when that starts, or now if it is late."""
        return max(starts_at, at) - FRESH <= self.taken_at <= at


@dataclass(frozen=True)
class Coat:
    """A product that a step lays on the car, by the step's code; `own` names whose word its window is."""

    step: str
    product: str
    name: str
    kind: str
    window: ProductWindow
    own: str = ""


@dataclass(frozen=True)
class WeatherFacts:
    """The newest reading of each bay by its code, and the coats of the job's steps in their order."""

    readings: Mapping[str, Reading] = field(default_factory=dict, hash=False)
    coats: tuple[Coat, ...] = ()
