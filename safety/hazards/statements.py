"""The words of hazard statements, by regime and language.

A language is a column of the table with its marks beside it; nothing here names one but English, which
regimes spell in two ways.
"""

import re
from functools import cache

from safety.hazards.classes import plain
from safety.hazards.tables import languages_of, rows

US_SPELLING = ("US", "CA")
BLANK = re.compile(r"<([^>]*)>")
# Statements without an H-code: their codes are ours and are never printed.
NATIONAL = "N-"


class UnknownStatement(ValueError):
    """A code that the table of statements does not have."""


class UnknownLanguage(ValueError):
    """A language that the tables have no column for."""


@cache
def texts() -> dict[str, dict[str, str]]:
    """Return code → the row of the table."""
    return {row["code"]: row for row in rows("statements")}


@cache
def languages() -> tuple[str, ...]:
    """Return the languages that labels can be printed in, English first."""
    return languages_of("statements")


def wording(statement: str, regime: str, language: str = "en") -> str:
    """Return the sentence of a code, with its full stop. Raises UnknownStatement, UnknownLanguage.

    "EUH208 limonene" or "H372 lungs" fills the name in; a blank that nobody filled is never printed raw.
    """
    code, _, name = statement.partition(" ")
    known = texts().get(code) or texts().get(plain(code))
    if known is None:
        raise UnknownStatement(f"The statement {code} is not in the table.")
    return BLANK.sub(lambda blank: name or blank[1], spelt(known, regime, language)) + "."


def spelt(row: dict[str, str], regime: str, language: str) -> str:
    """Return the cell of a table of texts that a regime prints in a language."""
    if f"mark_{language}" not in row:
        raise UnknownLanguage(f"There are no texts in “{language}”, only in {', '.join(languages())}.")
    american = row["en_us"] if language == "en" and regime in US_SPELLING else ""
    return american or row[language]


def is_national(code: str) -> bool:
    """Return whether a code stands for a statement that no regulation gave a code."""
    return code.startswith(NATIONAL)
