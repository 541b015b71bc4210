"""Text that flows round rectangles: each line takes the widest stretch that they leave it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from safety.print.fonts import BOLD, REGULAR, line_mm, printable, width_mm

CLEAR = 1.5  # between text and what it flows round
NARROW = 11.0  # a column is passed by that is narrower than so many capitals


@dataclass(frozen=True)
class Run:
    """One line of text where it stands, in millimetres inside the margin."""

    text: str
    bold: bool
    capital: float
    x: float
    top: float


@dataclass(frozen=True)
class Block:
    """A rectangle that text keeps clear of."""

    x: float
    top: float
    width: float
    height: float

    @property
    def bottom(self) -> float:
        """Return where it ends."""
        return self.top + self.height


@dataclass(frozen=True)
class Paragraph:
    """A text in one weight and size, with the space before it."""

    text: str
    capital: float
    bold: bool = False
    space: float = 0.0


def flow(
    texts: Sequence[Paragraph], blocks: Sequence[Block], top: float, width: float, height: float
) -> list[Run] | None:
    """Return the lines of paragraphs round blocks, None where they run over the height."""
    runs: list[Run] = []
    for one in texts:
        line, words = line_mm(one.capital), _words(one.text)
        top += one.space if runs else 0
        while words:
            if top + line > height + 0.01:
                return None
            left, right, down = _gap(blocks, top, line, width)
            taken = _fitting(words, one, right - left)
            if taken and right - left >= min(NARROW * one.capital, width):
                runs.append(Run(" ".join(words[:taken]), one.bold, one.capital, left, top))
                words, top = words[taken:], top + line
            elif down is None:
                return None  # a word that is wider than the label
            else:
                top = down
    return runs


def _words(text: str) -> list[str]:
    """Return what may stand at the start of a line: a dot between two facts stays with the first."""
    words: list[str] = []
    for word in printable(text).split():
        if word == "·" and words:
            words[-1] += " ·"
        else:
            words.append(word)
    return words


def _gap(blocks: Sequence[Block], top: float, line: float, width: float) -> tuple[float, float, float | None]:
    """Return the widest free stretch of a line, and where the next block beside it ends."""
    met = sorted(
        (one for one in blocks if one.top < top + line and one.bottom > top + 0.01), key=lambda one: one.x
    )
    starts = [0.0, *(one.x + one.width + CLEAR for one in met)]
    ends = [*(one.x - CLEAR for one in met), width]
    left, right = max(zip(starts, ends, strict=True), key=lambda stretch: stretch[1] - stretch[0])
    return left, right, min((one.bottom for one in met), default=None)


def _fitting(words: list[str], one: Paragraph, width: float) -> int:
    """Return how many of the words stand on one line."""
    taken, line = 0, ""
    for word in words:
        line = f"{line} {word}" if line else word
        if width_mm(line, font(one), one.capital) > width:
            break
        taken += 1
    return taken


def font(one: Paragraph) -> str:
    """Return the face of a paragraph."""
    return BOLD if one.bold else REGULAR
