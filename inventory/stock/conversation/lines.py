"""What one line is, before it means anything: our code, a command, an amount, a maker's symbol, words."""

import re
from dataclasses import dataclass
from datetime import date

from inventory.codes import COMMANDS, CodeKind, Reading, command_of, read_code
from inventory.units import read_mix

from .measured import Measured, read_scanned, read_typed

# What people type instead of scanning the card on the wall.
_WORDS = {
    "y": "yes",
    "n": "no",
    "bottle finished": "finished",
    "as planned": "planned",
    "no lot": "no_lot",
    "not given": "no_lot",
    "no date": "no_date",
    "take": "use",
    "throw away": "discard",
    "quarantine": "hold",
    "bring back": "bring_back",
    "label": "reprint",
    "ready": "done",
    "sign off": "sign",
    "weigh": "use",
    "already": "already",
    "whole lot": "whole_lot",
    "rinse bottle": "rinse_bottle",
    "rinse the bottle": "rinse_bottle",
}
_WEIGHT = re.compile(r"(?P<which>before|after|weight) (?P<amount>.+)", re.IGNORECASE)
_NUMBER = re.compile(r"(?:[x×] ?)?(?P<number>[0-9]{1,4})(?: ?[x×])?", re.IGNORECASE)
_AMOUNT = re.compile(r"[0-9½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞.,][^a-zA-Zµμ]*[a-zA-Zµμ][a-zA-Zµμ .]*")


@dataclass(frozen=True)
class Said:
    """One line, read every way that does not depend on the conversation; empty where it is not that."""

    text: str
    command: str = ""
    code: str = ""
    kind: str = ""
    packs: tuple[Reading, ...] = ()
    asks: tuple[str, ...] = ()
    ratio: tuple[int, int] | None = None
    weight: str = ""
    amount: str = ""
    number: int | None = None
    measured: tuple[Measured, ...] = ()
    error: str = ""

    @property
    def words(self) -> bool:
        """Whether the line is neither a command nor one of our codes, so that free text may be meant."""
        return not (self.command or self.code)


def read_line(text: str, *, today: date) -> Said:
    """Return what a line is: our codes first, then commands, words and amounts, a maker's symbol last."""
    said = text.strip(" \t\r\n")
    if name := command_of(said) or _word(said):
        return Said(said, command=name)
    if typed := _typed(said):
        return typed
    found = read_code(said, today=today)
    if found.readings and (code := found.readings[0].code):
        return Said(said, code=code, kind=str(found.readings[0].kind), measured=read_scanned(code))
    packs = tuple(
        each for each in found.readings if each.kind in (CodeKind.PRODUCT, CodeKind.LOT) and each.gtin
    )
    error = "" if packs else " ".join(found.errors)
    return Said(said, packs=packs, asks=found.asks if packs else (), error=error)


def _word(said: str) -> str:
    word = said.lower()
    return _WORDS.get(word) or (word if word in COMMANDS else "")


def _typed(said: str) -> Said | None:
    if measured := read_typed(said):
        return Said(said, measured=measured)
    if found := _NUMBER.fullmatch(said):
        return Said(said, number=int(found["number"]))
    if mix := read_mix(said):
        return Said(said, ratio=mix)
    if found := _WEIGHT.fullmatch(said):
        return Said(said, weight=found["which"].lower(), amount=found["amount"])
    if _AMOUNT.fullmatch(said):
        return Said(said, amount=said)
    return None
