"""Which month was asked for: YYYY-MM, no more than a year ahead."""

import re
from datetime import date

MONTHS_AHEAD = 12


class NoMonth(ValueError):
    """The text names no month, or one too far away; the sentence says what to ask for."""


def month_called(text: str, on: date) -> date:
    """Return the first day of a month written as YYYY-MM, as seen on a day. Raises NoMonth."""
    found = re.fullmatch(r"([0-9]{4})-(0[1-9]|1[0-2])", text.strip())
    if not found or found[1] == "0000":
        raise NoMonth(f"“{text.strip()}” is no month: write it as YYYY-MM, {on:%Y-%m} for this one.")
    month = date(int(found[1]), int(found[2]), 1)
    if month > later(on, MONTHS_AHEAD):
        last = later(on, MONTHS_AHEAD)
        raise NoMonth(f"{month:%B %Y} is more than a year ahead. Ask for {last:%Y-%m} or an earlier month.")
    return month


def later(on: date, months: int) -> date:
    """Return the first day of the month that comes so many months after the one of `on`."""
    year, month = divmod(on.year * 12 + on.month - 1 + months, 12)
    return date(year, month + 1, 1)
