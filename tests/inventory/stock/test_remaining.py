"""What a typed amount settles, and what one that was taken as planned leaves open: pure."""

from datetime import UTC, datetime

import pytest

from inventory.stock.rules.remaining import Key, remaining
from inventory.stock.rules.reserve import Need

NOON = datetime(2026, 11, 25, 12, 0, tzinfo=UTC)
KINDS = {"XWIPE": "solvent", "XTAR": "solvent"}
AT_WASH: Key = ("JCAR", "SWASH", "XWIPE")
NAMED = ("1", "SWASH", 96, "XWIPE")
ANY = ("2", "SWASH", 50, None)
LATER = ("3", "SCOAT", 40, "XWIPE")


def left(*needs: tuple[str, str, int, str | None], uses: dict[Key, int], typed: set[Key]) -> dict[str, int]:
    """Return what is left of needs, by their ids."""
    wants = [
        Need(id, "JCAR", NOON, NOON, NOON, NOON, amount, product=product, kind="" if product else "solvent")
        for id, _, amount, product in needs
    ]
    step_of = {id: step for id, step, _, _ in needs}
    found = remaining(wants, step_of, uses, KINDS, typed=typed)
    return {need.id: need.amount for need in found}


@pytest.mark.parametrize(
    ("used", "typed", "expected", "because"),
    [
        (60, set(), {"1": 36}, "the first of two bottles gave what it held: the rest is still to come"),
        (60, {AT_WASH}, {}, "somebody typed that the step took 60 ml"),
        (0, {AT_WASH}, {}, "somebody typed that the step took nothing"),
        (110, {AT_WASH}, {}, "it took more than planned"),
        (60, {("JCAR", "SCOAT", "XWIPE")}, {"1": 36}, "typed of another step"),
        (60, {("JOTHER", "SWASH", "XWIPE")}, {"1": 36}, "typed of another car"),
        (60, {("JCAR", "SWASH", "XTAR")}, {"1": 36}, "typed of another product"),
    ],
)
def test_a_typed_amount_settles_what_its_step_planned(
    used: int, typed: set[Key], expected: dict[str, int], because: str
) -> None:
    assert left(NAMED, uses={AT_WASH: used}, typed=typed) == expected, because


def test_a_typed_amount_of_what_is_asked_for_by_name_settles_no_any_beside_it() -> None:
    assert left(NAMED, ANY, uses={AT_WASH: 60}, typed={AT_WASH}) == {"2": 50}
    assert left(NAMED, ANY, uses={AT_WASH: 110}, typed={AT_WASH}) == {"2": 36}


def test_any_of_a_kind_is_settled_by_a_product_of_it() -> None:
    tar: Key = ("JCAR", "SWASH", "XTAR")
    assert left(NAMED, ANY, uses={tar: 20}, typed={tar}) == {"1": 96}


def test_a_typed_amount_settles_no_later_step() -> None:
    assert left(NAMED, LATER, uses={AT_WASH: 60}, typed={AT_WASH}) == {"3": 40}
