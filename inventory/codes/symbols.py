"""What a symbol carries, taken apart: symbology identifier, separators, element strings, links, numbers.

Sources: GS1 General Specifications (identifiers, check digit, dates, restricted circulation), ISO/IEC 15424
(symbology identifiers), GS1 Digital Link standard: URI syntax. biip parses; its gaps are closed here.
"""

import re
from calendar import monthrange
from typing import NamedTuple

from biip import ParseConfig, ParseError
from biip.checksums import gs1_standard_check_digit
from biip.gs1_digital_link_uris import GS1DigitalLinkURI
from biip.gs1_element_strings import GS1ElementString
from biip.upc import Upc

from inventory.codes.own import CodeError

GS = "\x1d"
# Ways in which scanners and key-wedge drivers write a group separator out.
_WRITTEN_SEPARATORS = ("^]", "␝", "<GS>")
WITH_MESSAGES = {"C1", "e0", "e1", "e2", "d2", "Q3", "J1"}
DATE_AIS = ("11", "12", "13", "15", "16", "17")
# The clock inside biip is not asked: dates are read by codes.dates with the day handed in.
_CONFIG = ParseConfig(gs1_element_strings_verify_date=False)

_SYMBOLOGY = re.compile(r"\]([A-Za-z][0-9A-Za-z])")
_BRACKETED = re.compile(r"\(([0-9]{2,4})\)(.*?)(?=\([0-9]{2,4}\)|$)")
_DATE = r"[0-9]{2}(?:0[1-9]|1[0-2])(?:[0-2][0-9]|3[01])"
_SWALLOWED = re.compile(rf"(.{{1,20}}?)((?:(?:{'|'.join(DATE_AIS)}){_DATE})+)(21.{{1,20}})?")


class Element(NamedTuple):
    """One application identifier with its value."""

    ai: str
    value: str


def separate(text: str) -> tuple[str | None, str]:
    """Split a scan into its symbology identifier (without the bracket) and its body, separators as 0x1D."""
    # str.strip() would take the separators with it.
    body = text.strip(" \t\r\n")
    for written in _WRITTEN_SEPARATORS:
        body = body.replace(written, GS)
    symbology = None
    if found := _SYMBOLOGY.match(body.lstrip(GS)):
        symbology, body = found[1], body.lstrip(GS)[found.end() :]
    return symbology, body.rstrip(GS)


def message(body: str) -> list[Element]:
    """Return the element strings of a message, in order. Raises CodeError where one is malformed."""
    elements, rest = [], body.strip(GS)
    while rest:
        element = _next(rest)
        elements.append(element)
        rest = rest[len(element.ai) + len(element.value) :].lstrip(GS)
    return elements


def message_or_none(body: str) -> list[Element] | None:
    """Return the element strings of a message, or None where one is malformed."""
    try:
        return message(body)
    except CodeError:
        return None


def swallowed(body: str) -> list[Element] | None:
    """Return the other reading of a message without separators whose lot or serial ends like a date.

    None where there is nothing to ask: a date that was already read cannot have been swallowed too.
    """
    before: list[Element] = []
    rest = body
    while rest and GS not in body:
        element = _next(rest)
        tail = rest[len(element.ai) :]
        found = _SWALLOWED.fullmatch(tail) if element.ai in ("10", "21") else None
        if found and not (found[3] and element.ai == "21"):
            after = message_or_none(found[2] + (found[3] or "")) or []
            names = [each.ai for each in (*before, *after)]
            if after and len(names) == len(set(names)) and all(map(_possible, after)):
                return [*before, Element(element.ai, found[1]), *after]
        before.append(element)
        rest = tail[len(element.value) :]
    return None


def bracketed(body: str) -> list[Element]:
    """Return the element strings of text as printed below a symbol: (01)…(10)…(17)…. Raises CodeError."""
    found = [Element(ai, value.strip(f" {GS}")) for ai, value in _BRACKETED.findall(body)]
    return [_whole(Element(ai, _padded(ai, value))) for ai, value in found]


def link(body: str) -> list[Element]:
    """Return the element strings of a GS1 Digital Link, its scheme and host in any case. Raises CodeError."""
    scheme, _, rest = body.partition("://")
    tidy = re.sub(r"/+(?=[?#]|$)", "", rest, count=1)
    try:
        parsed = GS1DigitalLinkURI.parse(f"{scheme.lower()}://{tidy}", config=_CONFIG)
    except (ParseError, ValueError):
        raise CodeError(
            f"“{body}” is a link that names no product. Scan the bar code of the pack, or type its number."
        ) from None
    return [Element(each.ai.ai, each.value) for each in parsed.element_strings]


def gtin_14(digits: str, symbology: str | None = None) -> str:
    """Return the GTIN-14 of a bare number of 8, 12, 13 or 14 digits. Raises CodeError for its check digit.

    Eight digits that start 0 or 1 are UPC-E where they fit, unless the symbology says EAN-8 (E4).
    """
    if len(digits) == 8 and digits[0] in "01" and symbology != "E4":
        try:
            return Upc.parse(digits).as_upc_a().zfill(14)
        except ParseError:
            pass  # then it can still be an EAN-8
    right = gs1_standard_check_digit(digits[:-1])
    if int(digits[-1]) != right:
        raise CodeError(
            f"{digits} has a wrong check digit: it ends in {digits[-1]} and should end in {right}. "
            f"Scan it again, or compare it with the pack."
        )
    return digits.zfill(14)


def restricted(gtin: str) -> bool:
    """Whether a GTIN-14 is of restricted circulation: a supplier's own number, no match for another's."""
    if gtin.startswith("000000"):
        return gtin[6] in "02"
    return gtin[1] == "2" or gtin[1:3] in ("02", "04")


def _next(rest: str) -> Element:
    if rest[:2] in DATE_AIS and re.match(r"[0-9]{6}", rest[2:]):
        return Element(rest[:2], rest[2:8])  # an impossible day is an error of one field, not of the scan
    try:
        found = GS1ElementString.extract(rest, config=_CONFIG)
    except (ParseError, ValueError):
        raise CodeError(_unreadable(rest)) from None
    if not found.value:
        raise CodeError(_unreadable(rest))
    return Element(found.ai.ai, found.value)


def _possible(element: Element) -> bool:
    if element.ai not in DATE_AIS:
        return True
    year, month, day = (int(element.value[at : at + 2]) for at in (0, 2, 4))
    return day <= monthrange(2000 + year, month)[1]


def _whole(element: Element) -> Element:
    text = "".join(element)
    if not element.value or message_or_none(text) != [element]:
        raise CodeError(_unreadable(f"({element.ai}){element.value}"))
    return element


def _padded(ai: str, value: str) -> str:
    return value.zfill(14) if ai in ("01", "02") and re.fullmatch(r"[0-9]{8}|[0-9]{12,13}", value) else value


def _unreadable(rest: str) -> str:
    shown = rest.replace(GS, " ")
    return f"Nothing that is read here begins at “{shown}”. Scan it again, or type the number under the bars."
