"""What a scanner typed, read: our own code, or a product, lot and dates from a maker's symbol."""

import re
from datetime import date

from inventory.codes.elements import ask_restricted, described, understand
from inventory.codes.own import TYPES, CodeError, check_letter, letter_of, looks_own, pair, squeezed, tidy
from inventory.codes.readings import CodeKind, Reading, Readings
from inventory.codes.symbols import (
    GS,
    WITH_MESSAGES,
    Element,
    bracketed,
    gtin_14,
    link,
    message,
    message_or_none,
    separate,
    swallowed,
)

LONGEST = 2000  # characters; a symbol holds less, and a longer text is a mistaken paste


def read_code(text: str, *, today: date) -> Readings:
    """Return what `text`, as a scanner typed it, may be. `today` settles the century of two-digit years.

    Never raises: what cannot be read is an answer with the reason in `errors`.
    """
    symbology, body = separate(text)
    try:
        return _read(symbology, body, today)
    except CodeError as error:
        return Readings(errors=(str(error),))


def _read(symbology: str | None, body: str, today: date) -> Readings:
    if not body or len(body) > LONGEST:
        raise CodeError(f"A code has 1 to {LONGEST} characters; this text has {len(body)}. Scan it again.")
    if not all(" " <= mark <= "~" or mark == GS for mark in body):
        raise CodeError(f"“{body}” has characters that no code has. Check the scanner's keyboard layout.")
    if code := tidy(body):
        return Readings((_own(code),))
    if re.match(r"https?://", body, re.IGNORECASE):
        return _from_link(body, today)
    if looks_own(body):
        raise CodeError(_nearly_own(squeezed(body)))
    if body.startswith("("):
        return _readings([bracketed(body)], today)
    return _from_number(symbology, body) or _from_message(symbology, body, today)


def _own(code: str) -> Reading:
    return Reading(CodeKind(TYPES[letter_of(code)]), code=code)


def _nearly_own(code: str) -> str:
    if code[0] not in TYPES:
        return f"{pair(code)} is not one of our codes: none starts with {code[0]}. Scan it again."
    right = check_letter(code[:-1])
    return (
        f"{pair(code)} is not one of our codes: one letter is wrong (these seven would end in {right}). "
        f"Scan it again, or type the eight letters as printed."
    )


def _from_link(body: str, today: date) -> Readings:
    """A maker's link, or one of our own posters', whose path ends in our code."""
    ours = tidy(re.split(r"[?#]", body)[0].rstrip("/").rsplit("/", 1)[-1])
    return Readings((_own(ours),)) if ours else _readings([link(body)], today)


def _from_number(symbology: str | None, body: str) -> Readings | None:
    """A bare number is a GTIN and nothing else, even where its digits would pass for a message."""
    if symbology in WITH_MESSAGES or not re.fullmatch(r"[0-9]+", body):
        return None
    if symbology == "E3" and len(body) in (15, 18):
        body = body[:13]  # an add-on of two or five digits follows
    if len(body) not in (8, 12, 13, 14):
        return None
    gtin = gtin_14(body, symbology)
    return Readings((Reading(CodeKind.PRODUCT, gtin=gtin),), tuple(ask_restricted(gtin)))


def _from_message(symbology: str | None, body: str, today: date) -> Readings:
    signed = symbology in WITH_MESSAGES or GS in body or body.startswith(("01", "02"))
    body = body.strip(GS)
    other = swallowed(body)
    as_sent = message_or_none(body) if other else message(body)
    result = _readings([each for each in (as_sent, other) if each], today)
    asks = list(result.asks)
    if other:
        asks.append(_ask_swallowed(result.readings))
    if result.readings and not signed:
        asks.append(_ask_unsigned(body, result.readings))
    return Readings(result.readings, tuple(asks), result.errors)


def _readings(every: list[list[Element]], today: date) -> Readings:
    """Understand each way of taking a symbol apart; what they have in common is asked once."""
    understood = [understand(elements, today) for elements in every]
    readings = tuple(each.readings[0] for each in understood if each.readings)
    asks = dict.fromkeys(ask for each in understood for ask in each.asks)
    errors = dict.fromkeys(error for each in understood for error in each.errors)
    return Readings(readings, tuple(asks), tuple(errors))


def _ask_unsigned(body: str, readings: tuple[Reading, ...]) -> str:
    """Without product and date there is too little to ask about: "10ml" would be lot "ml"."""
    if not any(each.expires_on or each.made_on or each.best_before_on for each in readings):
        raise CodeError(f"“{body}” is not a code that is read here. A lot is typed in brackets: (10){body}.")
    return f"“{body}” carries no sign that it is a maker's message. Compare lot and dates with the pack."


def _ask_swallowed(readings: tuple[Reading, ...]) -> str:
    either = ", or ".join(described(each) for each in readings)
    return f"No separator was sent, so a date may hang on the lot or serial: {either}? Look at the pack."
