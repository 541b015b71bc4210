"""One contaminant of a task: its figures in the room and at the nose, and the limits they stand against.

Traps kept here: the technician's figure is the larger of two models, never the room's alone; nothing stands
above saturation; the 8-hour value is met by the shift's average, the 15-minute value by the worst sliding
15 minutes, a ceiling by the peak; what was released is turned into ppm by the regime's molar volume. Air of
unknown temperature counts as 25 °C, which errs high.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date

from safety.air.limits import judging, lowest
from safety.air.near_field import Breathed, breathed
from safety.air.room import room
from safety.air.shift import share_of_shift
from safety.air.substances import Substance, saturation_mg_m3, substances
from safety.air.units import MOLAR_VOLUME, ppm
from safety.air.values import CEILING, EIGHT_HOURS, FIFTEEN_MINUTES, KINDS, Emission, Limit, Task

UNKNOWN_AIR_C = 25.0


@dataclass(frozen=True)
class Contaminant:
    """An emission with its figures in mg/m³, None where volume, air flow or amount is not known."""

    emission: Emission
    of: Substance | None
    limits: tuple[Limit, ...]
    molar_volume: float
    room: Breathed | None
    nose: Breathed | None

    @property
    def name(self) -> str:
        """Return its name."""
        return self.emission.name

    def ppm(self, mg: float | None) -> float | None:
        """Return mg/m³ as ppm; None for dust and where the molar mass is not known."""
        known = self.of is not None and self.of.molar_mass is not None and self.emission.form != "dust"
        if mg is None or not known:
            return None
        return ppm(mg, self.of.molar_mass, self.molar_volume)  # type: ignore[union-attr, arg-type]

    def share(self, mg: float, limit: Limit) -> float | None:
        """Return concentration / limit in a unit of both, None where they have none in common."""
        parts = self.ppm(mg)
        if limit.ppm is not None and parts is not None:
            return parts / limit.ppm
        return mg * limit.share / limit.mg_m3 if limit.mg_m3 is not None else None

    def strictest(self, mg: float, kind: str) -> tuple[Limit, float] | None:
        """Return the limit of a kind of which most is taken, and that share; None: none can be compared."""
        shares = [(limit, self.share(mg, limit)) for limit in lowest(self.limits, kind)]
        known = [(limit, share) for limit, share in shares if share is not None]
        return max(known, key=lambda pair: pair[1], default=None)

    @property
    def shown(self) -> Limit | None:
        """Return the limit to show: the 8-hour one, else the short-term one, else the ceiling."""
        mg = 1.0 if self.nose is None else self.nose.end
        for kind in KINDS:
            found = self.strictest(mg, kind)
            if found is not None:
                return found[0]
            if first := next(iter(lowest(self.limits, kind)), None):
                return first
        return None


def contaminants(task: Task, on: date) -> tuple[Contaminant, ...]:
    """Return the task's contaminants, those of one substance in one form added up, judged on a day."""
    return tuple(_contaminant(one, task, on) for one in merged(task.emissions))


def merged(emissions: Iterable[Emission]) -> tuple[Emission, ...]:
    """Return the emissions; what differs in its grams and name alone is one. Unknown grams stay unknown."""
    kept: list[Emission] = []
    for one in emissions:
        for at, other in enumerate(kept):
            if one.cas and replace(other, name=one.name, grams=one.grams, elsewhere=one.elsewhere) == one:
                unknown = one.grams is None or other.grams is None
                grams = None if unknown else other.grams + one.grams  # type: ignore[operator]
                kept[at] = replace(other, grams=grams, elsewhere=other.elsewhere + one.elsewhere)
                break
        else:
            kept.append(one)
    return tuple(kept)


def _contaminant(one: Emission, task: Task, on: date) -> Contaminant:
    of, molar_volume = substances().get(one.cas), MOLAR_VOLUME[task.regime]
    limits = judging(one, task.regime, on)
    place = task.place
    if one.grams is None or place.volume_m3 is None or place.air_m3_h is None:
        return Contaminant(one, of, limits, molar_volume, None, None)
    minutes = one.minutes(task.minutes)
    course = room(place, one.grams + one.elsewhere, minutes)
    average = Breathed(course.peak, course.task_mean, course.worst_15, course.peak)
    nose = breathed(place, one.grams, minutes, one.elsewhere)
    most = None
    if of is not None and one.form == "vapour":
        most = saturation_mg_m3(of, UNKNOWN_AIR_C if task.air_c is None else task.air_c, molar_volume)
    return Contaminant(one, of, limits, molar_volume, capped(average, most), capped(nose, most))


def capped(figures: Breathed, most: float | None) -> Breathed:
    """Return figures of which none stands above saturation."""
    if most is None:
        return figures
    return Breathed(
        min(figures.end, most),
        min(figures.task_mean, most),
        min(figures.worst_15, most),
        min(figures.peak, most),
    )


def part_of(one: Contaminant, figures: Breathed, kind: str, minutes: float) -> tuple[Limit, float] | None:
    """Return the strictest limit of a kind with the part of it that is taken, each by its own measure."""
    if kind == EIGHT_HOURS:
        found = one.strictest(figures.task_mean, kind)
        # The share grows with the concentration alone, so the shift's part is that of a limit of 1.
        lasted = one.emission.minutes(minutes)
        return None if found is None else (found[0], share_of_shift(found[1], lasted, 1.0))
    return one.strictest({FIFTEEN_MINUTES: figures.worst_15, CEILING: figures.peak}[kind], kind)
