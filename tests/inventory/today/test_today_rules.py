"""What the first page says of a dying bottle and of a car's time."""

from datetime import UTC, date, datetime

import pytest

from inventory.today.rules import Dying, Hand, fate, gravest_first, stands_by, when, worth
from tests.world import ML, TODAY


def coating(**changes: object) -> Dying:
    known: dict[str, object] = {
        "code": "BKTRVNXH", "product": "Tidewall coating", "pack": "30 ml bottle", "dimension": "volume",
        "content": 12 * ML, "use_by_on": date(2026, 11, 27), "wanted": 0, "cars": 0, "worth_minor": 2200,
    }  # fmt: skip
    return Dying(**(known | changes))  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("bottle", "says", "because"),
    [
        (
            coating(),
            "12 ml left. No car before Friday ends wants it: use it today or lose €22.00.",
            "the whole content is lost",
        ),
        (
            coating(wanted=12 * ML, cars=2),
            "12 ml left, two booked cars will finish it.",
            "exactly enough is enough",
        ),
        (
            coating(wanted=9 * ML, cars=1),
            "12 ml left. One booked car takes 9 ml, 3 ml stays over: use it or lose €5.50.",
            "a quarter stays over, a quarter of the worth is lost",
        ),
        (
            coating(worth_minor=None, use_by_on=TODAY),
            "12 ml left. No car before today ends wants it: use it today or empty it.",
            "without a price no money is invented",
        ),
        (
            coating(unlike=3, mix="1:4"),
            "12 ml left. Three booked cars want it, but not at 1:4: plan their steps at 1:4, or empty it.",
            "what cars want in another mix is not unwanted",
        ),
        (
            coating(unlike=1, mix="1:4"),
            "12 ml left. One booked car wants it, but not at 1:4: plan its step at 1:4, or empty it.",
            "one car",
        ),
        (
            coating(wanted=12 * ML, cars=1, unlike=2, mix="1:4"),
            "12 ml left, one booked car will finish it.",
            "who takes it as it is comes first",
        ),
        (
            coating(guards=True, use_by_on=date(2026, 12, 5)),
            "People lean on it: have another here before 5 December ends.",
            "rescue stock is never used up to save money",
        ),
    ],
)
def test_a_dying_bottle_says_what_becomes_of_it(bottle, says, because):
    assert fate(bottle, TODAY, "EUR", "metric") == says, because


def test_a_half_empty_bottle_is_worth_half_its_pack():
    assert worth(15 * ML, 30 * ML, 5500) == 2750


def test_a_bottle_without_a_price_is_worth_nothing_known():
    assert worth(15 * ML, 30 * ML, None) is None


def test_what_stops_comes_before_what_asks_before_what_is_only_told():
    hands = [Hand(grade, grade, "See it", "shelf:list") for grade in ("tell", "ask", "stop", "ask")]

    assert [hand.grade for hand in gravest_first(hands)] == ["stop", "ask", "ask", "tell"]


@pytest.mark.parametrize(
    ("starts_at", "says"),
    [
        (datetime(2026, 11, 25, 8, 0, tzinfo=UTC), "08:00"),
        (datetime(2026, 11, 26, 8, 30, tzinfo=UTC), "Tomorrow 08:30"),
        (datetime(2026, 11, 27, 9, 0, tzinfo=UTC), "Friday 09:00"),
        (datetime(2026, 11, 23, 9, 0, tzinfo=UTC), "since Monday 09:00"),
    ],
)
def test_a_car_is_timed_from_today(starts_at, says):
    assert when(starts_at, TODAY) == says


BAY = frozenset({"PBAYTWOX"})


@pytest.mark.parametrize(
    ("place", "bays", "other", "near", "because"),
    [
        ("PBAYTWOX", BAY, ("PBAYTWOX", BAY), True, "beside it"),
        ("PBAYTWOX", BAY, ("PBOXTWOX", BAY | {"PBOXTWOX"}), True, "in a box in the same bay"),
        ("PBOXTWOX", BAY, ("PCABTWOX", BAY | {"PCABTWOX"}), True, "both in things in one bay"),
        ("PBAYTWOX", BAY, ("PSTRKLNB", frozenset({"PSTRKLNB"})), False, "in the store"),
        ("PBAYTWOX", BAY, ("PBAYONEX", frozenset({"PBAYONEX", "PHALLKLN"})), False, "in the next bay"),
        ("PSTRKLNB", frozenset(), ("PSTRKLNB", frozenset({"PSTRKLNB"})), True, "both in the store"),
        ("", frozenset(), ("", frozenset()), False, "two that stand nowhere are near nothing"),
    ],
)
def test_what_is_in_reach_of_a_place(place, bays, other, near, because):
    assert stands_by(place, bays, [other]) is near, because
