"""The air of a step over time: one ink, the limit named on its line, both curves labelled where they run.

Lengths are points; y runs down from the top.
"""

from collections.abc import Callable

from inventory.bays.rules import Curve
from inventory.drawing import LETTER, Drawing, Pens, Stroke, Words
from safety.air.saying import number

TEXT = 11.0
LEFT, RIGHT, TOP, PLOT, BELOW = 4.0, 4.0, 22.0, 120.0, 20.0
TICK_MINUTES = 15
# How much of the height the higher of limit and peak takes.
HEADROOM = 0.92


# Weight and dashes of each kind of line.
PENS: Pens = {
    "nose": (2.0, ()),
    "room": (1.4, (5, 3)),
    "limit": (1.2, (2, 3)),
    "axis": (0.8, ()),
    "tick": (0.6, ()),
}


def air_picture(curve: Curve, width: float = 340.0) -> Drawing:
    """Return the picture of one step's air."""
    zero = TOP + PLOT
    most = max(100.0, curve.peak.nose) / HEADROOM

    def x(minute: float) -> float:
        return LEFT + minute / curve.until * (width - LEFT - RIGHT)

    def y(percent: float) -> float:
        return zero - percent / most * PLOT

    nose = tuple((x(point.minute), y(point.nose)) for point in curve.points)
    room = tuple((x(point.minute), y(point.room)) for point in curve.points)
    limit = y(100.0)
    strokes = (
        Stroke("axis", ((LEFT, zero), (width - RIGHT, zero))),
        Stroke("limit", ((LEFT, limit), (width - RIGHT, limit))),
        *(Stroke("tick", ((x(at), zero), (x(at), zero + 4))) for at in _ticks(curve)),
        Stroke("room", room),
        Stroke("nose", nose),
    )
    who = _nose_label(curve, x(curve.peak.minute), y(curve.peak.nose), limit, width)
    words = (
        Words(width - RIGHT, limit - 4, "the limit, 100 %", "end", True),
        who,
        _room_label(curve, width, y, who),
        *_minutes(curve, x, zero),
    )
    return Drawing(width, zero + BELOW, TEXT, f"Air over time: {curve.name}", curve.says, strokes, words)


def _ticks(curve: Curve) -> range:
    return range(0, int(curve.until) + 1, TICK_MINUTES if curve.until <= 60 else 2 * TICK_MINUTES)


def _minutes(curve: Curve, x: Callable[[float], float], zero: float) -> list[Words]:
    ticks = list(_ticks(curve))
    found = [Words(x(at), zero + 16, str(at), "middle") for at in ticks[1:-1]]
    first, last = (
        Words(x(0), zero + 16, "start"),
        Words(x(ticks[-1]), zero + 16, f"{ticks[-1]} minutes", "end"),
    )
    return [first, *found, last]


def _nose_label(curve: Curve, x: float, y: float, limit: float, width: float) -> Words:
    """Put the label right of the peak, clear of the limit's line; left of it where it would not fit."""
    text = f"who works here {number(curve.peak.nose)} %"
    base = y + 4 if y < limit else y + TEXT
    if abs(base - TEXT / 3 - limit) < TEXT:
        base = limit + TEXT + 3 if y >= limit else limit - 4
    ends = x + 8 + len(text) * TEXT * LETTER > width
    return Words(x - 8 if ends else x + 8, max(base, TEXT), text, "end" if ends else "start", True)


def _room_label(curve: Curve, width: float, y: Callable[[float], float], who: Words) -> Words:
    """Put the label over both curves at their end, where the work's own has joined the room's, else under."""
    text = f"room average {number(curve.room_peak.room)} % at most"
    from_minute = curve.until * (1 - len(text) * TEXT * LETTER / width)
    over = y(max(point.nose for point in curve.points if point.minute >= from_minute))
    taken = (y(100.0) + TEXT / 3, y(100.0) - 4, who.y)
    places = (over - 5, over + TEXT + 4, min(over, who.y) - TEXT - 4)
    free = (
        base for base in places if base < y(0.0) - 3 and all(abs(base - other) >= TEXT for other in taken)
    )
    return Words(width - RIGHT, next(free, places[-1]), text, "end")
