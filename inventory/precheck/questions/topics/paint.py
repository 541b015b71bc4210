"""A car's panels, what the gauge read on them, what the job cuts, and which pads and towels it takes."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from inventory.trade.paint import Cut, Floor, Measured, Panel, Reading
from inventory.trade.paint.values import USUAL_FLOOR
from inventory.trade.small_goods import SmallGood, Use
from inventory.trade.thickness import MICROMETRES


@dataclass(frozen=True)
class PaintFacts:
    """What is known of a car's paint, over all its visits, and of what is to touch it.

    `cuts` are those of all steps of the job, signed ones too. `history` is what the shop measured of the same
    abrasives. `goods` are pads and towels by container, `uses` says by step what they are to be used for.
    """

    panels: tuple[Panel, ...] = ()
    readings: tuple[Reading, ...] = ()
    cuts: tuple[Cut, ...] = ()
    floor: Floor = USUAL_FLOOR
    unit: str = MICROMETRES
    history: tuple[Measured, ...] = ()
    goods: Mapping[str, SmallGood] = field(default_factory=dict, hash=False)
    uses: Mapping[str, Use] = field(default_factory=dict, hash=False)
