"""Text cells that a spreadsheet must never run as a formula (OWASP, "CSV Injection").

Only text is guarded; a number, a date, a truth value or nothing passes through untouched, so -5 stays -5.
"""

from typing import TypeVar

MARK = "'"
# ASCII and full-width signs that start a formula, and the control characters that some programs skip first.
DANGEROUS = ("=", "+", "-", "@", "\t", "\r", "\n", "\0", "＝", "＋", "－", "＠")

Cell = TypeVar("Cell")


def needs_guard(text: str) -> bool:
    """Say whether a spreadsheet could run this text, or whether it starts with the guard mark itself."""
    return text.startswith((*DANGEROUS, MARK))


def guard(value: Cell) -> Cell:
    """Return a cell's value with text that could run as a formula put behind an apostrophe.

    `unguard(guard(x)) == x` for every text x.
    """
    if isinstance(value, str) and needs_guard(value):
        return MARK + value  # type: ignore[return-value]
    return value


def unguard(value: Cell) -> Cell:
    """Return a cell's value as it was before `guard`; an apostrophe that guards nothing stays."""
    if isinstance(value, str) and value.startswith(MARK) and needs_guard(value[1:]):
        return value[1:]  # type: ignore[return-value]
    return value
