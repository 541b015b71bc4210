"""One cell becomes one value, or a sentence that says what to type instead."""

import re
from collections.abc import Mapping
from datetime import UTC, date, datetime, tzinfo
from decimal import Decimal

from inventory.codes import CodeError, Meaning, read_printed_date
from inventory.money import minor_digits, parse_money
from inventory.spreadsheets.rules.table import Cell

LIFE = re.compile(r"(\d{1,4})\s*(minutes?|min|days?|d|months?|m|years?|y)", re.IGNORECASE | re.ASCII)
LIFE_UNITS = {"mi": ("minute", 1), "d": ("day", 1), "m": ("month", 1), "y": ("month", 12)}
YES, NO = {"yes", "y", "true", "1", "x"}, {"no", "n", "false", "0"}
# Tab and line ends may stand in a text; the other controls come from a broken file.
CONTROL = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f]")
SMALL, LARGE = 32_767, 2**63 - 1


class Wrong(ValueError):
    """A cell that cannot be taken; the text is a whole sentence with the way out."""


def text_of(cell: Cell) -> str:
    """Return what a cell says, as a person reads it there."""
    if cell is None:
        return ""
    if isinstance(cell, bool):
        return "yes" if cell else "no"
    if isinstance(cell, Decimal):
        return f"{cell.normalize():f}"
    if isinstance(cell, datetime):
        return cell.isoformat(sep=" ") if cell.time() != datetime.min.time() else cell.date().isoformat()
    return cell.isoformat() if isinstance(cell, date) else str(cell)


def blank(cell: Cell) -> bool:
    """Say whether nothing is in a cell; spaces alone are nothing."""
    return cell is None or (isinstance(cell, str) and not cell.strip())


def read_text(cell: Cell, longest: int) -> str:
    """Return a text of at most so many characters, every one of them as it is."""
    text = text_of(cell)
    if len(text) > longest:
        raise Wrong(f"This text has {len(text)} characters; {longest} can be kept. Shorten it.")
    if CONTROL.search(text):
        raise Wrong("This text has a control character in it. Type it again.")
    return text


def read_whole(cell: Cell, *, least: int = 0, most: int = SMALL) -> int:
    """Return a whole number within its limits."""
    text = text_of(cell).strip()
    if not re.fullmatch(r"[-−]?[0-9]{1,19}", text):
        raise Wrong(f"“{text}” is no whole number. Write it in digits, like {max(least, 12)}.")
    number = int(text.replace("−", "-"))
    if not least <= number <= most:
        raise Wrong(f"{number} is outside {least} to {most}. Check the figure.")
    return number


def read_yes(cell: Cell) -> bool:
    """Return a yes or a no."""
    word = text_of(cell).strip().lower()
    if word not in YES | NO:
        raise Wrong(f"“{text_of(cell)}” is neither yes nor no. Write one of them.")
    return word in YES


def read_choice(cell: Cell, choices: Mapping[str, str]) -> str:
    """Return the value that a cell names by its word or by itself; `choices` maps value to word."""
    said = " ".join(text_of(cell).split()).casefold()
    for value, word in choices.items():
        if said in {value.casefold(), word.casefold()}:
            return value
    raise Wrong(f"“{text_of(cell)}” is not one of: {', '.join(choices.values())}.")


def read_life(cell: Cell) -> tuple[int, str] | None:
    """Return (count, unit) of "90 days", "18 months", "2 years", "45 minutes"; None for an empty cell."""
    if blank(cell):
        return None
    text = text_of(cell).strip()
    found = LIFE.fullmatch(text)
    if not found:
        raise Wrong(f"“{text}” is no length of time. Write it as 90 days, 18 months or 45 minutes.")
    unit = found[2].lower()
    name, times = LIFE_UNITS["mi" if unit.startswith("mi") else unit[0]]
    if not 1 <= int(found[1]) * times <= SMALL:
        raise Wrong(f"“{text}” is no length that can be kept. Leave the cell empty if it is not known.")
    return int(found[1]) * times, name


