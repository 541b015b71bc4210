"""The columns of workbook and comma-separated text: a name with its unit, and how to read it off a line."""

from collections.abc import Callable
from datetime import date

from inventory.money import minor_digits
from inventory.reorder.rules import Line, words

Value = str | int | float | date | None
Column = tuple[str, Callable[[Line], Value]]


def columns(currency: str) -> list[Column]:
    """Return the columns of a line. Amounts stand in the unit that the row's own Unit column names."""
    return [
        ("Supplier", lambda line: line.product.supplier.name),
        ("Code", lambda line: line.product.code),
        ("Product", lambda line: line.product.name),
        ("Unit", lambda line: words.COLUMN_UNITS[line.product.dimension][1]),
        ("Usable on hand (in Unit)", lambda line: _in_unit(line, line.usable)),
        ("On order (in Unit)", lambda line: _in_unit(line, line.on_order)),
        ("Booked (in Unit)", lambda line: _in_unit(line, line.wanted.booked)),
        ("Expected beside (in Unit)", lambda line: _in_unit(line, line.wanted.unbooked)),
        ("Safety (in Unit)", lambda line: _in_unit(line, line.wanted.safety)),
        ("Order up to (in Unit)", lambda line: _in_unit(line, line.wanted.order_up_to)),
        ("Packs to order", lambda line: line.packs),
        ("Pack", lambda line: line.choice.pack.code if line.choice else None),
        (
            "Pack size (in Unit)",
            lambda line: _in_unit(line, line.choice.pack.amount) if line.choice else None,
        ),
        (f"Price of one pack ({currency})", lambda line: _price(line, currency)),
        (f"Cost ({currency})", lambda line: in_currency(line.cost_minor, currency)),
        (
            f"Expected to expire ({currency})",
            lambda line: in_currency(line.expected_to_expire_minor, currency),
        ),
        ("Lead time (days)", lambda line: line.product.lead_days),
        ("Order by", lambda line: line.order_by_on),
        ("Empty on", lambda line: line.empty_on),
        ("Because", lambda line: line.because),
    ]


def _in_unit(line: Line, base: float) -> float:
    return words.column_number(base, line.product.dimension)


def _price(line: Line, currency: str) -> float | None:
    return in_currency(line.choice.pack.price_minor, currency) if line.choice else None


def in_currency(minor: int | None, currency: str) -> float | None:
    """Return minor units as a number of the currency; None stays an empty cell."""
    return None if minor is None else minor / 10 ** minor_digits(currency)
