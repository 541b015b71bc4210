"""Stock to come as a picture: one geometry, drawn as SVG here and on paper by `pdf`. Pure.

One ink. The zero line is named, deliveries and losses are labelled where they happen, and `weeks` gives the same
figures as a table. Lengths are points, y runs down from the top.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from html import escape

from inventory.reorder.rules import Coming, Line, words

LEFT, RIGHT, LANE, PLOT, BELOW = 4.0, 4.0, 12.0, 84.0, 16.0
TEXT = 8.0
# Mean width of a letter of the face, as a share of its size; labels that would touch take another lane.
LETTER = 0.54
MOST_EVENTS = 6


@dataclass(frozen=True)
class Stroke:
    """A line through points; `kind` is level, order, zero, mark or tick."""

    kind: str
    points: tuple[tuple[float, float], ...]


@dataclass(frozen=True)
class Words:
    """A text whose base line starts, or ends where `ends` is set, at x, y."""

    x: float
    y: float
    text: str
    ends: bool = False
    strong: bool = False


@dataclass(frozen=True)
class Chart:
    """A picture of `width` by `height` points, with its title and what it shows in one sentence."""

    width: float
    height: float
    title: str
    says: str
    strokes: tuple[Stroke, ...]
    words: tuple[Words, ...]


@dataclass(frozen=True)
class Week:
    """The table beside the chart: the stock at the end of `on`, and what came and died in the days before."""

    on: date
    level: float
    level_with_order: float
    comes: float
    expires: float
    short: float


@dataclass(frozen=True)
class Event:
    """Something to label: a day (its offset from the first), the words, and whether it is bold."""

    day: float
    text: str
    strong: bool = False


def weeks(line: Line) -> tuple[Week, ...]:
    """Return the figures of the chart, one row a week and one for the last day, in base units."""
    coming, last = line.coming, len(line.coming.levels) - 1
    ends = sorted({*range(6, last, 7), last})
    return tuple(_week(line, coming.from_on, first, end) for first, end in zip([0, *_after(ends)], ends))


def _after(ends: list[int]) -> list[int]:
    return [end + 1 for end in ends]


def _week(line: Line, from_on: date, first: int, end: int) -> Week:
    days = {from_on + timedelta(days=offset) for offset in range(first, end + 1)}
    coming = line.coming
    return Week(
        on=from_on + timedelta(days=end),
        level=coming.levels[end],
        level_with_order=line.coming_with_order.levels[end],
        comes=sum(due.amount for due in coming.deliveries if due.on in days),
        expires=sum(loss.amount for loss in coming.losses if loss.on in days),
        short=sum(coming.short[first : end + 1]),
    )


def path(coming: Coming) -> list[tuple[float, float]]:
    """Return (days from the first morning, level): up when a delivery comes, down at night when stock dies."""
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


def events(line: Line) -> list[Event]:
    """Return what is labelled, in order of days: empty, deliveries, losses, and what this order brings."""
    coming, dimension = line.coming, line.product.dimension
    found = [
        _event(coming, due.on, 0, f"{words.amount(due.amount, dimension)} on order comes")
        for due in coming.deliveries
        if due.on <= line.wanted.until_on
    ]
    for on in sorted({loss.on for loss in coming.losses}):
        lost = sum(loss.amount for loss in coming.losses if loss.on == on)
        found.append(_event(coming, on, 1, f"{words.amount(lost, dimension)} expires"))
    if coming.empty_on:
        found.append(_event(coming, coming.empty_on, 1, "empty", strong=True))
    if line.choice and (new := line.coming_with_order.deliveries[-1]).on <= line.wanted.until_on:
        found.append(_event(coming, new.on, 0, f"this order, {words.amount(new.amount, dimension)}"))
    return sorted(found, key=lambda event: event.day)[:MOST_EVENTS]


def _event(coming: Coming, on: date, later: int, text: str, *, strong: bool = False) -> Event:
    return Event((on - coming.from_on).days + later, f"{text} {words.short_day(on)}", strong)


def stock_chart(line: Line, width: float = 340.0) -> Chart:
    """Return the picture of one product's stock to come; solid without this order, dashed with it."""
    paths = [("level", path(line.coming))]
    if line.choice:
        paths.insert(0, ("order", path(line.coming_with_order)))
    most = max((level for _, points in paths for _, level in points), default=0.0) or 1.0
    placed = list(_lanes(events(line), line.wanted.days, width))
    top = LANE * (max((lane for _, lane in placed), default=-1) + 2)
    zero = top + PLOT

    def at(point: tuple[float, float]) -> tuple[float, float]:
        return _x(point[0], line.wanted.days, width), zero - point[1] / most * PLOT

    strokes = [Stroke("zero", (at((0, 0)), at((line.wanted.days, 0)))), *_ticks(line, width, zero)]
    texts = [*_axis(line, width, zero), Words(LEFT, top - 3, _start(line))]
    for event, lane in placed:
        x, y = _x(event.day, line.wanted.days, width), LANE * (lane + 1)
        strokes.append(Stroke("mark", ((x, y - TEXT), (x, zero))))
        ends = _ends(event, x, width)
        texts.append(Words(x - 3 if ends else x + 3, y - 2, event.text, ends, event.strong))
    strokes += [Stroke(kind, tuple(map(at, points))) for kind, points in paths]
    title = f"Stock to come: {line.product.name}"
    return Chart(width, zero + BELOW, title, says(line), tuple(strokes), tuple(texts))


