"""Codes: our own, the commands on the wall, and what a scanner typed off a maker's pack."""

from inventory.codes.commands import COMMANDS, code_of, command_of
from inventory.codes.dates import Meaning, PrintedDate, read_printed_date
from inventory.codes.own import LETTERS, TYPES, CodeError, check_letter, letter_of, new_code, pair, tidy
from inventory.codes.readings import CodeKind, Reading, Readings
from inventory.codes.scanned import read_code
from inventory.codes.values import AIR, HUMIDITY, PANEL, Value, value_code, value_of

__all__ = [
    "AIR",
    "COMMANDS",
    "HUMIDITY",
    "LETTERS",
    "PANEL",
    "TYPES",
    "CodeError",
    "CodeKind",
    "Meaning",
    "PrintedDate",
    "Reading",
    "Readings",
    "Value",
    "check_letter",
    "code_of",
    "command_of",
    "letter_of",
    "new_code",
    "pair",
    "read_code",
    "read_printed_date",
    "tidy",
    "value_code",
    "value_of",
]
