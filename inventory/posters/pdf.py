"""Sheets of codes for the station: badges, places and command cards, drawn as small labels."""

from collections.abc import Iterable

from safety.print.label import smallest_for
from safety.print.label_sheets import print_labels
from safety.print.values import LabelContent

COMMAND_WORDS = {
    "yes": "Yes", "no": "No", "undo": "Undo", "open": "Open", "use": "Use", "fill": "Fill", "rinse": "Rinsed",
    "move": "Move", "count": "Count", "discard": "Discard", "return": "Return to supplier", "hold": "Hold",
    "release": "Release", "receive": "Receive", "finished": "Bottle finished", "planned": "As planned",
    "damaged": "Damaged", "short": "Short", "wrong": "Wrong item", "no_lot": "Lot not given",
    "no_date": "No date", "done": "Done", "sign": "Sign the stage", "emergency": "Emergency", "reprint": "Label again",
}  # fmt: skip


def code_sheet(named: Iterable[tuple[str, str]], paper: str) -> bytes:
    """Return a PDF with a square symbol, the letters and the name of each (name, code)."""
    contents = [LabelContent(name=name, code=code) for name, code in named]
    size = smallest_for(max(contents, key=lambda one: len(one.name)), "small")
    return print_labels(contents, size, paper)[0]
