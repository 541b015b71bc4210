"""The printed codes of a reading's values: what was measured, and how much, in letters only.

R, a letter for what was measured, three letters for the tenths (base 17, -40 is BBB), the last two of them
once more, the check letter. So two values less than 28 apart differ in three letters at least. Fixed for
ever: the cards hang in the bays.
"""

from decimal import Decimal
from typing import NamedTuple

from inventory.codes.own import LETTERS, CodeError, check_letter, tidy

TYPE = "R"
AIR, PANEL, HUMIDITY = "air", "panel", "humidity"
_LETTER = {AIR: "L", PANEL: "P", HUMIDITY: "H"}
_QUANTITY = {letter: quantity for quantity, letter in _LETTER.items()}
_BASE = len(LETTERS)
_LOWEST = Decimal(-40)
_NOTHING = _BASE**3 - 1  # the number that stands for "not measured"
HIGHEST = _LOWEST + Decimal(_NOTHING - 1) / 10


class Value(NamedTuple):
    """A value of a reading, in °C or percent; None: not measured."""

    quantity: str
    amount: Decimal | None


def value_code(quantity: str, amount: Decimal | None) -> str:
    """Return the code of a value, rounded to a tenth. Raises CodeError for what no code can carry."""
    if quantity not in _LETTER:
        raise CodeError(f"“{quantity}” is no value of a reading. They are {', '.join(_LETTER)}.")
    if amount is None:
        number = _NOTHING
    elif _LOWEST <= amount <= HIGHEST:
        number = round((amount - _LOWEST) * 10)
    else:
        raise CodeError(f"A code carries {_LOWEST} to {HIGHEST}, not {amount}.")
    high, middle, low = number // _BASE**2, number // _BASE % _BASE, number % _BASE
    digits = "".join(LETTERS[each] for each in (high, middle, low, middle, low))
    seven = TYPE + _LETTER[quantity] + digits
    return seven + check_letter(seven)


def value_of(code: str) -> Value | None:
    """Return the value that a code carries, in any case and grouping, or None where it carries none."""
    known = tidy(code)
    if not known or known[0] != TYPE or known[1] not in _QUANTITY or known[3:5] != known[5:7]:
        return None
    high, middle, low = (LETTERS.index(letter) for letter in known[2:5])
    number = (high * _BASE + middle) * _BASE + low
    return Value(_QUANTITY[known[1]], None if number == _NOTHING else _LOWEST + Decimal(number) / 10)
