"""The one face on paper: Atkinson Hyperlegible, embedded. Heights are capital heights in millimetres."""

import unicodedata
from functools import cache, lru_cache
from importlib.resources import as_file, files

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

REGULAR = "Atkinson"
BOLD = "Atkinson-Bold"
FILES = {REGULAR: "AtkinsonHyperlegible-Regular.ttf", BOLD: "AtkinsonHyperlegible-Bold.ttf"}
MM = 72 / 25.4
CAPITAL = 0.668  # capital height of this face, in em

# What the face lacks is written in words rather than as an empty box.
INSTEAD = {"→": " to ", "⚠": "", "α": "alpha", "β": "beta", "\u202f": " ", "\u2011": "-", "\t": " "}


class WordTooWide(ValueError):
    """A single word that no line of this width can hold."""

    def __init__(self, word: str, needs_mm: float, has_mm: float) -> None:
        self.word, self.needs_mm, self.has_mm = word, needs_mm, has_mm
        super().__init__(f"“{word}” needs {needs_mm:.0f} mm, and there are {has_mm:.0f} mm.")


@cache
def register() -> None:
    """Make both weights known to reportlab, once."""
    with as_file(files("fontpkg_atkinson_hyperlegible") / "files") as folder:
        for name, file in FILES.items():
            pdfmetrics.registerFont(TTFont(name, folder / file))


@cache
def glyphs(name: str) -> frozenset[int]:
    """Return the code points that the face can draw."""
    register()
    return frozenset(pdfmetrics.getFont(name).face.charToGlyph)


def printable(text: str) -> str:
    """Return text in glyphs that the face has; letters beyond it lose their marks, else become “?”."""
    out = []
    for letter in text:
        letter = INSTEAD.get(letter, letter)
        if all(ord(one) in glyphs(REGULAR) for one in letter):
            out.append(letter)
            continue
        plain = [one for one in unicodedata.normalize("NFKD", letter) if ord(one) in glyphs(REGULAR)]
        out.append("".join(plain) or "?")
    return " ".join("".join(out).split())


def points(capital_mm: float) -> float:
    """Return the font size in points whose capitals are that high."""
    return capital_mm / CAPITAL * MM


def line_mm(capital_mm: float) -> float:
    """Return the distance from line to line: closer for headings, which are short."""
    return capital_mm / CAPITAL * (1.08 if capital_mm >= 7 else 1.22)


@lru_cache(maxsize=8192)
def width_mm(text: str, font: str, capital_mm: float) -> float:
    """Return how wide a text runs."""
    register()
    return float(pdfmetrics.stringWidth(text, font, points(capital_mm))) / MM


@lru_cache(maxsize=4096)  # a poster asks for the same heights many times while it looks for its sheets
def wrapped(text: str, font: str, capital_mm: float, width: float) -> tuple[str, ...]:
    """Return the lines of a text in a column; raise WordTooWide rather than run over."""
    lines: list[str] = []
    line = ""
    for word in printable(text).split():
        if (needs := width_mm(word, font, capital_mm)) > width:
            raise WordTooWide(word, needs, width)
        longer = f"{line} {word}" if line else word
        if width_mm(longer, font, capital_mm) <= width:
            line = longer
        else:
            lines.append(line)
            line = word
    return (*lines, line) if line else tuple(lines)
