"""Reading the sourced tables: CSV whose first lines, marked #, say where the rows come from."""

import csv
from functools import cache
from pathlib import Path

TABLES = Path(__file__).resolve().parent.parent / "tables"


def rows(name: str) -> list[dict[str, str]]:
    """Return the rows of one table by column, without its header lines."""
    with (TABLES / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(line for line in file if not line.startswith("#")))


def header(name: str) -> list[str]:
    """Return the lines that say source, edition, date and mark."""
    text = (TABLES / f"{name}.csv").read_text(encoding="utf-8")
    return [line.removeprefix("#").strip() for line in text.splitlines() if line.startswith("#")]


@cache
def languages_of(name: str) -> tuple[str, ...]:
    """Return the languages of a table of texts: each is a column that has marks of its own (mark_es)."""
    return tuple(column.removeprefix("mark_") for column in rows(name)[0] if column.startswith("mark_"))
