"""Sheets of codes for the station: badges, places and command cards, drawn as cards to cut out."""

from collections.abc import Sequence

from safety.print import symbols
from safety.print.fonts import BOLD, WordTooWide, line_mm, width_mm, wrapped
from safety.print.pen import Pen, paper_size

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
    "washed": "Washed (pad, towel)",
}


WIDTH, HEIGHT, PAD, SYMBOL, LETTERS = 62.0, 34.0, 3.0, 18.0, 4.0
NAMES = (4.6, 4.0, 3.4, 2.8)  # capital heights; the first that takes two lines at most is used


def code_sheet(named: Sequence[tuple[str, str]], paper: str) -> bytes:
    """Return a PDF of cards to cut out: the name, a square symbol and the letters of each (name, code).

    Raises UnknownPaper.
    """
    width, height = paper_size(paper)
    columns, rows = int((width - 16) // WIDTH), int((height - 16) // HEIGHT)
    left, above = (width - columns * WIDTH) / 2, (height - rows * HEIGHT) / 2
    pen = Pen(width, height, "Codes for the station")
    for count, (name, code) in enumerate(named):
        place = count % (columns * rows)
        if count and not place:
            pen.next_page()
        row, column = divmod(place, columns)
        _card(pen, name, code, left + column * WIDTH, above + row * HEIGHT)
    return pen.pdf()


def _card(pen: Pen, name: str, code: str, x: float, top: float) -> None:
    pen.frame(x, top, WIDTH, HEIGHT, line=0.1)
    lines, capital = _name(name)
    pen.lines(x + PAD, top + 1.5, lines, capital, bold=True)
    symbol = top + HEIGHT - PAD - SYMBOL
    symbols.draw(pen, code, "matrix", x + PAD, symbol, SYMBOL)
    right, middle = x + PAD + SYMBOL + 3, symbol + SYMBOL / 2
    pen.text(right, middle - line_mm(LETTERS), code[:4], LETTERS, bold=True)
    pen.text(right, middle, code[4:], LETTERS)


def _name(name: str) -> tuple[Sequence[str], float]:
    room, width = HEIGHT - SYMBOL - PAD - 1.5, WIDTH - 2 * PAD
    for capital in NAMES:
        try:
            lines = wrapped(name, BOLD, capital, width)
        except WordTooWide:
            continue
        if len(lines) * line_mm(capital) <= room:
            return lines, capital
    # Longer than any name should be: one line, as large as the card is wide.
    return [name], NAMES[-1] * min(1, width / width_mm(name, BOLD, NAMES[-1]))
