"""The month's report from the database, and the part of it that cannot wait."""

from dataclasses import dataclass
from datetime import date, datetime, timedelta

from django.utils import timezone

from inventory.models import Head, Shop
from inventory.reorder.queries.facts import products_of
from inventory.reorder.rules import Line, Report, reorder_report, words
from inventory.units import Dimension

SOON = timedelta(days=7)


@dataclass(frozen=True)
class ToOrder:
    """One product to order within a week: how many packs of what from whom, why, and by when."""

    packs: int
    what: str
    because: str
    by: date


def now() -> datetime:
    """Return the instant of a request, the only clock in this feature."""
    return timezone.now()


def today(shop: Shop) -> date:
    """Return the shop's own day."""
    return now().astimezone(shop.zone).date()


def report(shop: Shop, month: date, made_on: date) -> Report:
    """Return the reorder report of a month (any day of it) as seen on `made_on`.

    Raises MonthIsOver for a month that ended before, WrongFacts where a product contradicts itself.
    """
    head = Head.objects.filter(shop=shop).values_list("seq", "hash").first() or (0, "0" * 64)
    products = products_of(shop, made_on)
    return reorder_report(products, shop.name, month, made_on, shop.currency, f"{head[0]} · {head[1]}")


def month_in_view(on: date) -> date:
    """Return the month to order for: this one, in its last week the next, whose orders go out now."""
    return (on + SOON).replace(day=1)


def to_order(shop: Shop, at: datetime) -> list[ToOrder]:
    """Return what to order within a week of an instant so that nothing runs out, the soonest first."""
    on = at.astimezone(shop.zone).date()
    return soon_of(report(shop, month_in_view(on), on))


def soon_of(report: Report) -> list[ToOrder]:
    """Return the lines of a report that cannot wait a week, the soonest first."""
    last = report.made_on + SOON
    soon = [
        (line.order_by_on, line) for line in report.lines if line.order_by_on and line.order_by_on <= last
    ]
    soon.sort(key=lambda each: (each[0], each[1].product.name))
    return [ToOrder(line.packs, _what(line), _why(line), by) for by, line in soon]


def pack_size(line: Line) -> str:
    """Return the size of the pack that a line orders: "1 l", or "bag of 5" for pieces."""
    assert line.choice is not None
    pack = line.choice.pack
    if line.product.dimension == Dimension.PIECES:
        return f"{pack.noun} of {pack.amount}"
    return words.amount(pack.amount, line.product)


def _what(line: Line) -> str:
    return f"{line.product.name}, {pack_size(line)} · {line.product.supplier.name}"


def _why(line: Line) -> str:
    """The first sentence of a line's because says when it is empty and how long a delivery takes."""
    return line.because.split(". ")[0].rstrip(".") + "."
