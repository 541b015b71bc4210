"""Exposure judged: every contaminant summed by kind of limit, and graded.

Trap: stop whenever a breathing-zone figure reaches its own limit, ask from 10 % of any, tell below; what is
not listed is not judged, and is named. Source: EN 689's preliminary test (from memory) for the tenth; 29
CFR 1910.1000(d)(2)(i) (read) for the sum.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from safety.air.contaminants import Contaminant, part_of
from safety.air.near_field import Breathed
from safety.air.shift import additive_index
from safety.air.values import EIGHT_HOURS, KINDS, Limit

STOPS_AT, ASKS_AT = 1.0, 0.1


@dataclass(frozen=True)
class Part:
    """What one contaminant takes of one limit."""

    of: Contaminant
    limit: Limit
    share: float


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
        """Return stop from 1, ask from a tenth, tell below."""
        return "stop" if self.index >= STOPS_AT else "ask" if self.index >= ASKS_AT else "tell"


def judge(all_of_them: Iterable[Contaminant], minutes: float, whose: str = "nose") -> tuple[Judged, ...]:
    """Return the judgement by kind, for the "nose" of who works or the "room" of the others."""
    known = [(one, figures) for one in all_of_them if (figures := getattr(one, whose)) is not None]
    return tuple(_kind(kind, known, minutes) for kind in KINDS)


def _kind(kind: str, known: list[tuple[Contaminant, Breathed]], minutes: float) -> Judged:
    parts, missing = [], []
    for one, figures in known:
        found = part_of(one, figures, kind, minutes)
        if found is None:
            missing.append(one.name)
        else:
            parts.append(Part(one, *found))
    return Judged(kind, tuple(parts), tuple(missing))


def index(all_of_them: Iterable[Contaminant]) -> float | None:
    """Return the sum of breathing zone / 8-hour limit at the end of the task, over those that have one.

    None where none has one, and where the amount or the place of any is not known: a part is no sum.
    """
    noses = [(one, one.nose) for one in all_of_them]
    if any(nose is None for _, nose in noses):
        return None
    found = [one.strictest(nose.end, EIGHT_HOURS) for one, nose in noses if nose is not None]
    shares = [pair[1] for pair in found if pair is not None]
    return additive_index(shares) if shares else None
