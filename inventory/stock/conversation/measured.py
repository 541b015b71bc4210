"""What an instrument read, as it is typed or scanned: air, panel, humidity, one of them or all in a line."""

import re
from dataclasses import dataclass
from decimal import Decimal

from inventory.codes import AIR, HUMIDITY, PANEL, value_of
from inventory.trade.heat import to_celsius, to_fahrenheit

ORDER = (AIR, PANEL, HUMIDITY)
TENTH = Decimal("0.1")
_NUMBER = r"[0-9]{1,3}(?:[.,][0-9])?"
_DEGREES = rf"-?{_NUMBER}(?: ?°? ?[cf])?"
_PART = rf"(?:air {_DEGREES}|panel (?:{_DEGREES}|not measured)|(?:humidity|rh) {_NUMBER}(?: ?%)?)"
_LINE = re.compile(rf"{_PART}(?:,? {_PART}){{0,2}}", re.IGNORECASE | re.ASCII)
_ONE = re.compile(
    r"(?P<what>air|panel|humidity|rh) (?:not measured|(?P<number>-?[0-9.,]+)(?: ?°? ?(?P<unit>[cf]))?)",
    re.IGNORECASE | re.ASCII,
)


@dataclass(frozen=True)
class Measured:
    """One value as it was said; `unit` is C or F, or empty where nobody said it; None: not measured."""

    quantity: str
    amount: Decimal | None
    unit: str = ""

    @property
    def kept(self) -> Decimal | None:
        """The value in °C or percent, to a tenth where it was converted."""
        if self.unit != "F" or self.amount is None:
            return self.amount
        return celsius(self.amount)


def celsius(fahrenheit: Decimal) -> Decimal:
    """Return °F in °C, to a tenth, without a nought behind the point."""
    tenths = Decimal(to_celsius(float(fahrenheit))).quantize(TENTH)
    return tenths.to_integral_value() if tenths == tenths.to_integral_value() else tenths


def in_degrees(kept: Decimal | str, system: str) -> str:
    """Return "21 °C", and "70 °F (21.1 °C)" in a shop that counts as in the United States."""
    return f"{to_fahrenheit(float(kept)):.0f} °F ({kept} °C)" if system == "us" else f"{kept} °C"


def read_typed(said: str) -> tuple[Measured, ...]:
    """Return the values of a typed line such as "air 21.4 panel 19 humidity 52"; none where it is no reading.

    A value that is said twice makes the line no reading: nobody knows which was meant.
    """
    if not _LINE.fullmatch(said):
        return ()
    found = tuple(_measured(one) for one in _ONE.finditer(said))
    return found if len({one.quantity for one in found}) == len(found) else ()


def read_scanned(code: str) -> tuple[Measured, ...]:
    """Return the value of a code on the card, in °C or percent whatever the shop counts in; else none."""
    if (value := value_of(code)) is None:
        return ()
    degrees = value.quantity != HUMIDITY and value.amount is not None
    return (Measured(value.quantity, value.amount, "C" if degrees else ""),)


def _measured(one: re.Match[str]) -> Measured:
    what = one["what"].lower()
    number = one["number"]
    return Measured(
        HUMIDITY if what == "rh" else what,
        Decimal(number.replace(",", ".")) if number else None,
        (one["unit"] or "").upper(),
    )
