"""A drawing in one ink, in points from its top left corner, and as SVG that stands in a page. Pure."""

from collections.abc import Mapping
from dataclasses import dataclass
from html import escape

LETTER = 0.54  # mean width of a letter of the face, as a share of its size
# By the kind of a line: its weight in points, and its dashes.
Pens = Mapping[str, tuple[float, tuple[float, ...]]]


@dataclass(frozen=True)
class Stroke:
    """A line through points; its `kind` chooses a pen."""

    kind: str
    points: tuple[tuple[float, float], ...]


@dataclass(frozen=True)
class Words:
    """A text whose base line starts, ends or is centred at x, y; `anchor` is start, middle or end."""

    x: float
    y: float
    text: str
    anchor: str = "start"
    strong: bool = False


@dataclass(frozen=True)
class Drawing:
    """A picture of `width` by `height`, its letters' size, its title and what it shows in one sentence."""

    width: float
    height: float
    letters: float
    title: str
    says: str
    strokes: tuple[Stroke, ...]
    words: tuple[Words, ...]


def svg(drawing: Drawing, pens: Pens, name: str) -> str:
    """Return the drawing in the page's own ink, with title and description.

    `name` makes its ids unique on the page (a product's or a step's code).
    """
    drawn = [_stroke(stroke, pens) for stroke in drawing.strokes]
    drawn += [_words(text, drawing.letters) for text in drawing.words]
    return (
        f'<svg class="chart" role="img" viewBox="0 0 {drawing.width:g} {drawing.height:g}" '
        f'aria-labelledby="{escape(name)}-title {escape(name)}-desc" xmlns="http://www.w3.org/2000/svg">'
        f'<title id="{escape(name)}-title">{escape(drawing.title)}</title>'
        f'<desc id="{escape(name)}-desc">{escape(drawing.says)}</desc>{"".join(drawn)}</svg>'
    )


def _stroke(stroke: Stroke, pens: Pens) -> str:
    weight, dashes = pens[stroke.kind]
    points = " ".join(f"{x:.1f},{y:.1f}" for x, y in stroke.points)
    dashed = f' stroke-dasharray="{" ".join(f"{dash:g}" for dash in dashes)}"' if dashes else ""
    return (
        f'<polyline class="chart-{stroke.kind}" fill="none" stroke="currentColor" stroke-width="{weight:g}"'
        f'{dashed} points="{points}"/>'
    )


def _words(text: Words, letters: float) -> str:
    anchor = f' text-anchor="{text.anchor}"' if text.anchor != "start" else ""
    strong = ' font-weight="bold"' if text.strong else ""
    at = f'x="{text.x:.1f}" y="{text.y:.1f}" font-size="{letters:g}"'
    return f'<text class="chart-words" fill="currentColor" {at}{anchor}{strong}>{escape(text.text)}</text>'
