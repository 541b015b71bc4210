"""What is labelled on a chart of stock to come, and where its label finds room."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from inventory.drawing import LETTER
from inventory.reorder.rules import Coming, Line, words

LEFT, RIGHT = 4.0, 4.0
TEXT = 8.0
MOST_EVENTS = 6


@dataclass(frozen=True)
class Event:
    """Something to label: a day (its offset from the first), the words, and whether it is bold."""

    day: float
    text: str
    strong: bool = False


def events(line: Line) -> list[Event]:
    """Return what is labelled, in order of days: empty, deliveries, losses, and what this order brings."""
    coming, product = line.coming, line.product
    found = [_event(coming, coming.from_on, 0, words.amount(coming.start, product))]
    found += [
        _event(coming, due.on, 0, f"{words.amount(due.amount, product)} on order comes")
        for due in coming.deliveries
        if due.on <= line.wanted.until_on
    ]
    for on in sorted({loss.on for loss in coming.losses}):
        lost = sum(loss.amount for loss in coming.losses if loss.on == on)
        found.append(_event(coming, on, 1, f"{words.amount(lost, product)} expires"))
    if coming.empty_on:
        found.append(_event(coming, coming.empty_on, 1, "empty", strong=True))
    if line.choice and (new := line.coming_with_order.deliveries[-1]).on <= line.wanted.until_on:
        found.append(_event(coming, new.on, 0, f"this order brings {words.amount(new.amount, product)}"))
    return sorted(found, key=lambda event: event.day)[:MOST_EVENTS]


def _event(coming: Coming, on: date, later: int, text: str, *, strong: bool = False) -> Event:
    return Event((on - coming.from_on).days + later, f"{words.short_day(on)}: {text}", strong)


def x_of(day: float, days: int, width: float) -> float:
    """Return where a day stands on a chart of that many days, in points."""
    return LEFT + day / days * (width - LEFT - RIGHT)


def runs_left(event: Event, x: float, width: float) -> bool:
    """Say whether a label stands left of its leader, because right of it it would leave the chart."""
    return x + 3 + len(event.text) * TEXT * LETTER > width


@dataclass(eq=False)
class _Lane:
    """The labels of one height: where each begins and ends, and where its leader goes down."""

    spans: list[tuple[float, float]]
    leaders: list[float]

    def holds(self, x: float) -> bool:
        return any(begins <= x <= ends for begins, ends in self.spans)

    def touches(self, span: tuple[float, float]) -> bool:
        return any(span[0] <= ends and begins <= span[1] for begins, ends in self.spans)


def lanes_of(found: Iterable[Event], days: int, width: float) -> list[tuple[Event, int]]:
    """Give each label the first lane, from the top, where no label touches another or stands on a leader.

    Labels right of their leader go down from left to right, those left of it down from right to left.
    """
    lanes: list[_Lane] = []
    placed: list[tuple[Event, _Lane]] = []
    at = [(event, x_of(event.day, days, width)) for event in found]
    right = [(event, x) for event, x in at if not runs_left(event, x, width)]
    left = [(event, x) for event, x in reversed(at) if runs_left(event, x, width)]
    for event, x in [*right, *left]:
        long = len(event.text) * TEXT * LETTER + 6
        span = (x - long, x - 1) if runs_left(event, x, width) else (x, x + long)
        free = (lane for number, lane in enumerate(lanes) if _is_free(lanes, number, x, span))
        lane = next(free, None) or _new_lane(lanes, span)
        lane.spans.append(span)
        lane.leaders.append(x)
        placed.append((event, lane))
    return [(event, lanes.index(lane)) for event, lane in placed]


def _new_lane(lanes: list[_Lane], span: tuple[float, float]) -> _Lane:
    """Open a lane below all others, above them where a leader would run through the label there."""
    crossed = any(span[0] < leader < span[1] for lane in lanes for leader in lane.leaders)
    lanes.insert(0 if crossed else len(lanes), lane := _Lane([], []))
    return lane


def _is_free(lanes: list[_Lane], number: int, x: float, span: tuple[float, float]) -> bool:
    crossed = any(span[0] < leader < span[1] for lane in lanes[:number] for leader in lane.leaders)
    crosses = any(lane.holds(x) for lane in lanes[number + 1 :])
    return not (lanes[number].touches(span) or crossed or crosses)
