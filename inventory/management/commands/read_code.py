"""`read_code TEXT`: what a scan is understood to be."""

from argparse import ArgumentParser
from typing import Any

from django.utils import timezone

from inventory.codes import Reading, Readings, pair, read_code
from inventory.management.scripted import Answer, ScriptedCommand


class Command(ScriptedCommand):
    """Reads one scan. Needs no database; a code that cannot be read is an answer, not an error."""

    help = "Say what a scanned code is: one of ours, or a product, lot and dates from a maker's symbol."

    def add_arguments(self, parser: ArgumentParser) -> None:
        """Take the scan as the scanner typed it."""
        parser.add_argument("text", help="what the scanner typed; a group separator may be written ^]")

    def answer(self, **options: Any) -> Answer:
        """Return the readings in words, and as JSON."""
        found = read_code(options["text"], today=timezone.localdate())
        return _said(found), found.as_json()


def _said(found: Readings) -> str:
    lines = [_described(reading) for reading in found.readings]
    return "\n".join([*lines, *(f"Asked: {ask}" for ask in found.asks), *found.errors])


def _described(reading: Reading) -> str:
    if reading.code:
        return f"{reading.kind}: {pair(reading.code)}"
    given = {name: value for name, value in reading.as_json().items() if value is not None and name != "kind"}
    return f"{reading.kind}: " + ", ".join(f"{name} {value}" for name, value in given.items())
