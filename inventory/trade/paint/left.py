"""What is left of each panel's paint: its last reading, what visits took, what the job plans to take."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from functools import reduce
from operator import add

from inventory.trade.surfaces import area

from .removal import planned_removal
from .values import (
    AFTER,
    CLEAR,
    FINISH,
    USUAL_FLOOR,
    WHOLE,
    Cut,
    Floor,
    Measured,
    Panel,
    Reading,
    Removal,
)
from .visits import gone_since, last_of, removed_over_life


@dataclass(frozen=True)
class FilmLeft:
    """One film of a panel, in µm: the last reading, what the gauge saw go since then on the other film,
    the thickest ever, the floor that holds for it, and what the job plans to take.
    """

    film: str
    last_um: int
    last_at: datetime
    since_um: int
    thickest_um: int
    floor_um: int
    planned_um: int

    @property
    def now_um(self) -> int:
        """What there is before the job."""
        return self.last_um - self.since_um

    @property
    def after_um(self) -> int:
        """What the job leaves of the film."""
        return self.now_um - self.planned_um

    @property
    def left_um(self) -> int:
        """What stays above the floor after the job; below nothing where it goes through the floor."""
        return self.after_um - self.floor_um

    @property
    def fraction(self) -> float:
        """What stays above the floor, as a part of what the panel ever had above it, from 0 to 1."""
        ever = self.thickest_um - self.floor_um
        return max(0.0, self.left_um / ever) if ever > 0 else 0.0


@dataclass(frozen=True)
class PanelLeft:
    """One panel's line. `films` is empty where there is no figure; `not_readable` says the gauge cannot."""

    panel: Panel
    films: tuple[FilmLeft, ...]
    not_readable: bool
    removed_um: int
    planned: Removal
    grades: frozenset[str]

    @property
    def tightest(self) -> FilmLeft | None:
        """The film with the least left above its floor: the one to draw."""
        return min(self.films, key=lambda one: one.left_um, default=None)

    @property
    def whole(self) -> FilmLeft | None:
        """The whole film, where it was read."""
        return next((one for one in self.films if one.film == WHOLE), None)

    @property
    def is_cut(self) -> bool:
        """Whether the job takes anything off it."""
        return bool(self.grades)

    @property
    def is_cut_hard(self) -> bool:
        """Whether anything coarser than finishing is planned on it."""
        return bool(self.grades - {FINISH})


def panels_left(
    panels: Iterable[Panel],
    readings: Sequence[Reading],
    cuts: Sequence[Cut],
    floor: Floor = USUAL_FLOOR,
    history: Sequence[Measured] = (),
) -> tuple[PanelLeft, ...]:
    """Return a line for each painted panel; glass, trim, wraps and film are no paint and have none."""
    return tuple(
        _line(panel, [one for one in readings if one.panel == panel.code], cuts, floor, history)
        for panel in panels
        if not panel.surface or area(panel.surface) == "paint"
    )


def _line(
    panel: Panel, readings: Sequence[Reading], cuts: Sequence[Cut], floor: Floor, history: Sequence[Measured]
) -> PanelLeft:
    mine = [cut for cut in cuts if cut.panel in (None, panel.code)]
    each = [planned_removal(cut, history) for cut in mine]
    planned = reduce(add, each) if each else Removal(0, 0, 0, 0)
    floors = {WHOLE: floor.whole_um, CLEAR: floor.clear_um}
    films = (_film(name, um, readings, planned.counted) for name, um in floors.items())
    last = max(readings, key=lambda one: (one.at, one.when == AFTER), default=None)
    return PanelLeft(
        panel=panel,
        films=tuple(one for one in films if one is not None),
        not_readable=last is not None and not last.readable,
        removed_um=removed_over_life(readings),
        planned=planned,
        grades=frozenset(cut.grade for cut in mine),
    )


def _film(film: str, floor_um: int, readings: Sequence[Reading], planned_um: int) -> FilmLeft | None:
    last = last_of(readings, film)
    if last is None or last.um is None:
        return None
    thickest = max(one.um or 0 for one in readings if one.film == film)
    return FilmLeft(film, last.um, last.at, gone_since(readings, last), thickest, floor_um, planned_um)
