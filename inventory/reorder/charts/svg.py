"""A chart as SVG that stands in a page: the page's own ink, no style, a title and a description."""

from html import escape

from inventory.reorder.charts.labels import TEXT
from inventory.reorder.charts.picture import PENS, Chart, Stroke, Words


def svg(chart: Chart, name: str) -> str:
    """Return the chart as SVG to stand in a page: currentColor and classes, a title and a description.

    `name` makes its ids unique on the page (a product's code).
    """
    drawn = [_svg_stroke(stroke) for stroke in chart.strokes] + [_svg_words(text) for text in chart.words]
    return (
        f'<svg class="chart" role="img" viewBox="0 0 {chart.width:g} {chart.height:g}" '
        f'aria-labelledby="{escape(name)}-title {escape(name)}-desc" xmlns="http://www.w3.org/2000/svg">'
        f'<title id="{escape(name)}-title">{escape(chart.title)}</title>'
        f'<desc id="{escape(name)}-desc">{escape(chart.says)}</desc>{"".join(drawn)}</svg>'
    )


def _svg_stroke(stroke: Stroke) -> str:
    weight, dashes = PENS[stroke.kind]
    points = " ".join(f"{x:.1f},{y:.1f}" for x, y in stroke.points)
    dashed = f' stroke-dasharray="{" ".join(f"{dash:g}" for dash in dashes)}"' if dashes else ""
    return (
        f'<polyline class="chart-{stroke.kind}" fill="none" stroke="currentColor" stroke-width="{weight:g}"'
        f'{dashed} points="{points}"/>'
    )


def _svg_words(text: Words) -> str:
    anchor = ' text-anchor="end"' if text.ends else ""
    strong = ' font-weight="bold"' if text.strong else ""
    at = f'x="{text.x:.1f}" y="{text.y:.1f}" font-size="{TEXT:g}"'
    return f'<text class="chart-words" fill="currentColor" {at}{anchor}{strong}>{escape(text.text)}</text>'
