"""Names in a sentence: in a row, at its start, and with the word that agrees with their number."""

from collections.abc import Sequence


def row(names: Sequence[str]) -> str:
    """Return names as a sentence lists them: "roof, bonnet and boot lid"."""
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"


def sentence(text: str) -> str:
    """Return a text that starts as a sentence does."""
    return f"{text[:1].upper()}{text[1:]}"


def agreeing(count: int, one: str, many: str) -> str:
    """Return the word for one thing or for several."""
    return one if count == 1 else many
