"""When to change an organic-vapour cartridge: hours by the rule of thumb, and the hours worn so far.

Traps: odour is not a schedule. The rule holds above a boiling point of 70 °C and below 200 ppm; outside, for
other gases and for what nobody knows there is none, and the maker's hours are asked for. It is a rule to be
used beside the maker's data, never instead of it. Of several vapours the sum of their ppm and the lowest
boiling point count.
Source: OSHA's respirator pages, quoting AIHA *The Occupational Environment* ch. 36 (read).
"""

import math
from dataclasses import dataclass

from safety.findings import Finding

HOURS, AT_PPM = 8.0, 200.0
ABOVE_C = 70.0
HUMID = 85.0
LONGER = 5.0  # for a tenth of the concentration
LEAST_PPM = 2.0  # two tenfold steps; what lies below counts as 2 ppm: ours, no rule was made for traces
RULE = "OSHA quoting AIHA: a rule of thumb, to be used beside the maker's data (read)"
MAKERS = "The cartridge maker's own hours, as the shop typed them"


class CartridgeError(ValueError):
    """A load that cannot be; the sentence says what was expected."""


@dataclass(frozen=True)
class Load:
    """What a cartridge meets. ppm in the breathing zone; work rate 1 is normal, 2 breathes twice as much."""

    ppm: float | None
    boiling_c: float | None
    humidity: float | None = None
    work_rate: float = 1.0
    organic: bool = True

    def __post_init__(self) -> None:
        """Refuse what cannot be breathed."""
        if not self.work_rate > 0 or (self.ppm is not None and not self.ppm >= 0):
            raise CartridgeError("work_rate: more than 0 was expected; ppm: 0 or more.")


@dataclass(frozen=True)
class Schedule:
    """The hours a cartridge lasts, None where nobody can say, why, and whose word it is."""

    hours: float | None
    because: str
    source: str


def change_out(load: Load, typed_hours: float | None = None) -> Schedule:
    """Return the schedule: the maker's hours where the shop typed them, else the rule's."""
    if typed_hours is not None:
        if not typed_hours > 0:
            raise CartridgeError(f"typed_hours: more than 0 was expected, not {typed_hours:g}.")
        return Schedule(typed_hours, f"Its maker gives {typed_hours:g} hours.", MAKERS)
    no_rule = why_no_rule(load)
    if no_rule or load.ppm is None:
        return Schedule(None, no_rule, RULE)
    humid = load.humidity is None or load.humidity > HUMID
    steps = math.log10(AT_PPM / max(load.ppm, LEAST_PPM))
    hours = HOURS * LONGER**steps / load.work_rate / (2 if humid else 1)
    return Schedule(hours, why(load, humid), RULE)


def why_no_rule(load: Load) -> str:
    """Return why the rule of thumb says nothing, "" where it speaks."""
    if not load.organic:
        return "The rule of thumb is for organic vapours alone."
    if load.ppm is None or load.boiling_c is None:
        return "Concentration or boiling point is not known."
    if load.boiling_c <= ABOVE_C:
        return f"It boils at {load.boiling_c:g} °C; the rule of thumb begins above {ABOVE_C:g} °C."
    if load.ppm >= AT_PPM:
        return f"{load.ppm:.0f} ppm are breathed; the rule of thumb ends at {AT_PPM:g} ppm."
    return ""


def why(load: Load, humid: bool) -> str:
    """Return the numbers behind the hours."""
    ppm = max(load.ppm or 0.0, LEAST_PPM)
    said = f"{HOURS:g} hours at {AT_PPM:g} ppm, five times longer at a tenth; {ppm:.3g} ppm counted"
    if humid:
        said += ", halved since humidity is " + (
            "not known" if load.humidity is None else f"over {HUMID:g} %"
        )
    return said + (f", work rate {load.work_rate:g}." if load.work_rate != 1 else ".")


def cartridge_change(
    name: str, used_hours: float, schedule: Schedule, task_hours: float = 0.0
) -> tuple[Finding, ...]:
    """Return the finding on a cartridge worn for so many hours, before a task of so many."""
    if schedule.hours is None:
        says = f"Nobody can say how long {name} lasts here."
        do = "Type the hours from its maker's data, or wear supplied air. Odour is no schedule."
        return (Finding("cartridges.hours", "ask", says, schedule.because, do, schedule.source, (name,)),)
    left = schedule.hours - used_hours
    worn = f"{name} has been worn {used_hours:.3g} of its {schedule.hours:.3g} hours"
    if left <= 0:
        do = "Fit a new cartridge and write today's date on it. Odour is no schedule."
        return (
            Finding("cartridges.spent", "stop", f"{worn}.", schedule.because, do, schedule.source, (name,)),
        )
    if task_hours <= left:
        return ()
    says = f"{worn}; the task takes {task_hours:.3g} more."
    do = "Fit a new cartridge before you start. Odour is no schedule."
    return (Finding("cartridges.change", "ask", says, schedule.because, do, schedule.source, (name,)),)
