"""Dates as people type them off a pack."""

from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inventory.codes import CodeError, Meaning, read_printed_date

unhurried = settings(deadline=None)  # a loaded machine is slow, not wrong


@pytest.mark.parametrize(
    ("text", "because"),
    [
        ("", "nothing"),
        ("2027", "a year alone"),
        ("L27093", "a batch with a day number"),
        ("27093", "a day number"),
        ("31/02/2027", "no such day"),
        ("2027-13-01", "no such month"),
        ("13/13/27", "no such month either way"),
        ("Foo 2027", "no such month's name"),
        ("٣١/١٢/٢٧", "digits of another script"),
        ("soon", "no date"),
    ],
)
def test_what_is_no_date_is_refused_with_the_way_out(text: str, because: str) -> None:
    with pytest.raises(CodeError, match="Type it as 2027-03-31"):
        read_printed_date(text, meaning="use_by")


def test_a_date_that_says_another_kind_than_was_chosen_is_refused() -> None:
    with pytest.raises(CodeError, match="says made, and use by was chosen"):
        read_printed_date("MFG 03/2025", meaning="use_by")


def test_an_order_that_does_not_exist_is_refused() -> None:
    with pytest.raises(CodeError, match="name dmy, mdy, ymd"):
        read_printed_date("2027-03-31", meaning="use_by", order="ydm")


@pytest.mark.parametrize(
    ("text", "readings"),
    [
        ("03/04/27", [date(2027, 4, 3), date(2027, 3, 4)]),
        ("03.04.2027", [date(2027, 4, 3), date(2027, 3, 4)]),
        ("250327", [date(2027, 3, 25), date(2025, 3, 27)]),  # written together, the year may come first
    ],
)
def test_two_readings_are_asked_with_both(text: str, readings: list[date]) -> None:
    found = read_printed_date(text, meaning="use_by")
    assert (found.date, list(found.readings)) == (None, readings)
    assert "Which is it?" in found.asks[0]


@pytest.mark.parametrize(
    ("order", "day"),
    [("dmy", date(2027, 4, 3)), ("mdy", date(2027, 3, 4)), ("ymd", date(2003, 4, 27))],
)
def test_the_shops_order_settles_it(order: str, day: date) -> None:
    found = read_printed_date("03/04/27", meaning="use_by", order=order)
    assert (found.date, found.asks) == (day, ())


@pytest.mark.parametrize(
    ("text", "day"),
    [
        ("2027-03-31", date(2027, 3, 31)),
        ("2027/3/31", date(2027, 3, 31)),
        ("20270331", date(2027, 3, 31)),
        ("31/03/27", date(2027, 3, 31)),
        ("03/31/27", date(2027, 3, 31)),
        ("31.12.2027", date(2027, 12, 31)),
        ("04/04/27", date(2027, 4, 4)),
        ("27/04/03", date(2027, 4, 3)),  # no bottle on a shelf is from 2003
        ("EXP 31/03/27", date(2027, 3, 31)),
        ("EXP: 31/03/27", date(2027, 3, 31)),
        ("31 Mar 2027", date(2027, 3, 31)),
        ("31MAR27", date(2027, 3, 31)),
        ("March 31, 2027", date(2027, 3, 31)),
    ],
)
def test_one_reading_is_taken(text: str, day: date) -> None:
    found = read_printed_date(text, meaning="use_by")
    assert (found.date, found.month_only, found.asks) == (day, False, ())
    assert found.says == f"use by {day}"


@pytest.mark.parametrize(
    "text", ["03/2027", "03/27", "0327", "2027-03", "27/03", "Mar 2027", "MAR27", "exp 03.2027"]
)
def test_a_month_alone_is_good_to_its_last_day(text: str) -> None:
    found = read_printed_date(text, meaning="use_by")
    assert (found.date, found.month_only) == (date(2027, 3, 31), True)


@pytest.mark.parametrize(
    ("text", "last"),
    [("02/2027", date(2027, 2, 28)), ("02/2028", date(2028, 2, 29)), ("2027-04", date(2027, 4, 30))],
)
def test_the_last_day_is_the_calendars(text: str, last: date) -> None:
    assert read_printed_date(text, meaning="best_before").date == last


def test_a_made_month_counts_from_its_first_day() -> None:
    found = read_printed_date("MFG 0325", meaning="made")
    assert (found.meaning, found.date, found.month_only) == (Meaning.MADE, date(2025, 3, 1), True)
    assert found.says == "made in 03/2025"


def test_a_month_and_a_year_up_to_12_are_asked() -> None:
    found = read_printed_date("11/12", meaning="made")
    assert found.date is None
    assert found.readings == (date(2012, 11, 1), date(2011, 12, 1))
    assert found.says == found.asks[0]


def test_six_digits_that_may_be_a_month_or_a_day_are_asked() -> None:
    found = read_printed_date("032027", meaning="use_by")
    assert found.readings == (date(2027, 3, 20), date(2027, 3, 31))


@unhurried
@given(st.dates(date(2015, 1, 1), date(2099, 12, 31)), st.sampled_from(list(Meaning)))
def test_every_iso_day_comes_back(day: date, meaning: Meaning) -> None:
    assert read_printed_date(day.isoformat(), meaning=meaning).date == day


def date_or_refusal(text: str) -> object:
    try:
        return read_printed_date(text, meaning="made")
    except CodeError as refusal:
        return str(refusal)


@unhurried
@given(st.one_of(st.text(max_size=30), st.text("0123456789/-. marjnexp", max_size=14)))
def test_no_text_raises_anything_but_a_refusal(text: str) -> None:
    answer = date_or_refusal(text)
    assert answer.endswith(".") if isinstance(answer, str) else answer
