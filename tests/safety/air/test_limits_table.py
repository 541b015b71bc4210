"""The table of limits against the published lists, typed a second time."""

import csv
from pathlib import Path

import pytest

from safety.hazards.tables import rows

CORE = Path(__file__).parents[2] / "expected" / "exposure_core.csv"


def core() -> list[dict[str, str]]:
    with CORE.open() as lines:
        return list(csv.DictReader(line for line in lines if not line.startswith("#")))


def values(row: dict[str, str]) -> list[float]:
    """What the program's table holds of one substance, list, kind and unit."""
    keys = ("cas", "list", "kind", "unit")
    mine = [one for one in rows("exposure_limits") if all(one[key] == row[key] for key in keys)]
    return [float(one["value"]) for one in mine if one["value"]]


@pytest.mark.parametrize("row", core(), ids=lambda row: " ".join(row.values()))
def test_a_limit_is_the_published_one(row: dict[str, str]) -> None:
    if row["kind"] == "none":
        here = (row["cas"], row["list"])
        found = [one["kind"] for one in rows("exposure_limits") if (one["cas"], one["list"]) == here]
        assert found == ["none"]
    else:
        assert values(row) == [float(row["value"])]


@pytest.mark.parametrize(("kind", "until", "then"), [("TWA", 10, 6), ("short term 15 min", 20, 12)])
def test_both_eu_limits_of_isocyanates_fall_with_2029(kind: str, until: float, then: float) -> None:
    """98/24/EC Annex I, as amended in 2024: µg NCO/m³."""
    mine = [
        (float(one["value"]), one["from_on"], one["until_on"])
        for one in rows("exposure_limits")
        if (one["substance"], one["list"], one["kind"]) == ("isocyanates, all (as NCO)", "EU IOELV", kind)
    ]
    assert mine == [(until, "", "2028-12-31"), (then, "2029-01-01", "")]


def test_every_value_of_the_table_says_by_its_mark_where_it_is_from() -> None:
    assert {one["mark"] for one in rows("exposure_limits")} <= {"S", "S2", "M"}