def show_life(count: int | None, unit: str) -> str:
    """Return a life as `read_life` takes it: "90 days"."""
    return "" if count is None else f"{count} {unit}{'' if count == 1 else 's'}"


def read_money(cell: Cell, currency: str) -> int:
    """Return a price in the minor unit; a real number has one reading, a text is read strictly."""
    if not isinstance(cell, int | Decimal) or isinstance(cell, bool):
        return parse_money(text_of(cell), currency)
    minor = Decimal(cell).scaleb(minor_digits(currency))
    if minor < 0 or minor != minor.to_integral_value() or minor > LARGE:
        raise Wrong(f"{text_of(cell)} is no price in {currency}. Write it with its cents, like 22.50.")
    return int(minor)


def show_price(minor: int | None, currency: str) -> Decimal | None:
    """Return a price as a number of the currency."""
    return None if minor is None else Decimal(minor).scaleb(-minor_digits(currency))


def read_printed(cell: Cell, meaning: Meaning, order: str) -> date | None:
    """Return a printed date by its meaning; one with two readings is asked back."""
    if blank(cell):
        return None
    if isinstance(cell, date):
        return cell.date() if isinstance(cell, datetime) else cell
    try:
        read = read_printed_date(text_of(cell), meaning=meaning, order=order or None)
    except CodeError as error:
        raise Wrong(str(error)) from None
    if read.date is None:
        raise Wrong(" ".join(read.asks))
    return read.date


def read_day(cell: Cell, order: str) -> date | None:
    """Return a day that happened, such as the day a bottle was opened; a month alone is not enough."""
    if isinstance(cell, str) and re.fullmatch(r"\s*[0-9]{4}[-/. ][0-9]{1,2}\s*", cell):
        raise Wrong(f"“{cell.strip()}” is a month. Type the day, like {cell.strip()[:4]}-03-31, or unknown.")
    return read_printed(cell, Meaning.MADE, order)


def read_instant(cell: Cell, zone: tzinfo) -> datetime:
    """Return an instant in UTC from a local time; one that the clock shows twice, or never, is asked back."""
    if isinstance(cell, datetime):
        moment = cell
    else:
        text = text_of(cell).strip()
        try:
            moment = datetime.fromisoformat(text)
        except ValueError:
            raise Wrong(f"“{text}” is no day and time. Write it like 2026-11-25 08:30.") from None
        if len(text) <= 10:
            raise Wrong(f"“{text}” has no time. Write it like {moment.date().isoformat()} 08:30.")
    return (moment if moment.tzinfo else _located(moment, zone)).astimezone(UTC)


def _located(moment: datetime, zone: tzinfo) -> datetime:
    first, second = (moment.replace(tzinfo=zone, fold=fold) for fold in (0, 1))
    if first.utcoffset() == second.utcoffset():
        return first
    if first.astimezone(UTC) < second.astimezone(UTC):
        either = " or ".join(each.isoformat(sep=" ", timespec="minutes") for each in (first, second))
        raise Wrong(f"{moment:%H:%M} comes twice on that day, when the clock goes back. Write {either}.")
    raise Wrong(f"{moment:%H:%M} does not exist on that day: the clock goes forward over it. Choose another.")


def show_instant(moment: datetime, zone: tzinfo) -> str:
    """Return a local time that `read_instant` takes back exactly; with its offset where the clock repeats."""
    local = moment.astimezone(zone)
    plain = local.replace(tzinfo=None)
    exact = "minutes" if not (plain.second or plain.microsecond) else "auto"
    twice = plain.replace(tzinfo=zone, fold=0).utcoffset() != plain.replace(tzinfo=zone, fold=1).utcoffset()
    return (local if twice else plain).isoformat(sep=" ", timespec=exact)
