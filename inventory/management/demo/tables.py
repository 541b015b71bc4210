"""Reads the demo's tables: CSV files whose first lines, marked #, say what they are."""

import csv
from pathlib import Path

FOLDER = Path(__file__).resolve().parents[3] / "demo_fixtures"
Row = dict[str, str]


def table(name: str) -> list[Row]:
    """Return the rows of a table of `demo_fixtures`."""
    with (FOLDER / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(line for line in file if not line.startswith("#")))


def listed(text: str, mark: str = ";") -> list[str]:
    """Return the parts of a cell that holds several."""
    return [part.strip() for part in text.split(mark) if part.strip()]
