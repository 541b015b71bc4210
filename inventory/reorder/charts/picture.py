"""Stock to come as a picture: one geometry, drawn as SVG by `svg` and on paper by `pdf`.

One ink. The zero line is named, deliveries and losses are labelled where they happen, and `weeks` gives the
same figures as a table. Lengths are points, y runs down from the top.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date, timedelta

from inventory.reorder.rules import Coming, Line, words

LEFT, RIGHT, LANE, PLOT, BELOW = 4.0, 4.0, 12.0, 66.0, 16.0
TEXT = 8.0
# Mean width of a letter of the face, as a share of its size; labels that would touch take another lane.
LETTER = 0.54
MOST_EVENTS = 6


# Weight in points and dashes of each kind of line.
PENS: dict[str, tuple[float, tuple[float, ...]]] = {
    "level": (1.6, ()),
    "order": (1.2, (3, 2)),
    "zero": (0.8, ()),
    "mark": (0.4, ()),
    "tick": (0.4, ()),
}


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
class Event:
    """Something to label: a day (its offset from the first), the words, and whether it is bold."""

    day: float
    text: str
    strong: bool = False


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


def events(line: Line) -> list[Event]:
    """Return what is labelled, in order of days: empty, deliveries, losses, and what this order brings."""
    coming, dimension = line.coming, line.product.dimension
    found = [_event(coming, coming.from_on, 0, words.amount(coming.start, dimension))]
    found += [
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
        found.append(_event(coming, new.on, 0, f"this order brings {words.amount(new.amount, dimension)}"))
    return sorted(found, key=lambda event: event.day)[:MOST_EVENTS]


def _event(coming: Coming, on: date, later: int, text: str, *, strong: bool = False) -> Event:
    return Event((on - coming.from_on).days + later, f"{words.short_day(on)}: {text}", strong)


def stock_chart(line: Line, width: float = 340.0) -> Chart:
    """Return the picture of one product's stock to come; solid without this order, dashed with it."""
    paths = [("level", path(line.coming))]
    if line.choice:
        paths.insert(0, ("order", path(line.coming_with_order)))
    most = max((level for _, points in paths for _, level in points), default=0.0) or 1.0
    placed = list(_lanes(events(line), line.wanted.days, width))
    top = LANE * (max(lane for _, lane in placed) + 1) + 4
    zero = top + PLOT

    def at(point: tuple[float, float]) -> tuple[float, float]:
        return _x(point[0], line.wanted.days, width), zero - point[1] / most * PLOT

    strokes = [Stroke("zero", (at((0, 0)), at((line.wanted.days, 0)))), *_ticks(line, width, zero)]
    texts = [*_axis(line, width, zero)]
    for event, lane in placed:
        x, y = _x(event.day, line.wanted.days, width), LANE * (lane + 1)
        strokes.append(Stroke("mark", ((x, y - TEXT), (x, zero))))
        ends = _ends(event, x, width)
        texts.append(Words(x - 3 if ends else x + 3, y - 2, event.text, ends, event.strong))
    drawn = [Stroke(kind, tuple(map(at, points))) for kind, points in paths]
    strokes += drawn
    texts += _named(drawn, zero)
    title = f"Stock to come: {line.product.name}"
    return Chart(width, zero + BELOW, title, says(line), tuple(strokes), tuple(texts))


def says(line: Line) -> str:
    """Return in one sentence what the picture shows, for those who do not see it."""
    dimension, last = line.product.dimension, words.day(line.wanted.until_on)
    start, end = (words.amount(base, dimension) for base in (line.coming.start, line.coming.levels[-1]))
    shows = f"{start} on {words.day(line.wanted.from_on)}, {end} on {last}"
    if line.choice:
        shows += f"; with this order {words.amount(line.coming_with_order.levels[-1], dimension)}"
    labels = [event.text for event in events(line)[1:]]
    return f"{shows}. {'; '.join(labels)}." if labels else f"{shows}."


def _named(drawn: list[Stroke], zero: float) -> Iterator[Words]:
    """Name each line under its right end, where the other and the zero line leave room for it."""
    names = {"level": "without this order", "order": "with this order"}
    ends = [stroke.points[-1] for stroke in drawn]
    for stroke, (x, y) in zip(drawn, ends, strict=True):
        below = min([zero, *(other for _, other in ends if other > y)])
        if len(drawn) > 1 and below - y > TEXT + 4:
            yield Words(x, y + TEXT + 1, names[stroke.kind], ends=True)


def _x(day: float, days: int, width: float) -> float:
    return LEFT + day / days * (width - LEFT - RIGHT)


def _ends(event: Event, x: float, width: float) -> bool:
    return x + 3 + len(event.text) * TEXT * LETTER > width


@dataclass
class _Lane:
    """The labels of one height: where each begins and ends, and where its leader goes down."""

    spans: list[tuple[float, float]]
    leaders: list[float]

    def holds(self, x: float) -> bool:
        return any(begins <= x <= ends for begins, ends in self.spans)

    def touches(self, span: tuple[float, float]) -> bool:
        return any(span[0] <= ends and begins <= span[1] for begins, ends in self.spans)


def _lanes(found: Iterable[Event], days: int, width: float) -> Iterator[tuple[Event, int]]:
    """Give each label the first lane, from the top, where no label touches another or stands on a leader."""
    lanes: list[_Lane] = []
    for event in found:
        x, long = _x(event.day, days, width), len(event.text) * TEXT * LETTER + 6
        span = (x - long, x - 1) if _ends(event, x, width) else (x, x + long)
        free = (number for number in range(len(lanes)) if _is_free(lanes, number, x, span))
        lane = next(free, len(lanes))
        if lane == len(lanes):
            lanes.append(_Lane([], []))
        lanes[lane].spans.append(span)
        lanes[lane].leaders.append(x)
        yield event, lane


def _is_free(lanes: list[_Lane], number: int, x: float, span: tuple[float, float]) -> bool:
    crossed = any(span[0] < leader < span[1] for lane in lanes[:number] for leader in lane.leaders)
    crosses = any(lane.holds(x) for lane in lanes[number + 1 :])
    return not (lanes[number].touches(span) or crossed or crosses)


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
