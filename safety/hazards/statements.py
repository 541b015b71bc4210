"""The words of hazard statements, by regime."""

import re
from functools import cache

from safety.hazards.classes import plain
from safety.hazards.tables import rows

US_SPELLING = ("US", "CA")


class UnknownStatement(ValueError):
    """A code that the table of statements does not have."""


@cache
def texts() -> dict[str, tuple[str, str]]:
    """Return code → (EU wording, US wording)."""
    return {row["code"]: (row["eu"], row["us"] or row["eu"]) for row in rows("statements")}


def wording(statement: str, regime: str) -> str:
    """Return the sentence of a code, with its full stop.

    "EUH208 limonene" fills the name in; a blank that nobody filled is dropped, never printed raw.
    """
    code, _, name = statement.partition(" ")
    known = texts().get(code) or texts().get(plain(code))
    if known is None:
        raise UnknownStatement(f"The statement {code} is not in the table.")
    text = known[1] if regime in US_SPELLING else known[0]
    text = re.sub(r"<[^>]+>", name or "a sensitising substance", text)
    return f"{text}."
