"""Who gets which bottle, on small shelves."""

from datetime import UTC, date, datetime, timedelta

import pytest

from inventory.stock.rules.reserve import Need, OnShelf, Taken, reserve
from inventory.stock.rules.use_by import Dates, Life
from tests.world import ML, NOON


def shelf(code: str, content: int = 30, **facts: object) -> OnShelf:
    known: dict[str, object] = {"product": "TIDE", "kind": "coating", "lots": frozenset({"L1"}), **facts}
    return OnShelf(code=code, content=content * ML, **known)  # type: ignore[arg-type]


def need(id: str = "n1", amount: int = 20, day: int = 1, **facts: object) -> Need:
    starts = NOON + timedelta(days=day)
    known: dict[str, object] = {
        "job": f"J{day}", "starts_at": starts, "ends_at": starts + timedelta(hours=2),
        "job_starts_at": starts, "booked_at": NOON, "product": "TIDE", **facts,
    }  # fmt: skip
    return Need(id=id, amount=amount * ML, **known)  # type: ignore[arg-type]


def codes(*needs: Need, on: list[OnShelf]) -> list[tuple[str, str, int]]:
    taken = reserve(needs, on, UTC).taken
    return [(each.need, each.container, each.amount // ML) for each in taken]


def test_a_held_bottle_serves_nobody() -> None:
    assert reserve([need()], [shelf("KTRV", held="frozen")], UTC).short == {"n1": 20 * ML}


def test_a_bottle_that_dies_before_the_step_ends_serves_nobody() -> None:
    dead = shelf("KTRV", dates=Dates(expires_on=NOON.date()))
    assert reserve([need()], [dead], UTC).short == {"n1": 20 * ML}


def test_a_bottle_whose_day_is_only_an_estimate_still_serves() -> None:
    tired = shelf(
        "KTRV", sealed=False, dates=Dates(opened_at=NOON - timedelta(days=99), open=Life(9, "day", "shop"))
    )
    assert codes(need(), on=[tired]) == [("n1", "KTRV", 20)]


def test_a_mix_serves_only_a_step_that_wants_that_mix() -> None:
    mixed = shelf("KTRV", 110, parts=(1, 10))
    assert reserve([need(amount=10)], [mixed], UTC).short == {"n1": 10 * ML}
    assert codes(need(amount=10, parts=(1, 10)), on=[mixed]) == [("n1", "KTRV", 10)]


def test_what_is_missing_is_said_by_need() -> None:
    assert reserve([need(amount=50)], [shelf("KTRV")], UTC).short == {"n1": 20 * ML}


def test_first_expired_goes_first() -> None:
    late, early = Dates(expires_on=date(2027, 6, 30)), Dates(expires_on=date(2027, 1, 31))
    assert codes(need(), on=[shelf("LATE", dates=late), shelf("EARLY", dates=early)]) == [("n1", "EARLY", 20)]


def test_of_one_day_the_open_one_goes_before_the_sealed_one() -> None:
    assert codes(need(), on=[shelf("A-SEALED"), shelf("B-OPEN", sealed=False)]) == [("n1", "B-OPEN", 20)]


def test_the_earlier_job_takes_first_whoever_was_booked_or_asked_first() -> None:
    later, sooner = need("later", day=2), need("sooner", day=1)
    assert codes(later, sooner, on=[shelf("KTRV")]) == [("sooner", "KTRV", 20), ("later", "KTRV", 10)]


def test_of_two_jobs_that_start_together_the_one_booked_first_takes_first() -> None:
    second = need("second", job="JA", booked_at=NOON)
    first = need("first", job="JB", booked_at=NOON - timedelta(days=1))
    assert codes(second, first, on=[shelf("KTRV")])[0] == ("first", "KTRV", 20)


def test_a_named_product_is_served_before_a_kind_that_would_take_it_too() -> None:
    any_coating = need("a kind", product=None, kind="coating", job="J1")
    named = need("named", job="J1")
    assert codes(any_coating, named, on=[shelf("KTRV")])[0] == ("named", "KTRV", 20)


def test_a_kind_takes_any_product_of_it() -> None:
    other = shelf("KTRV", product="OTHER")
    assert codes(need(product=None, kind="coating"), on=[other]) == [("n1", "KTRV", 20)]


def test_a_step_that_opens_a_bottle_starts_its_open_life_for_the_later_ones() -> None:
    bottle = shelf("KTRV", 60, dates=Dates(open=Life(3, "day", "maker")))
    taken = reserve([need("first", day=1), need("later", day=9)], [bottle], UTC)
    assert taken.taken == (Taken("first", "KTRV", 20 * ML, opens=True),)
    assert taken.short == {"later": 20 * ML}


def test_one_lot_is_kept_where_it_is_enough_though_another_dies_first() -> None:
    on = [
        shelf("OLD", 10, lots=frozenset({"L1"}), dates=Dates(expires_on=date(2027, 1, 31))),
        shelf("NEW", 30, lots=frozenset({"L2"}), dates=Dates(expires_on=date(2027, 6, 30))),
    ]
    assert codes(need(one_lot=True), on=on) == [("n1", "NEW", 20)]
    assert codes(need(), on=on) == [("n1", "OLD", 10), ("n1", "NEW", 10)]


def test_where_no_lot_is_enough_the_fullest_one_gives_what_it_has() -> None:
    on = [shelf("OLD", 5, lots=frozenset({"L1"})), shelf("NEW", 12, lots=frozenset({"L2"}))]
    reserved = reserve([need(one_lot=True)], on, UTC)
    assert [taken.container for taken in reserved.taken] == ["NEW"]
    assert reserved.short == {"n1": 8 * ML}


@pytest.mark.parametrize(
    ("hour", "served", "because"),
    [
        (21, True, "the last day counts to its midnight"),
        (23, False, "a step over midnight ends after the day named"),
    ],
)
def test_a_step_must_end_within_the_day_named(hour: int, served: bool, because: str) -> None:
    starts = datetime(2026, 11, 26, hour, tzinfo=UTC)
    step = need(starts_at=starts, ends_at=starts + timedelta(hours=2))
    bottle = shelf("KTRV", dates=Dates(expires_on=date(2026, 11, 26)))
    assert bool(reserve([step], [bottle], UTC).taken) is served, because


def test_fifty_ml_of_any_polish_are_not_served_by_fifty_grams_of_another() -> None:
    paste = shelf("PASTE", 50, product="MARL", kind="polish", dimension="mass")
    milk = shelf("MILK", 50, product="OTHR", kind="polish", dimension="volume")
    any_polish = need(product=None, kind="polish", dimension="volume")
    assert codes(any_polish, on=[paste, milk]) == [("n1", "MILK", 20)]
    named = need(product="MARL", kind="", dimension="")
    assert codes(named, on=[paste, milk]) == [("n1", "PASTE", 20)], "a named product is measured as it is"
