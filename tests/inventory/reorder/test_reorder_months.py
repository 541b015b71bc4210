"""Which month may be asked for, and which one is in view. Today is Wednesday 25 November 2026."""

from datetime import date

import pytest

from inventory.reorder import queries
from inventory.reorder.rules import MonthIsOver
from inventory.reorder.rules.months import NoMonth, month_called
from tests.world import TODAY, larkmoor


@pytest.mark.django_db
def test_a_month_that_is_over_is_refused():
    with pytest.raises(MonthIsOver, match=r"^October 2026 ended before 25 November 2026\. Ask for 2026-11"):
        queries.report(larkmoor().shop, date(2026, 10, 1), TODAY)


@pytest.mark.parametrize(
    ("text", "says", "because"),
    [
        ("2026-13", "“2026-13” is no month: write it as YYYY-MM, 2026-11 for this one.", "13 months"),
        ("2026-1", "“2026-1” is no month: write it as YYYY-MM, 2026-11 for this one.", "one digit"),
        ("12/2026", "“12/2026” is no month: write it as YYYY-MM, 2026-11 for this one.", "other order"),
        ("0000-05", "“0000-05” is no month: write it as YYYY-MM, 2026-11 for this one.", "no year 0"),
        ("२०२६-११", "“२०२६-११” is no month: write it as YYYY-MM, 2026-11 for this one.", "other digits"),
        (
            "2027-12",
            "December 2027 is more than a year ahead. Ask for 2027-11 or an earlier month.",
            "nobody knows the use of that month",
        ),
    ],
)
def test_what_is_no_month_is_refused_with_one_to_ask_for(text, says, because):
    with pytest.raises(NoMonth) as refused:
        month_called(text, TODAY)
    assert str(refused.value) == says, because


def test_the_same_month_of_next_year_is_the_last_to_ask_for():
    assert month_called("2027-11", TODAY) == date(2027, 11, 1)


@pytest.mark.parametrize(
    ("on", "month", "because"),
    [
        (date(2026, 11, 23), date(2026, 11, 1), "the 30th is within a week"),
        (date(2026, 11, 24), date(2026, 12, 1), "a week later it is December"),
        (date(2026, 12, 28), date(2027, 1, 1), "over the year's end"),
    ],
)
def test_in_its_last_week_a_month_gives_way_to_the_next(on, month, because):
    assert queries.month_in_view(on) == month, because
