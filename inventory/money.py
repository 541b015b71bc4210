"""Money as text, and text as money. Amounts are integers of the minor unit (cents, pence, yen). Pure."""

import re

# ISO 4217: these have no minor unit in use; all others that a shop is likely to write have two digits.
WHOLE_CURRENCIES = frozenset({"CLP", "ISK", "JPY", "KRW", "VND"})
SIGNS = {"EUR": "€", "GBP": "£", "USD": "$", "JPY": "¥"}
# Non-breaking, so that a figure and its groups stay on one line.
SPACE = "\u00a0"
LARGEST = 2**63 - 1


class MoneyError(ValueError):
    """A text that is no price, or more than one; says which and what to write instead."""


def show_money(minor: int, currency: str) -> str:
    """Return an amount of the minor unit as a person writes it: 2200, "EUR" gives "€22.00".

    A currency without a sign of its own here stands behind its figure ("22.00 PLN").
    """
    digits = minor_digits(currency)
    whole, part = divmod(abs(minor), 10**digits)
    figure = f"{whole:,}".replace(",", SPACE) + (f".{part:0{digits}d}" if digits else "")
    minus = "−" if minor < 0 else ""
    if sign := SIGNS.get(currency.upper()):
        return f"{minus}{sign}{figure}"
    return f"{minus}{figure}{SPACE}{currency.upper()}"


def minor_digits(currency: str) -> int:
    """Return how many digits stand behind the point in this currency."""
    return 0 if currency.upper() in WHOLE_CURRENCIES else 2


def parse_money(text: str, currency: str = "EUR") -> int:
    """Return a typed price in the minor unit: "22", "22.5", "22,50" and "€22.00" are read.

    Raises MoneyError with a whole sentence where there is no reading, or more than one.
    """
    figure = _without_currency(text, currency)
    if re.fullmatch(r"[0-9]{1,3}[.,][0-9]{3}", figure):
        raise MoneyError(_two_readings(text, figure))
    digits = minor_digits(currency)
    plain = re.sub(r"(?<=[0-9]) (?=[0-9]{3}(?:[ .,]|$))", "", figure)
    found = re.fullmatch(r"([0-9]+)(?:[.,]([0-9]{1,2}))?", plain)
    if not found or (found[2] and len(found[2]) > digits):
        raise MoneyError(f"“{text.strip()}” is not a price. Write it like {show_money(2250, currency)}.")
    minor: int = int(found[1]) * 10**digits + int((found[2] or "").ljust(digits, "0") or 0)
    if minor > LARGEST:
        raise MoneyError(f"“{text.strip()}” is more than can be kept. Check the figure.")
    return minor


def _without_currency(text: str, currency: str) -> str:
    """Return the figure alone: the currency's own sign or letters may stand before or behind it."""
    figure = re.sub(r"\s+", " ", text).strip()
    for mark in (currency, SIGNS.get(currency.upper(), currency)):
        figure = re.sub(rf"^{re.escape(mark)} ?| ?{re.escape(mark)}$", "", figure, flags=re.IGNORECASE)
    return figure


def _two_readings(text: str, figure: str) -> str:
    whole, part = re.split("[.,]", figure)
    return (
        f"“{text.strip()}” can be read as {whole}{part}.00 or as {whole}.{part}: "
        f"write {whole}{part} or {whole}.{part[:2]}."
    )
