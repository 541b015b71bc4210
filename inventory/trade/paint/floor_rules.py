"""The floor, the planned floor and thin film: of one panel only the gravest speaks, they are one cause."""

from collections.abc import Sequence

from inventory.trade.thickness import thickness
from safety.findings import Finding

from .left import FilmLeft, PanelLeft
from .pieces import COMMON, TRADE, each, finding, floors, reading
from .values import Floor


def below_floor(lines: Sequence[PanelLeft], floor: Floor, unit: str) -> list[Finding]:
    """Stop a cutting grade on a panel that reads under the floor of its film."""
    low = [one for one in lines if one.is_cut_hard and _under_floor(one)]
    if not low:
        return []
    says = f"Under the shop's floor: {each(low, lambda one: reading(one.tightest, unit))}."
    most = thickness(max(one.planned.counted for one in low), unit)
    because = f"The floor is {floors(floor, unit)}. A cutting grade is planned, and takes up to {most} more."
    do = "Take the cut off there, or plan finishing alone. Read again if the figure looks wrong."
    return [finding("paint.below_floor", "stop", says, because, do, COMMON, low)]


def planned_below_floor(lines: Sequence[PanelLeft], floor: Floor, unit: str) -> list[Finding]:
    """Stop where the planned cut would take a panel through the floor that it is still above."""
    through = [one for one in lines if _goes_through(one)]
    if not through:
        return []
    says = f"The planned cut goes below the shop's floor: {each(through, lambda one: _sum(one, unit))}."
    because = f"The floor is {floors(floor, unit)}. {_whose(through)}"
    do = "Plan a gentler cut or fewer steps there. A test spot, read before and after, gives the real figure."
    return [finding("paint.planned_below_floor", "stop", says, because, do, TRADE, through)]


def thin(lines: Sequence[PanelLeft], floor: Floor, unit: str) -> list[Finding]:
    """Ask where thin whole film is to be cut, or where even finishing ends below the floor."""
    found = [(one, film) for one in lines if (film := _thin_film(one, floor)) is not None]
    if not found:
        return []
    films = {one.panel.code: film for one, film in found}
    panels = [one for one, _ in found]
    says = f"Thin paint: {each(panels, lambda one: reading(films[one.panel.code], unit))}."
    because = (
        f"Under {thickness(floor.finish_only_um, unit)} of whole film this shop only finishes. "
        f"Finishing takes up to {thickness(1, unit)} too, and the floor is {floors(floor, unit)}."
    )
    do = "Plan a finishing grade alone there. Where that too ends below the floor, leave the panel as it is."
    return [finding("paint.thin", "ask", says, because, do, COMMON, panels)]


def _under_floor(one: PanelLeft) -> bool:
    return any(film.now_um < film.floor_um for film in one.films)


def _goes_through(one: PanelLeft) -> bool:
    return one.is_cut_hard and _ends_below(one) and not _under_floor(one)


def _ends_below(one: PanelLeft) -> bool:
    return one.tightest is not None and one.tightest.left_um < 0


def _thin_film(one: PanelLeft, floor: Floor) -> FilmLeft | None:
    if not one.is_cut_hard:
        return one.tightest if _ends_below(one) else None
    if _ends_below(one):
        return None  # a stop speaks of it
    return one.whole if one.whole and one.whole.now_um < floor.finish_only_um else None


def _sum(one: PanelLeft, unit: str) -> str:
    film = one.tightest
    if film is None:
        return ""
    planned, after = thickness(film.planned_um, unit), thickness(film.after_um, unit)
    return f"{reading(film, unit)} less {planned} is {after}"


def _whose(lines: Sequence[PanelLeft]) -> str:
    own = [one.planned.measurements for one in lines]
    if min(own):
        return f"What the cut takes is the shop's own median of {min(own)} measurements."
    return (
        "What the cut takes is the upper end of the trade's range, until the shop has measured three times."
    )
