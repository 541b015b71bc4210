"""Sheets of codes for the station: badges, places and command cards, drawn as labels."""

from collections.abc import Sequence

from safety.print.label import SIZES, smallest_for
from safety.print.label_sheets import print_labels
from safety.print.values import LabelContent

COMMAND_WORDS = {
    "yes": "Yes",
    "no": "No",
    "undo": "Undo",
    "open": "Open",
    "use": "Use",
    "fill": "Fill",
    "rinse": "Rinsed",
    "move": "Move",
    "count": "Count",
    "discard": "Discard",
    "return": "Return to supplier",
    "hold": "Hold",
    "release": "Release",
    "receive": "Receive",
    "finished": "Bottle finished",
    "planned": "As planned",
    "damaged": "Damaged",
    "short": "Short",
    "wrong": "Wrong item",
    "no_lot": "Lot not given",
    "no_date": "No date",
    "done": "Done",
    "sign": "Sign the stage",
    "emergency": "Emergency",
    "reprint": "Label again",
    "bring_back": "Bring back",
}


def code_sheet(named: Sequence[tuple[str, str]], paper: str) -> bytes:
    """Return a PDF with a square symbol, the letters and the name of each (name, code).

    All are of one size, the smallest that carries the widest name. Raises LabelTooSmall, UnknownPaper.
    """
    contents = [LabelContent(name=name, code=code) for name, code in named]
    order = list(SIZES)
    size = max((smallest_for(one, "small").name for one in contents), key=order.index)
    return print_labels(contents, SIZES[size], paper)[0]
