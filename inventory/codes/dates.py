"""Dates on packs: in symbols (YYMMDD) and as people print them.

GS1 General Specifications: the century is the one that puts the year within 49 years past and 50 to come; day
00 is the last day of the month. A made date known by its month counts from the first (our rule: no life is
lengthened by what is not known).
"""

import calendar
import re
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from inventory.codes.own import CodeError


class Meaning(StrEnum):
    """What a printed date says; always chosen by a person, never guessed."""

    MADE = "made"
    BEST_BEFORE = "best_before"
    USE_BY = "use_by"


Day = date  # a class that has a field `date` needs another name for the type
ORDERS = ("dmy", "mdy", "ymd")
_NOUN = {Meaning.MADE: "made", Meaning.BEST_BEFORE: "best before", Meaning.USE_BY: "use by"}
_PREFIXES = {
    Meaning.MADE: r"made|mfg|mfd|prod|dom|manufactured",
    Meaning.BEST_BEFORE: r"bbe|bbd|bb|best before end|best before|best by",
    Meaning.USE_BY: r"exp|expiry|expires|use by",
}
# No bottle on a shelf is older; so a two-digit year before this is the wrong end of the text.
_OLDEST_YEAR = 2015
_MONTHS = {name.lower(): number for number, name in enumerate(calendar.month_abbr) if number}
_HINT = "Type it as 2027-03-31, or as 2027-03 where only the month is printed."


@dataclass(frozen=True)
class PrintedDate:
    """What was printed. `date` is None where a person must choose among `readings`; then `asks` says so."""

    meaning: Meaning
    date: Day | None
    month_only: bool = False
    readings: tuple[Day, ...] = ()
    asks: tuple[str, ...] = ()

    @property
    def says(self) -> str:
        """The date in words: "use by 2027-03-31", "made in 03/2025"."""
        if self.date is None:
            return " ".join(self.asks)
        if self.month_only and self.meaning is Meaning.MADE:
            return f"made in {self.date:%m/%Y}"
        return f"{_NOUN[self.meaning]} {self.date.isoformat()}"


def symbol_date(yymmdd: str, *, made: bool, today: date) -> date | None:
    """Return the date in a symbol, day 00 by its rule; None where there is no such day."""
    year = today.year - today.year % 100 + int(yymmdd[:2])
    if year - today.year > 50:
        year -= 100
    elif year - today.year < -49:
        year += 100
    month, day = int(yymmdd[2:4]), int(yymmdd[4:6])
    return _month(year, month, made=made) if day == 0 else _day(year, month, day)


def read_printed_date(text: str, *, meaning: Meaning | str, order: str | None = None) -> PrintedDate:
    """Read a date that a person types off a pack.

    ISO is taken. Two numbers up to 12 are asked unless `order` (dmy, mdy, ymd: the shop's) is named. A month
    alone is its last day, or its first for a made date. Two-digit years are of this century. Raises CodeError
    for what is no date, such as a batch with a day number.
    """
    meaning = Meaning(meaning)
    if order is not None and order not in ORDERS:
        raise CodeError(f"“{order}” is no order of day, month and year: name {', '.join(ORDERS)}.")
    bare = _without_prefix(text, meaning)
    made = meaning is Meaning.MADE
    days, months = _days(bare, order), _months(bare, made=made)
    # Three numbers name a day, two a month; six digits in one word may do either.
    found = tuple(dict.fromkeys((*days, *months)))
    if not found:
        raise CodeError(f"“{text.strip()}” is not read as a date: a batch or day number is none. {_HINT}")
    if len(found) > 1:
        either = " or ".join(_spoken(each) for each in found)
        asks = (f"“{text.strip()}” has two readings: {either}. Which is it? {_HINT}",)
        return PrintedDate(meaning, None, bool(months) and not days, found, asks)
    return PrintedDate(meaning, found[0], not days, found)


def _spoken(day: date) -> str:
    return f"{day.day} {calendar.month_name[day.month]} {day.year}"


def _without_prefix(text: str, meaning: Meaning) -> str:
    bare = " ".join(text.lower().split())
    if not bare.isascii():
        raise CodeError(f"“{text.strip()}” has characters that no date has here. {_HINT}")
    for says, prefixes in _PREFIXES.items():
        if found := re.match(rf"(?:{prefixes})(?![a-z])[.: ]*", bare):
            if says is not meaning:
                raise CodeError(
                    f"“{text.strip()}” says {_NOUN[says]}, and {_NOUN[meaning]} was chosen. "
                    f"Choose {_NOUN[says]}, or type the date alone."
                )
            return bare[found.end() :]
    return bare


