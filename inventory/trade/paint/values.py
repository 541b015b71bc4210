"""What is known of a car's paint: panels, gauge readings, cuts that are planned, and the shop's own floor.

Thicknesses are whole micrometres. A gauge names what it reads: the whole film on metal, or the clear coat.
"""

from dataclasses import dataclass
from datetime import datetime

WHOLE, CLEAR = "whole", "clear"
BEFORE, AFTER = "before", "after"
FINISH, ONE_STEP, TWO_STEP, THREE_STEP, SANDING = "finish", "one_step", "two_step", "three_step", "sanding"
GRADES_OF_CUT = (FINISH, ONE_STEP, TWO_STEP, THREE_STEP, SANDING)


@dataclass(frozen=True)
class Panel:
    """A painted panel of the car; `substrate` is steel, aluminium, plastic, carbon, or "" if nobody said."""

    code: str
    name: str
    substrate: str = ""
    surface: str = ""


@dataclass(frozen=True)
class Reading:
    """What the gauge said of a panel before or after a visit's work; not `readable` is an answer too."""

    panel: str
    panel_name: str
    at: datetime
    when: str
    um: int | None
    film: str = WHOLE
    readable: bool = True


@dataclass(frozen=True)
class Cut:
    """A step that takes paint off one panel, or off all of them where `panel` is None.

    `raised`: why its grade is more than the step says, a sentence; empty where it is what the step says.
    """

    step: str
    panel: str | None
    grade: str
    passes: int
    abrasive: str
    pad: str
    raised: str = ""


@dataclass(frozen=True)
class Floor:
    """The shop's own floors in µm: below the first two no cutting, below the third finishing only."""

    whole_um: int = 80
    clear_um: int = 40
    finish_only_um: int = 100
    repaint_um: int = 200


USUAL_FLOOR = Floor()


@dataclass(frozen=True)
class Measured:
    """What one abrasive on one pad took in so many passes, by the gauge before and after, in µm."""

    abrasive: str
    pad: str
    passes: int
    um: int


@dataclass(frozen=True)
class Removal:
    """A range in µm. Rules use `counted`; `measurements` is how many of the shop's own it rests on."""

    low: int
    mid: int
    high: int
    counted: int
    measurements: int = 0

    def __add__(self, other: "Removal") -> "Removal":
        """Return what two cuts of one panel take together; it rests on the fewer measurements."""
        return Removal(
            self.low + other.low,
            self.mid + other.mid,
            self.high + other.high,
            self.counted + other.counted,
            min(self.measurements, other.measurements),
        )
