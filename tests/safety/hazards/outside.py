"""Outside truth for the texts: tables beside all other expected values."""

import csv
from pathlib import Path

EXPECTED = Path(__file__).resolve().parents[2] / "expected"


def expected(name: str) -> list[dict[str, str]]:
    """Return the rows of one table of expected values, without the lines that name its source."""
    with (EXPECTED / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(line for line in file if not line.startswith("#")))
