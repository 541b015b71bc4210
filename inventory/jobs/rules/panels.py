"""A panel's line on the page about a car's paint: how much is left above the floor, as a bar and in words."""

from dataclasses import dataclass

from inventory.trade.paint import FilmLeft, PanelLeft
from inventory.trade.thickness import thickness

FILMS = {"whole": "whole film", "clear": "clear coat"}
# The bar is 112 units wide with an edge of 2 on either side, as a bottle's level is.
WIDTH, EDGE = 108.0, 2.0
USUAL = (
    "bonnet", "roof", "boot lid",
    "left front door", "right front door", "left rear door", "right rear door",
    "left front wing", "right front wing", "left rear wing", "right rear wing",
)  # fmt: skip
USUAL_PLASTIC = ("front bumper", "rear bumper")


@dataclass(frozen=True)
class Bar:
    """How wide the bar is drawn: what stays above the floor, and behind it what this job takes."""

    left: float
    planned: float

    @property
    def planned_x(self) -> float:
        """Where the planned part begins."""
        return round(EDGE + self.left, 1)


@dataclass(frozen=True)
class Left:
    """What the page says of a panel; without a figure there is no bar."""

    bar: Bar | None
    says: str
    read: str = ""
    removed: str = ""
    planned: str = ""


def left(line: PanelLeft | None, unit: str) -> Left:
    """Return a panel's line in the shop's unit; None stands for a panel that is no paint."""
    if line is None:
        return Left(None, "no paint")
    removed = thickness(line.removed_um, unit) if line.removed_um else ""
    planned = thickness(line.planned.counted, unit) if line.is_cut else ""
    film = line.tightest
    if film is None:
        says = "the gauge cannot read it" if line.not_readable else "not read yet"
        return Left(None, says, removed=removed, planned=planned)
    return Left(_bar(film), _says(film, unit), _read(film, unit), removed, planned)


def _bar(film: FilmLeft) -> Bar:
    ever = film.thickest_um - film.floor_um
    if ever <= 0:
        return Bar(0, 0)
    stays = min(1.0, film.fraction)
    now = min(1.0, max(0.0, (film.now_um - film.floor_um) / ever))
    return Bar(round(stays * WIDTH, 1), round(max(0.0, now - stays) * WIDTH, 1))


def _says(film: FilmLeft, unit: str) -> str:
    """Say what stays, with this job's cut taken off already."""
    floor = thickness(film.floor_um, unit)
    if film.left_um < 0:
        return f"{thickness(-film.left_um, unit)} under the floor of {floor}"
    if film.left_um == 0:
        return f"at the floor of {floor}"
    return f"{thickness(film.left_um, unit)} above the floor of {floor}"


def _read(film: FilmLeft, unit: str) -> str:
    since = f", {thickness(film.since_um, unit)} gone since" if film.since_um else ""
    return f"{thickness(film.last_um, unit)} {FILMS[film.film]}{since}"
