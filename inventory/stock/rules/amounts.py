"""How much a step is planned to take: the shop's own median, else its mid-size amount by size.

Size factors: small 0.8, mid-size 1, large 1.3, van 1.6 (common practice, no source).
"""

import csv
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from pathlib import Path
from statistics import median

SIZE_FACTORS = {"small": Fraction(4, 5), "mid": Fraction(1), "large": Fraction(13, 10), "van": Fraction(8, 5)}
# Fewer uses than this say more about the day than about the car (our choice).
ENOUGH = 3
# The median rolls over this many latest uses, so that a new habit shows within a season (our choice).
LATEST = 9
TABLE = Path(__file__).with_name("usual_amounts.csv")


@dataclass(frozen=True)
class Planned:
    """An amount in base units, and where it comes from as a sentence."""

    amount: int
    because: str


def planned(mid_size: int, size: str, measured: Sequence[int]) -> Planned:
    """Return what to plan for a vehicle size; `measured` are past uses on that size, the latest first."""
    if len(measured) >= ENOUGH:
        latest = measured[:LATEST]
        return Planned(
            round(Fraction(median(latest))), f"The median of your last {len(latest)} measured uses."
        )
    factor = SIZE_FACTORS[size]
    because = "The service's amount for a mid-size car."
    if factor != 1:
        because = f"The service's amount for a mid-size car × {float(factor):g} (common practice, no source)."
    return Planned(round(mid_size * factor), because)


def usual(kind: str, dimension: str) -> int | None:
    """Return the middle of what a mid-size car takes of a kind, in base units; None where unknown."""
    found = _table().get((kind, dimension))
    return sum(found) // 2 if found else None


@cache
def _table() -> dict[tuple[str, str], tuple[int, int]]:
    lines = [line for line in TABLE.read_text(encoding="utf-8").splitlines() if not line.startswith("#")]
    return {
        (row["kind"], row["dimension"]): (int(row["low"]), int(row["high"])) for row in csv.DictReader(lines)
    }
