"""What a row of the shelf says of a bottle."""

from datetime import date, timedelta

import pytest

from inventory.shelf.rules import cap_style, is_low, life_left, mix, pack, time_left
from tests.world import NOON, TODAY

YESTERDAY, TOMORROW = NOON - timedelta(days=1), NOON + timedelta(days=1)


@pytest.mark.parametrize(
    ("state", "held", "use_by_at", "style", "because"),
    [
        ("open", "frozen", YESTERDAY, "held", "a held bottle says so before it says it is out of date"),
        ("sealed", "", YESTERDAY, "out", "a date that is over counts, sealed or not"),
        ("sealed", "", NOON, "out", "the end of the last day is no longer that day"),
        ("sealed", "", TOMORROW, "sealed", "it is in date"),
        ("open", "", None, "open", "without a date nothing ends"),
        ("empty", "", None, "none", "an empty bottle has no cap to read"),
    ],
)
def test_the_cap_shows_the_gravest_of_what_is_so(state, held, use_by_at, style, because):
    assert cap_style(state, held, use_by_at, NOON) == style, because


@pytest.mark.parametrize(
    ("state", "held", "on", "says", "because"),
    [
        ("open", "gelled", TODAY, "held: gelled", "why it is held matters more than its date"),
        ("empty", "", TODAY, "empty", "there is nothing to lose"),
        ("open", "", None, "no date known", "no date is not a long date"),
        ("open", "", date(2026, 11, 24), "out of date: empty it", "yesterday was its last day"),
        ("open", "", date(2026, 11, 25), "today", "the last day is inclusive"),
        ("open", "", date(2026, 11, 26), "tomorrow", "as people say it"),
        ("open", "", date(2026, 12, 3), "8 days", "as in the sketch"),
        ("sealed", "", date(2027, 6, 30), "sealed", "a sealed bottle with months to go needs no number"),
        ("open", "", date(2028, 11, 14), "24 months", "two years off, days are noise"),
        ("sealed", "", date(2026, 12, 20), "25 days", "a sealed bottle that dies this month does"),
    ],
)
def test_the_time_left_is_said_in_words(state, held, on, says, because):
    ends = None if on is None else NOON.replace(hour=0) + timedelta(days=(on - TODAY).days + 1)

    assert time_left(state, held, on, ends, NOON, TODAY) == says, because


def test_a_ring_half_gone_is_half_a_ring():
    assert life_left(YESTERDAY, TOMORROW, NOON) == 0.5


def test_a_ring_is_whole_where_no_opening_is_known():
    assert life_left(None, TOMORROW, NOON) == 1.0


def test_the_last_fifth_of_the_only_bottle_is_low():
    assert is_low(200, 1000, others=0)


def test_an_empty_bottle_beside_a_full_one_is_not_low():
    assert not is_low(200, 1000, others=1)


def test_a_mix_is_written_as_the_trade_writes_it_and_a_neat_product_not_at_all():
    assert mix(1, 10) == "1:10"
    assert mix(1, 0) == ""


def test_a_pack_is_said_as_people_say_it():
    assert pack("30 ml", "bottle", "volume") == "30 ml bottle"
    assert pack("50 pieces", "box", "pieces") == "box of 50 pieces"
