"""Amounts by vehicle size, bays, and who gains: pure decisions, each on both sides of its edge."""

from datetime import UTC, datetime, timedelta

import pytest

from inventory.jobs.rules.bays import Stay, clashes
from inventory.jobs.rules.gains import Standing, changed
from inventory.stock.rules.amounts import planned, usual

NOON = datetime(2026, 11, 25, 12, 0, tzinfo=UTC)
SERVICE = "The service's amount for a mid-size car"
FACTOR = "(common practice, no source)."


@pytest.mark.parametrize(
    ("size", "measured", "amount", "because"),
    [
        ("mid", [], 100_000, f"{SERVICE}."),
        ("small", [], 80_000, f"{SERVICE} × 0.8 {FACTOR}"),
        ("large", [], 130_000, f"{SERVICE} × 1.3 {FACTOR}"),
        ("van", [], 160_000, f"{SERVICE} × 1.6 {FACTOR}"),
        ("large", [90_000, 95_000], 130_000, f"{SERVICE} × 1.3 {FACTOR}"),
        ("large", [90_000, 95_000, 200_000], 95_000, "The median of your last 3 measured uses."),
        ("mid", [10_001, 10_002, 10_003, 10_004], 10_002, "The median of your last 4 measured uses."),
        ("mid", [50_000] * 5 + [70_000] * 20, 50_000, "The median of your last 9 measured uses."),
    ],
)
def test_an_amount_is_the_shop_s_own_median_from_three_measured_uses_on(
    size: str, measured: list[int], amount: int, because: str
) -> None:
    plan = planned(100_000, size, measured)

    assert (plan.amount, plan.because) == (amount, because)


@pytest.mark.parametrize(
    ("kind", "dimension", "amount"),
    [
        ("coating", "volume", 20_000),
        ("solvent", "volume", 150_000),
        ("pad", "pieces", 6),
        ("clay", "mass", 40_000),
        ("compound", "mass", None),
        ("wax", "volume", None),
    ],
)
def test_the_usual_amount_is_the_middle_of_common_practice_in_its_own_dimension(
    kind: str, dimension: str, amount: int | None
) -> None:
    assert usual(kind, dimension) == amount


def stay(job: str, start: float, end: float, bay: str = "Bay 2", step: str = "Cure") -> Stay:
    return Stay(job, f"car {job}", step, bay, NOON + timedelta(hours=start), NOON + timedelta(hours=end))


@pytest.mark.parametrize(
    ("other", "clash", "because"),
    [
        (stay("B", 12, 14), False, "the bay is free from the hour at which the cure ends"),
        (stay("B", 11, 14), True, "an hour of the cure is left"),
        (stay("B", 11, 14, bay="Bay 1"), False, "another bay"),
        (stay("A", 11, 14), False, "a job does not stand in its own way"),
    ],
)
def test_cure_holds_its_bay(other: Stay, clash: bool, because: str) -> None:
    assert bool(clashes("A", [stay("A", 0, 12), other])) is clash, because


def test_a_clash_says_who_is_in_the_bay_and_until_when() -> None:
    found = clashes("A", [stay("A", 0, 2, step="Wash"), stay("B", 1, 12)])

    assert [clash.says(UTC) for clash in found] == [
        "Wash: Bay 2 is taken by car B (Cure) until Thursday 26 November, 00:00."
    ]


@pytest.mark.parametrize(
    ("was", "now", "says"),
    [
        (Standing("Red van", "ask", 1), Standing("Red van", "ready", 0), ["Red van gains: it is ready now."]),
        (
            Standing("Red van", "stop", 2),
            Standing("Red van", "ask", 1),
            ["Red van gains: it asks, 1 finding open."],
        ),
        (
            Standing("Red van", "ready", 0),
            Standing("Red van", "stop", 2),
            ["Red van gives way: a stop stands, 2 findings open."],
        ),
        (Standing("Red van", "ask", 1), Standing("Red van", "ask", 1), []),
    ],
)
def test_it_is_said_who_gains_and_who_gives_way(was: Standing, now: Standing, says: list[str]) -> None:
    assert changed({"J": was}, {"J": now}) == says
