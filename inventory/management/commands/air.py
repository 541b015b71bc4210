"""`air [FILE]`: what people breathe during a task, and what would mend it."""

from argparse import ArgumentParser
from collections.abc import Iterator
from typing import Any

from django.utils import timezone

from inventory.management.scripted import Answer, ScriptedCommand, read_json
from safety.air.answer import CAUTION, Air, air
from safety.air.saying import number
from safety.air.task import TaskError, read_task
from safety.findings import MARKS


class Command(ScriptedCommand):
    """Judges one task. Needs no database."""

    help = "Say what is breathed during a task, in the room and at the work, against the limits."
    domain_errors = (TaskError,)

    def add_arguments(self, parser: ArgumentParser) -> None:
        """Take the task's file."""
        parser.add_argument("file", nargs="?", help="the task as JSON; standard input where none is named")

    def answer(self, **options: Any) -> Answer:
        """Return the findings and figures in sentences, and as JSON."""
        found = air(read_task(read_json(options["file"])), timezone.localdate())
        return "\n".join(said(found)), found.as_json()


def said(found: Air) -> Iterator[str]:
    """Yield the answer line by line: findings, then figures, then what all of it is worth."""
    for one in found.findings:
        grade = "NOTE" if one.grade == "tell" else one.grade.upper()
        yield f"{grade}: {one.says} {one.do}"
        yield f"  {one.because} {one.source}"
    document = found.as_json()
    yield from (line(one) for one in document["contaminants"])
    yield f"All of them together, parts of the 8-hour limits: {shown(document['index'])}"
    yield f"Lower explosive limit, room average: {shown(document['lel_percent'], ' %')}"
    yield f"Air flow needed for the room average: {shown(document['needed_m3_h'], ' m³/h')}"
    breathing = shown(document["needed_m3_h_breathing_zone"], " m³/h")
    yield f"Air flow needed for the breathing zone: {breathing}; both must be met"
    yield f"Clear after the end: {shown(found.clear_after_min, ' min')}"
    yield CAUTION


def line(one: dict[str, Any]) -> str:
    """Return one contaminant with its figures, its limit and how far that was checked."""
    figures = [
        f"{place} {shown(one[f'{key}_ppm'], ' ppm')} / {shown(one[f'{key}_mg_m3'], ' mg/m³')}"
        for place, key in (("room", "room"), ("breathing zone", "breathing_zone"), ("limit", "limit"))
    ]
    origin = f" ({one['limit_from']}, {MARKS[one['mark']]})" if one["limit_from"] else " (none found)"
    return f"{one['name']}: {', '.join(figures)}{origin}"


def shown(value: float | None, unit: str = "") -> str:
    """Return a figure with its unit, or that there is none."""
    return "no figure" if value is None else f"{number(value)}{unit}"