def says(line: Line) -> str:
    """Return in one sentence what the picture shows, for those who do not see it."""
    dimension, last = line.product.dimension, words.day(line.wanted.until_on)
    start, end = (words.amount(base, dimension) for base in (line.coming.start, line.coming.levels[-1]))
    shows = f"{start} on {words.day(line.wanted.from_on)}, {end} on {last}"
    if line.choice:
        shows += f"; with this order {words.amount(line.coming_with_order.levels[-1], dimension)}"
    labels = [event.text for event in events(line)]
    return f"{shows}. {'; '.join(labels)}." if labels else f"{shows}."


def _start(line: Line) -> str:
    return (
        f"{words.amount(line.coming.start, line.product.dimension)} on {words.short_day(line.wanted.from_on)}"
    )


def _x(day: float, days: int, width: float) -> float:
    return LEFT + day / days * (width - LEFT - RIGHT)


def _ends(event: Event, x: float, width: float) -> bool:
    return x + 3 + len(event.text) * TEXT * LETTER > width


def _lanes(found: Iterable[Event], days: int, width: float) -> Iterator[tuple[Event, int]]:
    """Give each label the first lane, from the top, in which it touches no other label nor its leader."""
    taken: list[list[tuple[float, float]]] = []
    for event in found:
        x, long = _x(event.day, days, width), len(event.text) * TEXT * LETTER + 6
        span = (x - long, x + 1) if _ends(event, x, width) else (x - 1, x + long)
        free = (lane for lane, spans in enumerate(taken) if all(span[1] < a or span[0] > b for a, b in spans))
        lane = next(free, len(taken))
        if lane == len(taken):
            taken.append([])
        taken[lane].append(span)
        yield event, lane


def _ticks(line: Line, width: float, zero: float) -> Iterator[Stroke]:
    for day in range(0, line.wanted.days, 7):
        x = _x(day, line.wanted.days, width)
        yield Stroke("tick", ((x, zero), (x, zero + 3)))


def _axis(line: Line, width: float, zero: float) -> Iterator[Words]:
    """Name the weeks below the line, as many as there is room for, and the zero line at its end."""
    every = 7 if line.wanted.days <= 50 else 14
    for day in range(0, line.wanted.days - 10, every):
        yield Words(
            _x(day, line.wanted.days, width), zero + 12, words.short_day(line.wanted.from_on + timedelta(day))
        )
    yield Words(width - RIGHT, zero + 12, "0 = empty", ends=True)


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


# Weight in points and dashes of each kind of line.
PENS: dict[str, tuple[float, tuple[float, ...]]] = {
    "level": (1.6, ()),
    "order": (1.2, (3, 2)),
    "zero": (0.8, ()),
    "mark": (0.4, ()),
    "tick": (0.4, ()),
}


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
    return (
        f'<text class="chart-words" fill="currentColor" font-size="{TEXT:g}" x="{text.x:.1f}" y="{text.y:.1f}"'
        f"{anchor}{strong}>{escape(text.text)}</text>"
    )
