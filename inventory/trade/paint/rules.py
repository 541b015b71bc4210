"""What else is asked of the panels to be cut: were they read, what has gone over their life, who painted."""

from collections.abc import Sequence

from inventory.trade.naming import agreeing
from inventory.trade.thickness import thickness
from safety.findings import Finding

from .left import PanelLeft
from .pieces import COMMON, REFINISH, each, finding, names, reading
from .values import Floor

MOST_CUT_UM = 12.7
KEPT_UM = 50
NO_MAGNET = {"painted_plastic", "carbon"}  # surfaces on which the common gauge reads nothing


def no_reading(lines: Sequence[PanelLeft], floor: Floor, unit: str) -> list[Finding]:
    """Ask once a car where a panel to be cut was never read; also where nobody said what it is made of."""
    unread = [one for one in lines if not one.films and not one.not_readable and _reads_on(one)]
    if not unread:
        return []
    are, their = agreeing(len(unread), "is", "are"), agreeing(len(unread), "its", "their")
    says = f"{names(unread)} {are} to be cut, and {their} paint was not read."
    because = (
        f"Whole film is usually {thickness(80, unit)} to {thickness(180, unit)}. "
        f"Under {thickness(floor.whole_um, unit)} this shop does not cut, and the eye cannot tell."
    )
    do = (
        "Read the gauge there, on clean and dry paint. "
        "Where it cannot read, as on plastic or carbon, record “not readable”."
    )
    return [finding("paint.no_reading", "ask", says, because, do, COMMON, unread)]


def total_cut(lines: Sequence[PanelLeft], floor: Floor, unit: str) -> list[Finding]:
    """Ask where all visits together would take more than a refinish guide allows."""
    worn = [one for one in lines if one.removed_um + one.planned.counted > MOST_CUT_UM]
    if not worn:
        return []
    most = thickness(MOST_CUT_UM, unit)
    says = f"More than {most} would be gone: {each(worn, lambda one: _life(one, unit))}."
    because = (
        f"A refinish guide keeps {thickness(KEPT_UM, unit)} of clear coat, "
        f"and has it sprayed again when more than {most} goes."
    )
    do = "Plan a gentler cut there, or agree with the customer that this was the last."
    return [finding("paint.total_cut", "ask", says, because, do, REFINISH, worn)]


def repaint(lines: Sequence[PanelLeft], floor: Floor, unit: str) -> list[Finding]:
    """Tell where the whole film is so thick that the panel was probably painted again."""
    thick = [one for one in lines if one.whole and one.whole.now_um > floor.repaint_um]
    if not thick:
        return []
    says = f"Probably painted again: {each(thick, lambda one: reading(one.whole, unit))}."
    because = (
        f"Over {thickness(floor.repaint_um, unit)} a repaint is likely. "
        "How much of it is clear coat, whole film does not say."
    )
    do = "Ask the customer what was done, and test a spot before the cut."
    return [finding("paint.repaint", "tell", says, because, do, COMMON, thick)]


def _reads_on(one: PanelLeft) -> bool:
    return one.panel.substrate in {"steel", "aluminium", ""} and one.panel.surface not in NO_MAGNET


def _life(one: PanelLeft, unit: str) -> str:
    gone, planned = thickness(one.removed_um, unit), thickness(one.planned.counted, unit)
    return f"{gone} gone so far, {planned} planned"
