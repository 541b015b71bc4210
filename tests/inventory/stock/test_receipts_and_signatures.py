"""Which order a receipt answers, and what a signature posts: pure rules."""

from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta

import pytest

from inventory.stock.rules.receipts import allocate, is_complete
from inventory.stock.rules.reserve import Need, OnShelf
from inventory.stock.rules.signing import StageNeed, StagePlan, plan_stage
from inventory.stock.rules.use_by import Dates

NOON = datetime(2026, 11, 25, 12, 0, tzinfo=UTC)


@dataclass(frozen=True)
class Waits:
    """A line that awaits packs."""

    order: str
    outstanding: int


OLD, NEW = Waits("old", 4), Waits("new", 10)


@pytest.mark.parametrize(
    ("packs", "first", "given", "because"),
    [
        (3, "", [(OLD, 3)], "the oldest order first"),
        (6, "", [(OLD, 4), (NEW, 2)], "the rest goes on the next"),
        (6, "new", [(NEW, 6)], "the order in hand comes before the oldest"),
        (20, "", [(OLD, 4), (NEW, 10)], "what nobody ordered goes on no line"),
        (0, "", [], "nothing came"),
    ],
)
def test_packs_go_on_the_lines_that_await_them(
    packs: int, first: str, given: list[tuple[Waits, int]], because: str
) -> None:
    assert allocate(packs, [OLD, NEW], first=first) == given, because


@pytest.mark.parametrize(
    ("packs", "received", "short", "complete", "because"),
    [
        (12, 10, False, False, "two are still owed"),
        (12, 12, False, True, "all came"),
        (12, 10, True, True, "the rest will not come"),
        (12, 13, False, True, "one more than ordered"),
    ],
)
def test_a_line_is_complete(packs: int, received: int, short: bool, complete: bool, because: str) -> None:
    assert is_complete(packs, received, short) is complete, because


def need(amount: int, **more: object) -> StageNeed:
    wants = Need("7", "JCAR", NOON, NOON + timedelta(hours=1), NOON, NOON, amount, product="XCOMP")
    return StageNeed(wants, "STEP", "Marl cutting compound", **more)  # type: ignore[arg-type]


def pot(code: str, content: int, **more: object) -> OnShelf:
    return OnShelf(code, "XCOMP", "compound", content, **{"sealed": False, **more})  # type: ignore[arg-type]


def signed(*pots: OnShelf, wants: StageNeed) -> list[tuple[str | None, int | None]]:
    plan = StagePlan("correct", ("STEP",), (wants,), pots)
    return [(act.source, act.amount) for act in plan_stage(plan, "JCAR", NOON, UTC).acts]


def test_a_signature_posts_nothing_of_a_traced_product() -> None:
    assert signed(pot("B1", 100), wants=need(60, traced=True)) == []
    assert signed(pot("B1", 100), wants=need(60, traced=False)) == [("B1", 60)]


def test_a_signature_opens_no_sealed_bottle_and_takes_from_none_that_is_held() -> None:
    assert signed(pot("B1", 100, sealed=True), pot("B2", 100, held="frozen"), wants=need(60)) == []


def test_the_pot_that_dies_first_gives_first() -> None:
    soon = pot("B2", 40, dates=Dates(expires_on=date(2026, 12, 1)))
    assert signed(pot("B1", 100), soon, wants=need(60)) == [("B2", 40), ("B1", 20)]


def test_a_dead_pot_gives_nothing() -> None:
    dead = pot("B2", 40, dates=Dates(expires_on=date(2026, 11, 24)))
    assert signed(pot("B1", 100), dead, wants=need(60)) == [("B1", 60)]


def test_a_mix_gives_its_share_of_concentrate() -> None:
    assert signed(pot("B1", 1100, parts=(1, 10)), wants=need(50)) == []
    diluted = StageNeed(
        Need("7", "JCAR", NOON, NOON, NOON, NOON, 50, product="XCOMP", parts=(1, 10)), "STEP", "Marl"
    )
    assert signed(pot("B1", 1100, parts=(1, 10)), wants=diluted) == [("B1", 550)]


def test_what_is_not_there_is_named_and_stays_open() -> None:
    plan = StagePlan("correct", ("STEP",), (need(60),), (pot("B1", 20),))
    done = plan_stage(plan, "JCAR", NOON, UTC)
    assert ([act.amount for act in done.acts], done.settled, done.missing) == (
        [20],
        (),
        ("Marl cutting compound",),
    )
