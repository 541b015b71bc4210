"""Reading the trade's tables: CSV whose first lines, marked #, say where the rows come from."""

import csv
from functools import cache
from pathlib import Path

TABLES = Path(__file__).resolve().parent / "tables"

MARKS = {
    "S": "the source was read",
    "S2": "a faithful copy was read",
    "T": "trade pages, no authority",
    "C": "common practice, no source",
    "M": "from memory",
    "SHOP": "this shop",
}


@cache
def rows(name: str) -> tuple[dict[str, str], ...]:
    """Return the rows of one table by column, without its header lines."""
    with (TABLES / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return tuple(csv.DictReader(line for line in file if not line.startswith("#")))


def header(name: str) -> list[str]:
    """Return the lines that say source, date and mark."""
    text = (TABLES / f"{name}.csv").read_text(encoding="utf-8")
    return [line.removeprefix("#").strip() for line in text.splitlines() if line.startswith("#")]


def listed(cell: str) -> tuple[str, ...]:
    """Return the entries of a cell that holds several, divided by semicolons."""
    return tuple(part.strip() for part in cell.split(";") if part.strip())


def in_words(mark: str) -> str:
    """Return a mark as a reader sees it, "common practice, no source"."""
    return MARKS[mark]
