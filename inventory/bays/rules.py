"""What a step's air does minute by minute, as parts of its limits: what a curve and its table are made of."""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

from inventory.precheck.questions.evaporation import StepAir
from safety.air.contaminants import Contaminant
from safety.air.evaporating import CURE_MINUTES, ONLY_BURNS
from safety.air.over_time import Instant, Source, over_time
from safety.air.saying import number, row
from safety.air.values import EIGHT_HOURS, FIFTEEN_MINUTES, IN_WORDS, Emission, Limit
from safety.findings import MARKS

# A quarter of an hour of work and how it clears; with a cure its whole first hour and the same again.
SHORT, LONG = 60, 120
QUARTER = 15.0
SHOWN = (5, 10, 15, 20, 30, 45, 60, 90, 120)


@dataclass(frozen=True)
class Point:
    """Percent of the limits so many minutes after the start, by the room's model and beside the work."""

    minute: float
    room: float
    near: float

    @property
    def nose(self) -> float:
        """What who works here breathes: the larger of both."""
        return max(self.room, self.near)


@dataclass(frozen=True)
class Curve:
    """A step's air over time. `limits` say what 100 % is; `without` names what has no limit to judge it."""

    name: str
    minutes: float
    points: tuple[Point, ...]
    limits: tuple[str, ...]
    without: tuple[str, ...] = ()

    @property
    def peak(self) -> Point:
        """The minute at which who works breathes most."""
        return max(self.points, key=lambda point: point.nose)

    @property
    def room_peak(self) -> Point:
        """The minute at which the room's average is highest."""
        return max(self.points, key=lambda point: point.room)

    @property
    def until(self) -> float:
        """The last minute drawn."""
        return self.points[-1].minute

    @property
    def says(self) -> str:
        """What the picture shows, in words."""
        peak, room, end = self.peak, self.room_peak, self.points[-1]
        worst = worst_quarter(self.points)
        over = [point.minute for point in self.points if point.nose >= 100]
        above = (
            f" Who works is at or above the limit from minute {over[0]:.0f} to {over[-1]:.0f}."
            if over
            else ""
        )
        return (
            f"Who works here breathes most after {peak.minute:.0f} minutes, {number(peak.nose)} % of the "
            f"limit; the room's average is highest after {room.minute:.0f} minutes, {number(room.room)} %. "
            f"Over the worst quarter of an hour who works here breathes {number(worst)} % on average."
            f"{above} After {end.minute:.0f} minutes it is {number(end.nose)} %."
        )

    @property
    def table(self) -> list[Point]:
        """The same figures at a few minutes."""
        return [point for point in self.points if point.minute in SHOWN]


def worst_quarter(points: tuple[Point, ...]) -> float:
    """Return the highest mean of fifteen minutes for who works: of each model its own, the larger of both."""
    models = ([(at.minute, at.room) for at in points], [(at.minute, at.near) for at in points])
    return max(map(_worst_mean, models))


def _worst_mean(points: list[tuple[float, float]]) -> float:
    spans = [
        (begins, ends, (one + other) / 2 * (ends - begins))
        for (begins, one), (ends, other) in pairwise(points)
    ]
    starts = [start for start, _, _ in spans if start + QUARTER <= points[-1][0]]
    doses = [
        sum(dose for begins, ends, dose in spans if start <= begins and ends <= start + QUARTER)
        for start in starts
    ]
    return max(doses, default=0.0) / QUARTER


def curve(of: StepAir, contaminants: Iterable[Contaminant]) -> Curve | None:
    """Return the curve of a step from its contaminants as they were judged; None where nothing is known."""
    listed = [one for one in contaminants if one.emission.cas not in ONLY_BURNS]
    if not of.place.known or not listed:
        return None
    until = LONG if of.release.cure or of.beside.cure else SHORT
    minutes = instants(of, until)
    judged = [(one, limit) for one in listed if (limit := against(one)) is not None]
    drawn = [(one, limit, over_time(of.place.place, sources(of, one), minutes)) for one, limit in judged]
    if not drawn:
        return None
    points = tuple(
        _point([(one, limit, each[at]) for one, limit, each in drawn]) for at in range(len(minutes))
    )
    without = tuple(one.name for one in listed if against(one) is None)
    return Curve(
        of.step.name, of.minutes, points, tuple(_limit(one, limit) for one, limit in judged), without
    )


def instants(of: StepAir, until: int) -> list[float]:
    """Return the minutes to draw: each whole one, and tenths where something begins or ends.

    The air round the work turns over in seconds, so a whole minute would draw a slope where there is a step.
    """
    ends = [0.0, of.minutes, *([CURE_MINUTES] if of.release.cure or of.beside.cure else [])]
    fine = {round(end + tenth / 10, 1) for end in ends for tenth in range(10)}
    return sorted({float(minute) for minute in range(until + 1)} | fine)


def against(one: Contaminant) -> Limit | None:
    """Return the limit that a minute stands against: the lowest 15-minute one, else the 8-hour one."""
    for kind in (FIFTEEN_MINUTES, EIGHT_HOURS):
        if found := one.strictest(1.0, kind):
            return found[0]
    return None


def sources(of: StepAir, one: Contaminant) -> list[Source]:
    """Return what lets a substance go, here and beside it: vapours in minutes, cure in its hour."""
    found = []
    for minutes, own, beside in (
        (of.minutes, of.release.vapours, of.beside.vapours),
        (CURE_MINUTES, of.release.cure, of.beside.cure),
    ):
        found += [Source(each.grams or 0.0, minutes) for each in own if same(each, one)]
        found += [Source(0.0, minutes, each.grams or 0.0) for each in beside if same(each, one)]
    return found


def same(each: Emission, one: Contaminant) -> bool:
    """Return whether an emission is of this contaminant."""
    return each.cas == one.emission.cas if each.cas else each.name == one.name


def _point(each: list[tuple[Contaminant, Limit, Instant]]) -> Point:
    room = sum(one.share(now.room, limit) or 0.0 for one, limit, now in each)
    near = sum(one.share(now.near, limit) or 0.0 for one, limit, now in each)
    return Point(each[0][2].minute, 100 * room, 100 * near)


def _limit(one: Contaminant, limit: Limit) -> str:
    value = f"{limit.ppm:g} ppm" if limit.ppm is not None else f"{limit.mg_m3:g} mg/m³"
    return f"{one.name} {value}, {IN_WORDS[limit.kind]} ({limit.source}, {MARKS[limit.mark]})"


def limits_in_words(found: Curve) -> str:
    """Return what 100 % of a curve is."""
    without = f" Without a limit, so not drawn: {row(found.without)}." if found.without else ""
    sums = " Parts of the limits are summed." if len(found.limits) > 1 else ""
    return f"100 % is {row(found.limits)}.{sums}{without}"
