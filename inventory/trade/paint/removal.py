"""What a cut takes off: the trade's range, until the shop has measured the same abrasive, pad and passes."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cache
from math import ceil
from statistics import median

from inventory.trade.reading import in_words, rows

from .values import Cut, Measured, Reading, Removal
from .visits import visit_removal

ENOUGH_MEASURED = 3


@dataclass(frozen=True)
class UsualCut:
    """A grade of cut as the trade knows it; `mark` is in words."""

    name: str
    removal: Removal
    note: str
    mark: str


@cache
def usual_cuts() -> dict[str, UsualCut]:
    """Return the grades of cut by their key, the finest first."""
    return {row["grade"]: _usual(row) for row in rows("cuts")}


def _usual(row: dict[str, str]) -> UsualCut:
    low, mid, high = int(row["low_um"]), int(row["mid_um"]), int(row["high_um"])
    # A range's default is its cautious end: here the larger cut.
    return UsualCut(row["name"], Removal(low, mid, high, counted=high), row["note"], in_words(row["mark"]))


def planned_removal(cut: Cut, history: Iterable[Measured] = ()) -> Removal:
    """Return what a cut takes in µm; from three measurements on the shop's median is counted, rounded up.

    Raises KeyError for a grade that the table does not have.
    """
    usual = usual_cuts()[cut.grade].removal
    same = (cut.abrasive, cut.pad, cut.passes)
    own = [one.um for one in history if (one.abrasive, one.pad, one.passes) == same]
    if len(own) < ENOUGH_MEASURED:
        return usual
    mid = ceil(median(own))
    return Removal(min(own), mid, max(own), counted=mid, measurements=len(own))


def measured(cuts: Sequence[Cut], readings: Iterable[Reading]) -> tuple[Measured, ...]:
    """Return what one visit's readings say of the cuts that were made in it.

    Only panels that a single cut touched teach anything: of two cuts nobody knows which took what. A gauge
    that reads more afterwards measured its own error, and teaches nothing either.
    """
    by_panel: dict[str, list[Reading]] = defaultdict(list)
    for reading in readings:
        by_panel[reading.panel].append(reading)
    found = []
    for panel, own in by_panel.items():
        touching = [cut for cut in cuts if cut.panel in (None, panel)]
        taken = visit_removal(own)
        if len(touching) == 1 and taken is not None and taken >= 0:
            [cut] = touching
            found.append(Measured(cut.abrasive, cut.pad, cut.passes, taken))
    return tuple(found)
