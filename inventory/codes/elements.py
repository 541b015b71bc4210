"""What a maker's element strings mean together: product, lot, dates, count, net content."""

from dataclasses import replace
from datetime import date
from decimal import Decimal

from inventory.codes.dates import symbol_date
from inventory.codes.own import CodeError
from inventory.codes.readings import CodeKind, Reading, Readings
from inventory.codes.symbols import Element, gtin_14, restricted

_MOST_IN_A_CASE = 9999


def understand(elements: list[Element], today: date) -> Readings:
    """Return the one reading of these elements with its asks and errors; none where they name no goods."""
    asks: list[str] = []
    errors: list[str] = []
    values = _once(elements, errors)
    reading = Reading(
        CodeKind.PRODUCT,
        gtin=_gtin(values, errors),
        lot=values.get("10"),
        expires_on=_date(values, "17", today, errors) or _expiry_with_time(values, today, asks, errors),
        made_on=_date(values, "11", today, errors) or _date(values, "13", today, errors),
        best_before_on=_date(values, "15", today, errors),
        serial=values.get("21"),
        count=_count(values, asks),
        net_weight_kg=_measure(values, "310"),
        net_volume_l=_measure(values, "315"),
    )
    dated = reading.expires_on or reading.made_on or reading.best_before_on
    if not (reading.gtin or reading.lot or dated):
        errors.append(_no_goods(values))
        return Readings(errors=tuple(dict.fromkeys(errors)))
    if reading.lot or dated:
        reading = replace(reading, kind=CodeKind.LOT)
    asks += [*ask_restricted(reading.gtin), *_ask_order(reading)]
    return Readings((reading,), tuple(asks), tuple(dict.fromkeys(errors)))


def ask_restricted(gtin: str | None) -> list[str]:
    """Return the question that a number of restricted circulation raises, if it is one."""
    if gtin is None or not restricted(gtin):
        return []
    return [
        f"{gtin} is a number for one supplier's own use, and another may use it too. Whose goods are these?"
    ]


def described(reading: Reading) -> str:
    """Return lot, serial and dates of a reading in words."""
    parts = [
        ("lot", reading.lot),
        ("serial", reading.serial),
        ("use by", reading.expires_on),
        ("made", reading.made_on),
        ("best before", reading.best_before_on),
    ]
    return ", ".join(f"{noun} {value}" for noun, value in parts if value) or f"product {reading.gtin}"


def _once(elements: list[Element], errors: list[str]) -> dict[str, str]:
    """The value of each identifier; two different ones cancel out, since neither can be trusted."""
    values: dict[str, str] = {}
    torn = set()
    for ai, value in elements:
        if values.setdefault(ai, value) != value:
            torn.add(ai)
            errors.append(f"The code gives ({ai}) twice: {values[ai]} and {value}. Look at the pack.")
    return {ai: value for ai, value in values.items() if ai not in torn}


def _gtin(values: dict[str, str], errors: list[str]) -> str | None:
    digits = values.get("01") or values.get("02")
    if digits is None:
        return None
    try:
        return gtin_14(digits)
    except CodeError as error:
        errors.append(str(error))
        return None


def _date(values: dict[str, str], ai: str, today: date, errors: list[str]) -> date | None:
    if ai not in values:
        return None
    found = symbol_date(values[ai][:6], made=ai in ("11", "13"), today=today)
    if found is None:
        errors.append(
            f"({ai}){values[ai]} is no day of the calendar. Type the date that is printed on the pack."
        )
    return found


def _expiry_with_time(values: dict[str, str], today: date, asks: list[str], errors: list[str]) -> date | None:
    if "17" in values:
        return None
    found = _date(values, "7003", today, errors)
    if found is not None:
        clock = values["7003"][6:]
        asks.append(
            f"The code says that it expires on {found} at {clock[:2]}:{clock[2:]}. Is that day still good?"
        )
    return found


def _count(values: dict[str, str], asks: list[str]) -> int | None:
    """(37) counts what (02) names; (30) counts pieces of goods sold by measure."""
    if "01" in values and "02" in values:
        asks.append("The code names a pack (01) and what a case holds (02); the pack was taken. Which is it?")
    if "02" in values and "37" not in values:
        asks.append("The code names what the case holds (02) but not how many (37). How many are in it?")
    if "37" in values and "02" not in values:
        asks.append("The code counts (37) without naming what it counts (02). How many are in it?")
    counted = values.get("37") if "02" in values else values.get("30")
    if counted is None:
        return None
    if int(counted) > _MOST_IN_A_CASE:
        asks.append(f"The code counts {int(counted)}, which may be a missing separator. How many are there?")
    return int(counted)


def _measure(values: dict[str, str], family: str) -> Decimal | None:
    """Net content, whose identifier ends in its number of decimals (3103: kilograms with three)."""
    found = next((ai for ai in values if len(ai) == 4 and ai.startswith(family)), None)
    return Decimal(values[found]).scaleb(-int(found[3])) if found else None


def _ask_order(reading: Reading) -> list[str]:
    """A pack that ends before it is made has a date misread or misprinted."""
    ends = reading.expires_on or reading.best_before_on
    if ends and reading.made_on and ends < reading.made_on:
        return [f"The code says made {reading.made_on} and good until {ends}. Which is printed on the pack?"]
    return []


def _no_goods(values: dict[str, str]) -> str:
    if "00" in values:
        return "This code numbers a delivery, not what is in it. Scan a bottle or its case."
    return (
        "This code names no product, lot or date that can be read. Scan another code on the pack, or type it."
    )
