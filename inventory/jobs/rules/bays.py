"""Who stands in whose bay: a step holds its bay from start to end, and cure holds it too."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, tzinfo


@dataclass(frozen=True)
class Stay:
    """A car in a bay for a step."""

    job: str
    car: str
    step: str
    bay: str
    starts_at: datetime
    ends_at: datetime


@dataclass(frozen=True)
class Clash:
    """Two cars in one bay; `mine` is the job that was asked about."""

    mine: Stay
    other: Stay

    def says(self, zone: tzinfo) -> str:
        """Return the clash as a sentence."""
        other, until = self.other, self.other.ends_at.astimezone(zone)
        return (
            f"{self.mine.step}: {self.mine.bay} is taken by {other.car} ({other.step}) "
            f"until {until:%A} {until.day} {until:%B}, {until:%H:%M}."
        )


def clashes(job: str, stays: Iterable[Stay]) -> list[Clash]:
    """Return where another job is in a bay while a step of this one is, one a step and other job."""
    all_ = sorted(stays, key=lambda stay: (stay.starts_at, stay.job, stay.step))
    mine = [stay for stay in all_ if stay.job == job]
    found: dict[tuple[str, str], Clash] = {}
    for stay in mine:
        for other in all_:
            if other.job != job and other.bay == stay.bay and _overlap(stay, other):
                found.setdefault((stay.step, other.job), Clash(stay, other))
    return list(found.values())


def _overlap(one: Stay, other: Stay) -> bool:
    return one.starts_at < other.ends_at and other.starts_at < one.ends_at
