"""Heat abuse: what it takes, and that it never gives."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from safety.ageing import (
    AgeingError,
    Spell,
    accelerated_days,
    heat,
    pace,
    penalty_days,
    use_by_after,
    used_days,
)

TODAY, END = date(2026, 11, 29), date(2027, 3, 31)


def test_a_spell_of_less_than_no_days_is_refused() -> None:
    with pytest.raises(AgeingError) as refused:
        Spell(-1, 40)
    assert str(refused.value) == "days: 0 or more were expected, not -1."


def test_two_years_at_25_degrees_are_91_25_days_at_55() -> None:
    """ASTM F1980's accelerated ageing time as worked in public guides: 730 d, Q10 = 2."""
    assert accelerated_days(730, 55, 25) == pytest.approx(91.25)


@pytest.mark.parametrize(("at_c", "expected"), [(25, 1), (35, 2), (45, 4), (55, 8), (30, 1.41421), (15, 0.5)])
def test_ten_kelvin_double_the_pace(at_c: float, expected: float) -> None:
    """2^((T − 25)/10) by hand."""
    assert pace(at_c, 25) == pytest.approx(expected, abs=1e-5)


def test_a_week_in_a_hot_van_uses_28_days_and_takes_21_off_the_date() -> None:
    """By hand: 7 days at 45 °C against 25 °C count four times."""
    assert used_days([Spell(7, 45)], 25) == pytest.approx(28)
    assert penalty_days([Spell(7, 45)], 25) == pytest.approx(21)
    assert use_by_after(END, [Spell(7, 45)], 25) == date(2027, 3, 10)


def test_cold_never_lengthens_a_date_nor_pays_for_heat() -> None:
    assert use_by_after(END, [Spell(300, 5)], 25) == END
    assert penalty_days([Spell(7, 45), Spell(300, 5)], 25) == pytest.approx(21)


def test_a_day_begun_counts_whole_and_none_begun_counts_nothing() -> None:
    """By hand: 1 day at 35 °C takes 1; 1.1 days take 1.1, so 2."""
    assert use_by_after(END, [Spell(1, 35)], 25) == date(2027, 3, 30)
    assert use_by_after(END, [Spell(1.1, 35)], 25) == date(2027, 3, 29)
    assert use_by_after(END, [Spell(9, 25)], 25) == END


def test_what_stood_warm_says_its_new_date_and_the_numbers() -> None:
    [told] = heat("hardener", END, [Spell(7, 45), Spell(20, 20)], 25, TODAY)
    assert (told.code, told.grade) == ("ageing.heat", "tell")
    assert told.says == "hardener stood warm: its 2027-03-31 counts as 2027-03-10."
    assert told.because == "7 days above 25 °C, at most 45 °C, take 21 more off its life."
    assert told.do == "Use it by 2027-03-10 and keep it at 25 °C or cooler."


def test_a_date_that_heat_brought_before_today_is_asked_and_the_day_itself_is_not() -> None:
    [told] = heat("hardener", END, [Spell(7, 45)], 25, date(2027, 3, 11))
    assert (told.grade, told.do) == ("ask", "Set it aside; the maker alone can say that it is still good.")
    [told] = heat("hardener", END, [Spell(7, 45)], 25, date(2027, 3, 10))
    assert told.grade == "tell"
    assert heat("hardener", END, [Spell(300, 20)], 25, TODAY) == ()


def test_heat_says_nothing_of_a_date_that_is_over_by_itself() -> None:
    assert heat("hardener", END, [Spell(7, 45)], 25, date(2027, 4, 1)) == ()
    assert heat("hardener", END, [Spell(7, 45)], 25, END) != ()


def test_heat_beyond_every_calendar_ends_at_its_first_day() -> None:
    assert use_by_after(END, [Spell(1e6, 100)], 25) == date.min


SPELLS = st.lists(st.builds(Spell, st.floats(0, 1000), st.floats(-40, 120)), max_size=6)


@given(SPELLS, st.floats(-10, 40))
def test_no_spell_ever_lengthens_a_date(spells: list[Spell], reference_c: float) -> None:
    assert use_by_after(END, spells, reference_c) <= END
    assert used_days(spells, reference_c) >= sum(one.days for one in spells) * (1 - 1e-9)


@given(SPELLS, st.builds(Spell, st.floats(0, 1000), st.floats(-40, 120)))
def test_one_more_spell_never_gives_a_day_back(spells: list[Spell], more: Spell) -> None:
    assert use_by_after(END, [*spells, more], 25) <= use_by_after(END, spells, 25)