def _days(bare: str, order: str | None) -> tuple[date, ...]:
    """Every day that the text may name, by the order that is certain, the shop's, or all that fit."""
    if found := re.fullmatch(r"([0-9]{4})[-/. ]([0-9]{1,2})[-/. ]([0-9]{1,2})", bare):
        return _given([_day(int(found[1]), int(found[2]), int(found[3]))])
    if found := re.fullmatch(r"([0-9]{1,2})[-/. ]([0-9]{1,2})[-/. ]([0-9]{4}|[0-9]{2})", bare):
        return _ordered((found[1], found[2], found[3]), order, together=False)
    if found := re.fullmatch(r"([0-9]{2})([0-9]{2})([0-9]{2})", bare):
        return _ordered((found[1], found[2], found[3]), order, together=True)
    if re.fullmatch(r"[0-9]{8}", bare):
        iso = _day(int(bare[:4]), int(bare[4:6]), int(bare[6:]))
        rest = _ordered((bare[:2], bare[2:4], bare[4:]), order, together=False)
        return _likely(_given([iso, *rest]))
    return _named_days(bare)


def _ordered(parts: tuple[str, str, str], order: str | None, *, together: bool) -> tuple[date, ...]:
    """Days by order: YYMMDD is as likely as the rest where written together, the last resort elsewhere."""
    first, second, third = map(int, parts)
    by = {"dmy": _day(_year(third), second, first), "mdy": _day(_year(third), first, second)}
    if len(parts[2]) == 2:
        by["ymd"] = _day(_year(first), second, third)
    if order and (shop := by.get(order)):
        return (shop,)
    usual = _given([by["dmy"], by["mdy"]])
    if not together and any(day.year >= _OLDEST_YEAR for day in usual):
        return usual
    return _likely(_given(by.values()))


def _months(bare: str, *, made: bool) -> tuple[date, ...]:
    """Every month that the text may name, as its first or last day."""
    pairs: list[tuple[str, str]] = []
    if found := re.fullmatch(r"([0-9]{4})[-/. ]([0-9]{1,2})", bare):
        pairs = [(found[1], found[2])]
    elif found := re.fullmatch(r"([0-9]{1,2})[-/. ]([0-9]{4})", bare):
        pairs = [(found[2], found[1])]
    elif re.fullmatch(r"[0-9]{6}", bare):
        pairs = [(bare[:4], bare[4:]), (bare[2:], bare[:2])]
    elif found := re.fullmatch(r"([0-9]{1,2})[-/. ]?([0-9]{2})", bare):
        pairs = [(found[2], found[1]), (found[1], found[2])]
    elif found := re.fullmatch(r"([a-z]{3,9})[-/. ]*([0-9]{4}|[0-9]{2})", bare):
        pairs = [(found[2], str(_month_number(found[1])))]
    every = _given(_month(_year(int(year)), int(month), made=made) for year, month in pairs)
    return _likely(tuple(day for day in every if 2000 <= day.year <= 2099))


def _named_days(bare: str) -> tuple[date, ...]:
    """A day whose month is a word: 3 Apr 2027, 03APR27, Apr 3 2027."""
    gap = r"[-/., ]*"
    if found := re.fullmatch(rf"([0-9]{{1,2}}){gap}([a-z]{{3,9}}){gap}([0-9]{{4}}|[0-9]{{2}})", bare):
        return _given([_day(_year(int(found[3])), _month_number(found[2]), int(found[1]))])
    if found := re.fullmatch(rf"([a-z]{{3,9}}){gap}([0-9]{{1,2}})[-/., ]+([0-9]{{4}})", bare):
        return _given([_day(int(found[3]), _month_number(found[1]), int(found[2]))])
    return ()


def _month_number(word: str) -> int:
    """The month that an English word or its start names, else 0."""
    number = _MONTHS.get(word[:3], 0)
    return number if calendar.month_name[number].lower().startswith(word) or word == "sept" else 0


def _year(written: int) -> int:
    return written if written > 99 else 2000 + written


def _day(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day)
    except ValueError:
        return None


def _month(year: int, month: int, *, made: bool) -> date | None:
    if not (1 <= month <= 12 and 1 <= year <= 9999):
        return None
    return date(year, month, 1 if made else calendar.monthrange(year, month)[1])


def _given(days: Iterable[date | None]) -> tuple[date, ...]:
    return tuple(dict.fromkeys(day for day in days if day is not None))


def _likely(days: tuple[date, ...]) -> tuple[date, ...]:
    """Those of an age that a bottle can have, or all of them where none has."""
    return tuple(day for day in days if day.year >= _OLDEST_YEAR) or days
