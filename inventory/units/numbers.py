"""The number in an amount: a grammar that refuses what has two readings.

12 · 0.5 · 0,5 · 1/2 · 2 1/2 · ½ · 2½ · 1.000,5 · 1,000.5 · 1 000 · 1,000,000
"""

import re
from fractions import Fraction

from inventory.units.amounts import AmountError

_VULGAR = {
    "½": (1, 2), "⅓": (1, 3), "⅔": (2, 3), "¼": (1, 4), "¾": (3, 4), "⅕": (1, 5), "⅖": (2, 5), "⅗": (3, 5),
    "⅘": (4, 5), "⅙": (1, 6), "⅚": (5, 6), "⅛": (1, 8), "⅜": (3, 8), "⅝": (5, 8), "⅞": (7, 8),
}  # fmt: skip
VULGAR = "".join(_VULGAR)
MARKS = {"point": ".", "comma": ","}
_ASIDE = "Write it like 0.5, 1.25, 2 1/2 or 1500."

_ONE_READING = (
    re.compile(r"(?P<whole>[0-9]+)"),
    re.compile(r"(?P<whole>[0-9]{1,3}( [0-9]{3})+)([.,](?P<part>[0-9]+))?"),
    re.compile(r"(?P<whole>[0-9]{1,3}(,[0-9]{3})+)\.(?P<part>[0-9]+)"),
    re.compile(r"(?P<whole>[0-9]{1,3}(\.[0-9]{3})+),(?P<part>[0-9]+)"),
    re.compile(r"(?P<whole>[0-9]{1,3}((,[0-9]{3}){2,}|(\.[0-9]{3}){2,}))"),
    re.compile(r"(?P<whole>[0-9]+)[.,](?P<part>[0-9]+)"),
)
_TWO_READINGS = re.compile(r"(?!0[.,])(?P<whole>[0-9]{1,3})(?P<mark>[.,])(?P<part>[0-9]{3})")
_FRACTION = re.compile(
    rf"(?:(?P<whole>[0-9]+) ?)??(?:(?P<over>[0-9]+)/(?P<under>[0-9]+)|(?P<vulgar>[{VULGAR}]))"
)
_EXPONENT = re.compile(r"[0-9.,]+e[+-]?[0-9]")


def read_number(text: str, said: str, decimal: str | None) -> Fraction:
    """Return the exact number that `text` is; `said` is the whole amount, for the refusal.

    `decimal` ("point" or "comma") settles 1,000 and 1.000 and nothing else. Raises AmountError.
    """
    if decimal is not None and decimal not in MARKS:
        raise AmountError(f"“{decimal}” is no decimal mark: name point or comma.")
    if found := _FRACTION.fullmatch(text):
        return _fraction(found, said)
    if found := _TWO_READINGS.fullmatch(text):
        return _settled(found, said, decimal)
    for grammar in _ONE_READING:
        if found := grammar.fullmatch(text):
            return _plain(found["whole"], found.groupdict().get("part"))
    raise AmountError(f"“{text}” in “{said}” is not a number that has one reading. {_ASIDE}")


def refuse_signs_and_exponents(text: str, said: str) -> None:
    """Refuse what is a number elsewhere but never an amount on a shelf."""
    if text.startswith(("-", "−", "–")):
        raise AmountError(f"“{said}” is negative: type the amount without a sign, and undo or count instead.")
    if _EXPONENT.match(text):
        raise AmountError(f"“{said}” is written with an exponent: write the number out, like 1500 ml.")


def _plain(whole: str, part: str | None) -> Fraction:
    digits = re.sub(r"[ .,]", "", whole)
    return Fraction(f"{digits}.{part or 0}")


def _fraction(found: re.Match[str], said: str) -> Fraction:
    over, under = _VULGAR[found["vulgar"]] if found["vulgar"] else (int(found["over"]), int(found["under"]))
    if not under or (found["whole"] and over >= under):
        raise AmountError(f"“{said}” has no proper fraction in it. {_ASIDE}")
    return int(found["whole"] or 0) + Fraction(over, under)


def _settled(found: re.Match[str], said: str, decimal: str | None) -> Fraction:
    whole, mark, part = found["whole"], found["mark"], found["part"]
    grouped, broken = Fraction(whole + part), Fraction(f"{whole}.{part}")
    if decimal is None:
        unit = said.removeprefix(found.group())
        large, small = f"{grouped}{unit}", f"{broken.numerator / broken.denominator:g}{unit}"
        raise AmountError(
            f"“{said}” has two readings: {large} (thousands) or {small} (decimal). "
            f"Write {large} or {small}, or name the shop's decimal mark."
        )
    return broken if mark == MARKS[decimal] else grouped
