"""A drawing as SVG that stands in a page: the page's own ink, no style, a title and a description."""

from html import escape

from inventory.bays.charts.picture import TEXT, Drawing, Line, Words

# Weight and dashes of each kind of line.
PENS = {
    "nose": (2.0, ""),
    "room": (1.4, "5 3"),
    "limit": (1.2, "2 3"),
    "axis": (0.8, ""),
    "tick": (0.6, ""),
}


def svg(drawing: Drawing, name: str) -> str:
    """Return the drawing as SVG; `name` makes its ids unique on the page (a step's code)."""
    drawn = [_line(line) for line in drawing.lines] + [_words(text) for text in drawing.words]
    return (
        f'<svg class="chart" role="img" viewBox="0 0 {drawing.width:g} {drawing.height:g}" '
        f'aria-labelledby="{escape(name)}-title {escape(name)}-desc" xmlns="http://www.w3.org/2000/svg">'
        f'<title id="{escape(name)}-title">{escape(drawing.title)}</title>'
        f'<desc id="{escape(name)}-desc">{escape(drawing.says)}</desc>{"".join(drawn)}</svg>'
    )


def _line(line: Line) -> str:
    weight, dashes = PENS[line.kind]
    points = " ".join(f"{x:.1f},{y:.1f}" for x, y in line.points)
    dashed = f' stroke-dasharray="{dashes}"' if dashes else ""
    return (
        f'<polyline class="chart-{line.kind}" fill="none" stroke="currentColor" '
        f'stroke-width="{weight:g}"{dashed} points="{points}"/>'
    )


def _words(text: Words) -> str:
    anchor = f' text-anchor="{text.anchor}"' if text.anchor != "start" else ""
    strong = ' font-weight="bold"' if text.strong else ""
    at = f'x="{text.x:.1f}" y="{text.y:.1f}" font-size="{TEXT:g}"'
    return f'<text class="chart-words" fill="currentColor" {at}{anchor}{strong}>{escape(text.text)}</text>'
