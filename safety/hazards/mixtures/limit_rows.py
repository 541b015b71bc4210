"""The specific limits of one ingredient as a document gives them: read, and refused where they contradict."""

from itertools import pairwise
from typing import Any

from safety.hazards.mixtures.fields import MixtureError, a_list, an_object, known_keys, number, words
from safety.hazards.mixtures.values import Limit
from safety.hazards.mixtures.written import gravity, hazard, is_supplemental, outcome, read

KEYS = ("from", "to", "hazard")


def read_limits(value: object, place: str) -> tuple[Limit, ...]:
    """Return the rows of `limits`; raise MixtureError with the place."""
    rows = tuple(one_row(row, f"{place} {at}") for at, row in enumerate(a_list(value, place), 1))
    by_outcome: dict[tuple[str, ...], list[Limit]] = {}
    for row in rows:
        key = (row.hazard,) if is_supplemental(row.hazard) else outcome(read(row.hazard))
        by_outcome.setdefault(key, []).append(row)
    for same in by_outcome.values():
        agree(sorted(same, key=lambda row: row.from_percent), place)
    return rows


def one_row(value: Any, place: str) -> Limit:
    """Return one row."""
    row = an_object(value, place)
    known_keys(row, KEYS, place)
    if row.get("from") is None:
        raise MixtureError(f"{place}: “from” is missing; a percentage was expected.")
    start = number(row["from"], f"{place}, from", 0, 100)
    end = None if row.get("to") is None else number(row["to"], f"{place}, to", 0, 100)
    if end is not None and start >= end:
        raise MixtureError(f"{place}: from {start:g} is not below to {end:g}.")
    return Limit(hazard(words(row.get("hazard"), f"{place}, hazard"), f"{place}, hazard"), start, end)


def agree(rows: list[Limit], place: str) -> None:
    """Refuse two rows for one outcome that overlap, and a milder class above a graver one."""
    for low, high in pairwise(rows):
        if low.to_percent is None or low.to_percent > high.from_percent:
            raise MixtureError(f"{place}s: {span(low)} and {span(high)} contradict each other: they overlap.")
        if not is_supplemental(low.hazard) and gravity(read(low.hazard)) < gravity(read(high.hazard)):
            raise MixtureError(f"{place}s: {span(high)} is milder than {span(low)}; more cannot be milder.")


def span(row: Limit) -> str:
    """Return a row in words."""
    end = "" if row.to_percent is None else f" to {row.to_percent:g}"
    return f"“{row.hazard}” from {row.from_percent:g}{end} %"
