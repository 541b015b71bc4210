"""Each guard objects where it should, and without it nothing would: pure, no database."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

import pytest

from inventory.stock.conversation import Facts, State, hear, read_line
from inventory.stock.conversation import guards as g
from inventory.stock.conversation.facts import Bottle, Found, JobFacts, PersonFacts, ProductFacts
from inventory.stock.conversation.guards import USING, Guard, Taking, first_objection
from inventory.stock.rules.reserve import Need, OnShelf
from inventory.stock.rules.use_by import Dates, Life

NOON = datetime(2026, 11, 25, 12, 0, tzinfo=UTC)
COAT = ProductFacts("XCOAT", "Tidewall coating", "coating", "volume")
SHELF = OnShelf("BGOODAAA", "XCOAT", "coating", 30_000, lots=frozenset({"A"}), sealed=False)
GOOD = Bottle(SHELF, COAT, "open", 30_000, place_name="Shelf 3")
CAR = JobFacts("JCAR", "Grey estate", "Coating", "open", NOON, NOON)
EARLIER = Need("1", "JOTHER", NOON, NOON, NOON - timedelta(days=1), NOON, 25_000, product="XCOAT")
FACTS = Facts(at=NOON, bottles={GOOD.code: GOOD}, jobs={"JCAR": CAR}, booked={"JOTHER": "Red coupe"})
NO_SHEET = Found("no_sheet", "stop", "No sheet.", about=("XCOAT",))
LONG_OPEN = Dates(opened_at=NOON - timedelta(days=91), open=Life(90, "day", "maker"))
LONG_GUESSED = replace(LONG_OPEN, open=Life(90, "day", "shop"))


def with_shelf(**changes: object) -> Bottle:
    return replace(GOOD, shelf=replace(SHELF, **changes))  # type: ignore[arg-type]


CASES = [
    (g.gone, replace(GOOD, state="gone"), FACTS, "gone"),
    (g.nothing_in_it, replace(GOOD, product=None), FACTS, "unfilled"),
    (g.held, with_shelf(held="frozen"), FACTS, "held"),
    (g.out_of_date, with_shelf(dates=LONG_OPEN), FACTS, "out_of_date"),
    (g.out_of_date, with_shelf(dates=LONG_GUESSED), FACTS, "past_estimate"),
    (g.the_check, GOOD, replace(FACTS, findings=(NO_SHEET,)), "check.no_sheet"),
    (g.unlabelled, replace(GOOD, refillable=True, filled_at=NOON), FACTS, "unlabelled"),
    (g.other_lot, GOOD, replace(FACTS, step_had={("STEP", "XCOAT"): frozenset({"B"})}), "other_lot"),
    (g.too_little, with_shelf(content=5_000), FACTS, "too_little"),
    (g.starves, GOOD, replace(FACTS, needs=(EARLIER,)), "starves"),
]  # fmt: skip


@pytest.mark.parametrize(("guard", "bottle", "facts", "code"), CASES)
def test_a_guard_objects_and_without_it_nothing_would(
    guard: Guard, bottle: Bottle, facts: Facts, code: str
) -> None:
    taking = Taking(bottle, 10_000, CAR, "STEP")
    facts = replace(facts, bottles={bottle.code: bottle})
    found = first_objection(taking, facts, (), USING)
    assert found is not None
    assert found.code == code
    others = [each for each in USING if each is not guard]
    assert first_objection(taking, facts, (), others) is None


def test_nothing_objects_to_a_good_bottle() -> None:
    assert first_objection(Taking(GOOD, 10_000, CAR, "STEP"), FACTS, (), USING) is None


def test_a_yes_lifts_an_ask_and_no_yes_lifts_a_stop() -> None:
    guessed, sure = with_shelf(dates=LONG_GUESSED), with_shelf(dates=LONG_OPEN)
    assert first_objection(Taking(guessed, 1), FACTS, ("past_estimate",), USING) is None
    found = first_objection(Taking(sure, 1), FACTS, ("past_estimate", "out_of_date"), USING)
    assert found is not None
    assert found.grade == "stop"


@pytest.mark.parametrize(
    ("printed", "objects", "because"),
    [
        (date(2026, 11, 24), True, "yesterday was its last day"),
        (date(2026, 11, 25), False, "the day named is usable"),
    ],
)
def test_a_printed_date_is_the_last_usable_day(printed: date, objects: bool, because: str) -> None:
    found = g.out_of_date(Taking(with_shelf(dates=Dates(expires_on=printed)), 1), FACTS)
    assert (found is not None) is objects, because


def test_a_protective_items_best_before_stops_where_a_polishs_asks() -> None:
    over = Dates(best_before_on=date(2026, 11, 1))
    asks = g.out_of_date(Taking(with_shelf(dates=over), 1), FACTS)
    stops = g.out_of_date(Taking(with_shelf(dates=replace(over, guards=True)), 1), FACTS)
    assert (asks and asks.grade, stops and stops.grade) == ("ask", "stop")


def test_the_bottle_named_instead_is_the_one_that_dies_first() -> None:
    dead = with_shelf(code="BDEADAAA", dates=LONG_OPEN)
    soon = with_shelf(code="BSOONAAA", dates=Dates(expires_on=date(2026, 12, 1)))
    late = with_shelf(code="BLATEAAA", dates=Dates(expires_on=date(2027, 12, 1)))
    facts = replace(FACTS, bottles={each.code: each for each in (dead, late, soon)})
    found = g.out_of_date(Taking(dead, 1), facts)
    assert found is not None
    assert found.next == "Empty it, or take BSOO from Shelf 3."


def test_the_same_three_values_give_the_same_three_back() -> None:
    facts = replace(FACTS, people={"HTOM": PersonFacts("HTOM", "Tomas")})
    state = State(who="HTOM", bottle=GOOD.code)
    said = read_line("10 ml", today=NOON.date())
    first, second = hear(state, said, facts), hear(state, said, facts)
    assert first == second
    assert (state.bottle, first.answer.says) == (GOOD.code, "Tidewall coating BGOO: took 10 ml, 20 ml left.")
