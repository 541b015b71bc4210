"""How a concentration rises while something evaporates and falls afterwards: mean, worst 15 minutes, peak.

Times in minutes, concentrations in mg/m³. Trap: the short-term value is the worst sliding 15 minutes and a
ceiling the peak; a mean over the hour hides both. After the source stops each part decays at its own rate.
"""

import math
from dataclasses import dataclass

WINDOW = 15.0
HALVINGS = 60


@dataclass(frozen=True)
class Part:
    """One mixed volume: `slope` is what it gains a minute while nothing leaves, `rate` its air changes."""

    slope: float
    rate: float

    def rise(self, minutes: float) -> float:
        """Return the concentration after so many minutes of evaporation; without air it grows for ever."""
        if self.rate == 0:
            return self.slope * minutes
        return self.slope * -math.expm1(-self.rate * minutes) / self.rate

    def at(self, minutes: float, until: float) -> float:
        """Return the concentration, evaporation ending at `until`."""
        if minutes <= until:
            return self.rise(minutes)
        return self.rise(until) * math.exp(-self.rate * (minutes - until))

    def dose(self, minutes: float, until: float) -> float:
        """Return mg/m³ times minutes since the start: the area under the curve."""
        risen = self._risen(min(minutes, until))
        if minutes <= until:
            return risen
        return risen + Part(self.rise(until), self.rate).rise(minutes - until)

    def _risen(self, minutes: float) -> float:
        turned = self.rate * minutes
        if turned < 1e-5:  # the closed form would subtract two numbers that are nearly equal
            return self.slope * minutes**2 / 2 * (1 - turned / 3)
        return (self.slope * minutes - self.rise(minutes)) / self.rate


@dataclass(frozen=True)
class Course:
    """The sum of parts over time, evaporation lasting `minutes` from 0."""

    parts: tuple[Part, ...]
    minutes: float

    def at(self, minutes: float) -> float:
        """Return the concentration so many minutes after the start."""
        return sum(part.at(minutes, self.minutes) for part in self.parts)

    @property
    def peak(self) -> float:
        """Return the highest concentration, which is the one when evaporation ends."""
        return self.at(self.minutes)

    def mean(self, start: float, end: float) -> float:
        """Return the mean concentration between two instants."""
        dose = sum(part.dose(end, self.minutes) - part.dose(start, self.minutes) for part in self.parts)
        return dose / (end - start)

    @property
    def task_mean(self) -> float:
        """Return the mean while something evaporates."""
        return self.mean(0.0, self.minutes)

    @property
    def worst_15(self) -> float:
        """Return the mean of the worst 15 minutes, those after the end included.

        The course rises and then falls, so the worst window begins where both its ends are equally high.
        """
        low, high = max(0.0, self.minutes - WINDOW), self.minutes
        for _ in range(HALVINGS):
            middle = (low + high) / 2
            if self.at(middle + WINDOW) > self.at(middle):
                low = middle
            else:
                high = middle
        return self.mean(low, low + WINDOW)
