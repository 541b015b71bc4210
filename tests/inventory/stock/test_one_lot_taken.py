"""What a step is given of a coating, booked ahead or by a signature: one lot. Common practice, no source."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from inventory.stock.rules.lines import Refused
from inventory.stock.rules.reserve import Need, OnShelf, reserve
from inventory.stock.rules.signing import StageNeed, StagePlan, plan_stage

NOON = datetime(2026, 11, 25, 12, 0, tzinfo=UTC)
ML = 1_000
A, B = frozenset({"LOTA"}), frozenset({"LOTB"})


def pot(code: str, ml: int, lots: frozenset[str], **more: object) -> OnShelf:
    return OnShelf(code, "XTDW", "coating", ml * ML, lots=lots, sealed=False, **more)  # type: ignore[arg-type]


def wants(ml: int, **more: object) -> Need:
    known: dict[str, object] = {"product": "XTDW", "one_lot": True, **more}
    return Need("7", "JCAR", NOON, NOON + timedelta(hours=1), NOON, NOON, ml * ML, **known)  # type: ignore[arg-type]


def given(need: Need, *shelf: OnShelf) -> list[tuple[str, int]]:
    return [(taken.container, taken.amount // ML) for taken in reserve([need], shelf, UTC).taken]


def test_the_rest_of_a_step_comes_from_the_lot_that_it_has_though_another_would_do() -> None:
    first, other = pot("B1", 30, A), pot("B2", 30, B)
    assert given(wants(10, had=B), first, other) == [("B2", 10)]
    assert given(wants(10), first, other) == [("B1", 10)], "the twin: a step that had nothing takes the next"
    assert given(wants(10, had=B), first) == []


def test_makes_that_mix_lots_stay_one_make_where_any_coating_is_asked_for() -> None:
    first, second = pot("B1", 10, A, mixes_lots=True), pot("B2", 10, B, mixes_lots=True)
    any_coating = wants(20, product=None, kind="coating")
    assert given(any_coating, first, second) == [("B1", 10), ("B2", 10)]
    strict = [replace(each, mixes_lots=False) for each in (first, second)]
    assert given(any_coating, *strict) == [("B1", 10)], "the twin: of two lots, one"


def staged(*needs: Need, pots: tuple[OnShelf, ...]) -> list[tuple[str | None, int]]:
    asked = tuple(StageNeed(need, "STEP", "Tidewall coating") for need in needs)
    signed = plan_stage(StagePlan("coat", ("STEP",), asked, pots), "JCAR", NOON, UTC)
    return [(act.source, (act.amount or 0) // ML) for act in signed.acts]


def test_a_signature_books_no_step_out_of_two_lots_and_says_the_way_out() -> None:
    with pytest.raises(Refused) as refused:
        staged(wants(40), pots=(pot("B1", 30, A), pot("B2", 25, B)))
    assert refused.value.code == "two_lots"
    assert refused.value.says == (
        "Tidewall coating: 40 ml needed from one lot, 30 ml in the fullest. Scan what came of one lot, or an "
        "owner says why two lots are right, on the check page. What a second lot put on the car already is "
        "scanned at a station and said with ALREADY: it is written down and flagged."
    )


def test_without_the_rule_a_signature_would_book_two_lots() -> None:
    pots = (pot("B1", 30, A), pot("B2", 25, B))
    assert staged(wants(40, one_lot=False), pots=pots) == [("B1", 30), ("B2", 10)]


def test_a_signature_refuses_another_lot_than_the_step_has() -> None:
    with pytest.raises(Refused, match="8 ml more needed from the lot that the step has, 3 ml of it left"):
        staged(wants(8, had=A), pots=(pot("B1", 3, A), pot("B2", 25, B)))


def test_a_signature_takes_the_lot_that_the_step_has() -> None:
    assert staged(wants(8, had=B), pots=(pot("B1", 30, A), pot("B2", 25, B))) == [("B2", 8)]


def test_two_needs_of_one_step_are_booked_from_one_lot() -> None:
    pots = (pot("B1", 10, A), pot("B2", 30, B))
    with pytest.raises(Refused, match="5 ml more needed from the lot that the step has, 0 ml of it left"):
        staged(wants(10), replace(wants(5), id="8"), pots=pots)
