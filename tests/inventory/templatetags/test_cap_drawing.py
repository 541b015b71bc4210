"""The cap says the date as a pen writes it, and how much open life is left."""

from datetime import date

import pytest

from inventory.templatetags.cap_drawing import draw_cap

TODAY = date(2026, 11, 25)


def test_a_cap_without_a_form_is_refused() -> None:
    with pytest.raises(
        ValueError, match=r"A cap is one of open, sealed, out, held, none; “empty” has no form\."
    ):
        draw_cap("empty", TODAY, TODAY)


def test_a_near_date_is_written_as_day_and_month() -> None:
    cap = draw_cap("open", date(2026, 11, 26), TODAY, 0.5)
    assert [line.text for line in cap.lines] == ["26", "NOV"]


def test_a_date_a_year_off_is_written_as_month_and_year() -> None:
    cap = draw_cap("sealed", date(2028, 6, 30), TODAY)
    assert [line.text for line in cap.lines] == ["JUN", "2028"]


def test_a_held_bottle_shows_the_word_and_not_a_date() -> None:
    cap = draw_cap("held", date(2026, 12, 1), TODAY)
    assert [line.text for line in cap.lines] == ["HELD"]


@pytest.mark.parametrize(
    ("left", "arc", "because"),
    [
        (1.0, 100, "just opened"),
        (0.75, 75, "a quarter is gone"),
        (0.001, 2, "what is left at all can be seen"),
        (0.0, 0, "nothing is left"),
        (-0.4, 0, "past its end"),
        (1.7, 100, "never more than the whole ring"),
    ],
)
def test_the_ring_is_the_open_life_that_is_left(left: float, arc: int, because: str) -> None:
    assert draw_cap("open", TODAY, TODAY, left).arc == arc, because


def test_the_bar_cuts_the_rim_and_never_the_date() -> None:
    # Two pieces at 45 degrees, from 31 to 49 of a radius of 50; the date stays within 29.
    assert draw_cap("out", TODAY, TODAY).cut == "M71.9 28.1L84.6 15.4M28.1 71.9L15.4 84.6"


@pytest.mark.parametrize(
    ("style", "use_by", "says"),
    [
        ("open", date(2026, 11, 26), "Open, use by 26 November 2026"),
        ("sealed", date(2027, 6, 30), "Sealed, use by 30 June 2027"),
        ("out", date(2026, 11, 14), "Out of date, use by 14 November 2026"),
        ("held", None, "Held, no use-by date known"),
        ("none", None, "No use-by date known"),
    ],
)
def test_the_cap_says_its_date_in_words_too(style: str, use_by: date | None, says: str) -> None:
    assert draw_cap(style, use_by, TODAY).says == says
