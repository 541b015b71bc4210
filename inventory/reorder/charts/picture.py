"""Stock to come as a picture: one geometry, drawn as SVG in a page and on paper by `pdf`.

One ink. The zero line is named, deliveries and losses are labelled where they happen, and `weeks` gives the
same figures as a table. Lengths are points, y runs down from the top.
"""

from collections.abc import Iterator
from datetime import timedelta
from itertools import pairwise
from math import ceil

from inventory.drawing import LETTER, Drawing, Pens, Stroke, Words
from inventory.reorder.charts.labels import LEFT, RIGHT, TEXT, events, lanes_of, runs_left, x_of
from inventory.reorder.rules import Coming, Line, words

LANE, PLOT, BELOW = 12.0, 66.0, 16.0
# What the name of a day below the line takes, with the gap behind it.
DAY_ROOM = 36.0
# Weight in points and dashes of each kind of line.
PENS: Pens = {
    "level": (1.6, ()),
    "order": (1.2, (3, 2)),
    "zero": (0.8, ()),
    "mark": (0.4, ()),
    "tick": (0.4, ()),
}


def path(coming: Coming) -> list[tuple[float, float]]:
    """Return (days from the first morning, level): up when a delivery comes, down when stock dies."""
    points, level = [(0.0, coming.start)], coming.start
    for offset, end in enumerate(coming.levels):
        day = coming.from_on + timedelta(days=offset)
        came = sum(due.amount for due in coming.deliveries if due.on == day)
        died = sum(loss.amount for loss in coming.losses if loss.on == day)
        if came:
            points.append((float(offset), level + came))
        points.append((offset + 1.0, end + died))
        if died:
            points.append((offset + 1.0, end))
        level = end
    return points


def stock_chart(line: Line, width: float = 340.0) -> Drawing:
    """Return the picture of one product's stock to come; solid without this order, dashed with it."""
    paths = [("level", path(line.coming))]
    if line.choice:
        paths.insert(0, ("order", path(line.coming_with_order)))
    most = max((level for _, points in paths for _, level in points), default=0.0) or 1.0
    placed = lanes_of(events(line), line.wanted.days, width)
    top = LANE * (max(lane for _, lane in placed) + 1) + 4
    zero = top + PLOT

    def at(point: tuple[float, float]) -> tuple[float, float]:
        return x_of(point[0], line.wanted.days, width), zero - point[1] / most * PLOT

    strokes = [Stroke("zero", (at((0, 0)), at((line.wanted.days, 0)))), *_ticks(line, width, zero)]
    texts = [*_axis(line, width, zero)]
    for event, lane in placed:
        x, y = x_of(event.day, line.wanted.days, width), LANE * (lane + 1)
        strokes.append(Stroke("mark", ((x, y - TEXT), (x, zero))))
        ends = runs_left(event, x, width)
        texts.append(
            Words(x - 3 if ends else x + 3, y - 2, event.text, "end" if ends else "start", event.strong)
        )
    drawn = [Stroke(kind, tuple(map(at, points))) for kind, points in paths]
    strokes += drawn
    marks = [stroke.points[0][0] for stroke in strokes if stroke.kind == "mark"]
    texts += _named(drawn, marks, zero)
    title = f"Stock to come: {line.product.name}"
    return Drawing(width, zero + BELOW, TEXT, title, says(line), tuple(strokes), tuple(texts))


def says(line: Line) -> str:
    """Return in one sentence what the picture shows, for those who do not see it."""
    product, last = line.product, words.day(line.wanted.until_on)
    start, end = (words.amount(base, product) for base in (line.coming.start, line.coming.levels[-1]))
    shows = f"{start} on {words.day(line.wanted.from_on)}, {end} on {last}"
    if line.choice:
        shows += f"; with this order {words.amount(line.coming_with_order.levels[-1], product)}"
    labels = [event.text for event in events(line)[1:]]
    return f"{shows}. {'; '.join(labels)}." if labels else f"{shows}."


def _named(drawn: list[Stroke], marks: list[float], zero: float) -> Iterator[Words]:
    """Name each line under its right end, left of the marks there, where there is room for it."""
    names = {"level": "without this order", "order": "with this order"}
    for stroke in drawn if len(drawn) > 1 else ():
        long = len(names[stroke.kind]) * TEXT * LETTER
        x = _clear_of(marks, stroke.points[-1][0], long)
        here, others = _height(stroke, x), [_height(other, x) for other in drawn if other is not stroke]
        below = min([zero, *(y for y in others if y >= here)])
        if below - here > TEXT + 4 and x - long > LEFT:
            yield Words(x, here + TEXT + 1, names[stroke.kind], anchor="end")


def _clear_of(marks: list[float], x: float, long: float) -> float:
    """Return the end of a text that no mark runs through, x or left of it."""
    for mark in sorted(marks, reverse=True):
        if x - long < mark < x:
            x = mark - 3
    return x


def _height(stroke: Stroke, x: float) -> float:
    """Return y of a line at x; of two at one x, the lower on the page."""
    found = [
        y1 + (y2 - y1) * (x - x1) / (x2 - x1)
        for (x1, y1), (x2, y2) in pairwise(stroke.points)
        if x1 <= x <= x2 and x1 < x2
    ]
    return max(found, default=stroke.points[-1][1])


def _ticks(line: Line, width: float, zero: float) -> Iterator[Stroke]:
    for day in range(0, line.wanted.days, 7):
        x = x_of(day, line.wanted.days, width)
        yield Stroke("tick", ((x, zero), (x, zero + 3)))


def _axis(line: Line, width: float, zero: float) -> Iterator[Words]:
    """Name the weeks below the line, as many as there is room for, and the zero line at its end."""
    named, days = "0 = empty", line.wanted.days
    room = x_of(7, days, width) - LEFT
    every = 7 * max(1, ceil(DAY_ROOM / room))
    for day in range(0, days, every):
        x = x_of(day, days, width)
        if x + DAY_ROOM < width - RIGHT - len(named) * TEXT * LETTER:
            yield Words(x, zero + 12, words.short_day(line.wanted.from_on + timedelta(days=day)))
    yield Words(width - RIGHT, zero + 12, named, anchor="end")
