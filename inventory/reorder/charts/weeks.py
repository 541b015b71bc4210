"""The table beside the chart of stock to come: the same figures, one row a week."""

from dataclasses import dataclass
from datetime import date, timedelta

from inventory.reorder.rules import Line


@dataclass(frozen=True)
class Week:
    """The table beside the chart: the stock at the end of `on`, and what came and died in the days before."""

    on: date
    level: float
    level_with_order: float
    comes: float
    expires: float
    short: float


def weeks(line: Line) -> tuple[Week, ...]:
    """Return the figures of the chart, one row a week and one for the last day, in base units."""
    coming, last = line.coming, len(line.coming.levels) - 1
    ends = sorted({*range(6, last, 7), last})
    starts = [0, *(end + 1 for end in ends[:-1])]
    return tuple(_week(line, coming.from_on, first, end) for first, end in zip(starts, ends, strict=True))


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
