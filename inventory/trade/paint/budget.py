"""The paint budget of a job: a line a panel, and what is wrong, the gravest first.

No rule infers clear coat from whole film: the range is too wide. Every stop here protects paint, not people.
"""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from inventory.trade.thickness import MICROMETRES
from safety.findings import Finding, gravest_first

from .floor_rules import below_floor, planned_below_floor, thin
from .left import PanelLeft, panels_left
from .rules import no_reading, repaint, total_cut
from .values import USUAL_FLOOR, Cut, Floor, Measured, Panel, Reading

Rule = Callable[[Sequence[PanelLeft], Floor, str], list[Finding]]

RULES: tuple[Rule, ...] = (no_reading, below_floor, planned_below_floor, thin, total_cut, repaint)


@dataclass(frozen=True)
class PaintBudget:
    """What is left of each painted panel, and the findings about it; `about` holds panel codes."""

    panels: tuple[PanelLeft, ...]
    findings: tuple[Finding, ...]


def budget(
    panels: Iterable[Panel],
    readings: Sequence[Reading],
    cuts: Sequence[Cut],
    floor: Floor = USUAL_FLOOR,
    history: Sequence[Measured] = (),
    unit: str = MICROMETRES,
) -> PaintBudget:
    """Return the budget of a car from its readings of all visits and the cuts that are still to be made.

    `unit`, µm or mil, is how sentences show thickness.
    """
    lines = panels_left(panels, readings, cuts, floor, history)
    to_cut = [one for one in lines if one.is_cut]
    return PaintBudget(lines, gravest_first(found for rule in RULES for found in rule(to_cut, floor, unit)))
