"""Exposure judged: every contaminant summed by kind of limit, and graded.

Trap: stop whenever a breathing-zone figure reaches its own limit, ask from 10 % of any, tell below; what is
not listed is not judged, and is named. Source: EN 689's preliminary test (from memory) for the tenth; 29
CFR 1910.1000(d)(2)(i) (read) for the sum.
What was measured at the nose during this work stands in place of the model where it shows that a limit is
kept; where it decides nothing, the larger of the two stands. The others in the room keep the model.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from safety.air.contaminants import Contaminant, part_of
from safety.air.measured import BELOW, bar, verdict
from safety.air.near_field import Breathed
from safety.air.shift import additive_index
from safety.air.values import EIGHT_HOURS, KINDS, Limit, Measured

STOPS_AT, ASKS_AT = 1.0, 0.1
Results = dict[tuple[str, str], Measured]


@dataclass(frozen=True)
class Part:
    """What one contaminant takes of one limit; `measured` where that was measured, not reckoned."""

    of: Contaminant
    limit: Limit
    share: float
    measured: Measured | None = None

    @property
    def shown(self) -> bool:
        """Return whether a measurement shows that the limit is kept."""
        return self.measured is not None and verdict(self.measured) == BELOW


@dataclass(frozen=True)
class Judged:
    """All contaminants against their limits of one kind; `missing` names those that have none of it."""

    kind: str
    parts: tuple[Part, ...]
    missing: tuple[str, ...]

    @property
    def index(self) -> float:
        """Return Em of this kind."""
        return additive_index(part.share for part in self.parts)

    @property
    def grade(self) -> str:
        """Return stop from 1, ask from a tenth, tell below; what was measured has the bar of its results.

        What is only reckoned still asks from a tenth, however well the rest was measured.
        """
        reckoned = additive_index(part.share for part in self.parts if not part.shown)
        if self.index >= STOPS_AT:
            return "stop"
        return "ask" if self.index >= self.asks_at or reckoned >= ASKS_AT else "tell"

    @property
    def asks_at(self) -> float:
        """Return the part from which it asks: a tenth, or the bar of the fewest results that show it kept."""
        counts = [len(part.measured.shares) for part in self.parts if part.measured and part.shown]
        return bar(min(counts)) if counts else ASKS_AT


def judge(
    all_of_them: Iterable[Contaminant],
    minutes: float,
    whose: str = "nose",
    measured: Iterable[Measured] = (),
) -> tuple[Judged, ...]:
    """Return the judgement by kind, for the "nose" of who works or the "room" of the others."""
    known = [(one, figures) for one in all_of_them if (figures := getattr(one, whose)) is not None]
    results = by_kind(measured)
    return tuple(_kind(kind, known, minutes, results) for kind in KINDS)


def by_kind(measured: Iterable[Measured]) -> Results:
    """Return what was measured and can be judged, by substance and kind of limit."""
    return {(one.cas, one.kind): one for one in measured if one.limit is not None}


def _kind(kind: str, known: list[tuple[Contaminant, Breathed]], minutes: float, results: Results) -> Judged:
    parts, missing = [], []
    for one, figures in known:
        found = part_of(one, figures, kind, minutes)
        part = _standing(one, found, results.get((one.emission.cas, kind)))
        if part is None:
            missing.append(one.name)
        else:
            parts.append(part)
    return Judged(kind, tuple(parts), tuple(missing))


def _standing(one: Contaminant, found: tuple[Limit, float] | None, measured: Measured | None) -> Part | None:
    """Return the part that stands: what a measurement shows, else the larger of it and what is reckoned."""
    reckoned = None if found is None else Part(one, *found)
    if measured is None or measured.limit is None:
        return reckoned
    part = Part(one, measured.limit, measured.largest, measured)
    return part if part.shown or reckoned is None or part.share >= reckoned.share else reckoned


def index(all_of_them: Iterable[Contaminant], measured: Iterable[Measured] = ()) -> float | None:
    """Return the sum of breathing zone / 8-hour limit at the end of the task, over those that have one.

    None where none has one, and where the amount or the place of any is not known: a part is no sum.
    """
    noses = [(one, one.nose) for one in all_of_them]
    if any(nose is None for _, nose in noses):
        return None
    results = by_kind(measured)
    parts = [
        _standing(one, one.strictest(nose.end, EIGHT_HOURS), results.get((one.emission.cas, EIGHT_HOURS)))
        for one, nose in noses
        if nose is not None
    ]
    shares = [part.share for part in parts if part is not None]
    return additive_index(shares) if shares else None
