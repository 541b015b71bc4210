"""What the air of a task is, joined: one value that prints itself as the document users rely on.

Traps: a figure in mg/m³ is null where the list that judges publishes none (without any list the released mass
still says it); marks travel; an air flow is called "for the room average" unless N4 gave it.
"""

from dataclasses import asdict, dataclass
from datetime import date
from typing import Any

from safety.air.clearing import clear_after
from safety.air.contaminants import Contaminant
from safety.air.facts import Facts, facts_of
from safety.air.findings import all_findings
from safety.air.values import EIGHT_HOURS, IN_WORDS, Task
from safety.findings import Finding

CAUTION = (
    "Screening arithmetic for a workshop: it never replaces a competent person's assessment. "
    "The product's own label and data sheet, local codes and licensed practice come first."
)


@dataclass(frozen=True)
class Air:
    """A task's air: its facts, the findings gravest first, and the minutes until it is clear."""

    facts: Facts
    findings: tuple[Finding, ...]
    clear_after_min: float | None

    def as_json(self) -> dict[str, Any]:
        """Return the document that a script reads."""
        return {
            "findings": [asdict(one) for one in self.findings],
            "contaminants": [contaminant_as_json(one) for one in self.facts.contaminants],
            "index": self.facts.index,
            "lel_percent": self.facts.fire.percent,
            "needed_m3_h": self.facts.figures.room_m3_h,
            "needed_m3_h_breathing_zone": self.facts.figures.breathing_zone_m3_h,
            "clear_after_min": self.clear_after_min,
        }


def air(task: Task, on: date) -> Air:
    """Return what the air of a task is, by the limits in force on a day."""
    facts = facts_of(task, on)
    return Air(facts, all_findings(facts), clear(facts))


def clear(facts: Facts) -> float | None:
    """Return the minutes after the end until every room average is at a tenth of its limit; None: unknown."""
    if not facts.known:
        return None
    return clear_after(facts.task.place, [room_share(one) for one in facts.contaminants])


def room_share(one: Contaminant) -> float | None:
    """Return the room's average at the end as a part of the limit that is shown."""
    limit = one.shown
    return None if one.room is None or limit is None else one.share(one.room.end, limit)


def contaminant_as_json(one: Contaminant) -> dict[str, Any]:
    """Return one contaminant with its figures in both units, null where not known or not listed."""
    limit = one.shown
    room, nose = (None if each is None else each.end for each in (one.room, one.nose))
    by_mass = limit is None or limit.mg_m3 is not None
    return {
        "name": one.name,
        "cas": one.emission.cas or None,
        "room_ppm": one.ppm(room),
        "breathing_zone_ppm": one.ppm(nose),
        "limit_ppm": None if limit is None else limit.ppm,
        "room_mg_m3": room if by_mass else None,
        "breathing_zone_mg_m3": nose if by_mass else None,
        "limit_mg_m3": None if limit is None else limit.mg_m3,
        "limit_from": None if limit is None else origin(limit.source, limit.kind),
        "mark": None if limit is None else limit.mark,
    }


def origin(source: str, kind: str) -> str:
    """Return the list, and the kind of limit where it is not the 8-hour one."""
    return source if kind == EIGHT_HOURS else f"{source}, {IN_WORDS[kind]}"
