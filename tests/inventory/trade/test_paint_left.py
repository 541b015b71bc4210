"""What a cut takes, what visits took, what is left: figures of trade pages (no authority), sums by hand."""

from datetime import UTC, datetime, timedelta

import pytest

from inventory.trade.paint import (
    Cut,
    Floor,
    Measured,
    Panel,
    PanelLeft,
    Reading,
    Removal,
    budget,
    measured,
    planned_removal,
    usual_cuts,
)
from inventory.trade.reading import header

BONNET = Panel("panel1", "bonnet", "steel", "clear_coat")
FIRST = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)
COMPOUND = Cut("cut", None, "two_step", 2, "Rask compound", "wool pad")


def at(day: int, when: str, um: int | None, film: str = "whole", hour: int = 0) -> Reading:
    taken = FIRST + timedelta(days=day, hours=hour)
    return Reading("panel1", "bonnet", taken, when, um, film, um is not None)


def left(*readings: Reading, cuts: tuple[Cut, ...] = ()) -> PanelLeft:
    [panel] = budget([BONNET], readings, cuts).panels
    return panel


def own(*ums: int, passes: int = 2, pad: str = "wool pad") -> list[Measured]:
    return [Measured("Rask compound", pad, passes, um) for um in ums]


@pytest.mark.parametrize(
    ("grade", "low", "mid", "high", "mark"),
    [
        ("finish", 0, 1, 1, "from memory"),
        ("one_step", 1, 2, 2, "trade pages, no authority"),
        ("two_step", 3, 4, 5, "trade pages, no authority"),
        ("three_step", 5, 7, 8, "trade pages, no authority"),
        ("sanding", 10, 15, 20, "trade pages, no authority"),
    ],
)
def test_a_cut_takes_what_trade_pages_say_and_its_cautious_end_counts(
    grade: str, low: int, mid: int, high: int, mark: str
) -> None:
    """One step 1-2 µm, two 3-5, three 5-8 and more, wet sanding 10-20; finishing from memory."""
    cut = Cut("cut", None, grade, 1, "Rask compound", "wool pad")
    assert planned_removal(cut) == Removal(low, mid, high, counted=high)
    assert usual_cuts()[grade].mark == mark


def test_a_grade_that_the_table_does_not_have_is_refused() -> None:
    with pytest.raises(KeyError):
        planned_removal(Cut("cut", None, "brutal", 1, "Rask compound", "wool pad"))


def test_the_table_says_where_its_figures_come_from() -> None:
    assert any(line.startswith("source: public trade pages") for line in header("cuts"))


@pytest.mark.parametrize(
    ("history", "expected", "because"),
    [
        (own(2, 9, 3), Removal(2, 3, 9, counted=3, measurements=3), "the median of three"),
        (own(2, 3, 4, 6), Removal(2, 4, 6, counted=4, measurements=4), "3.5 is rounded up"),
        (own(2, 3), Removal(3, 4, 5, counted=5), "two are too few"),
        (own(2, 3) + own(2, passes=3), Removal(3, 4, 5, counted=5), "other passes are another cut"),
        (own(2, 3) + own(2, pad="foam pad"), Removal(3, 4, 5, counted=5), "so is another pad"),
    ],
)
def test_from_three_measurements_on_the_shop_knows_better(
    history: list[Measured], expected: Removal, because: str
) -> None:
    assert planned_removal(COMPOUND, history) == expected, because


def test_the_shops_own_median_decides_whether_a_cut_goes_through_the_floor() -> None:
    """103 − 3 is the floor of 100 µm, where the trade's 5 would go through it."""
    floor = Floor(whole_um=100)
    assert budget([BONNET], [at(0, "before", 103)], [COMPOUND], floor, own(3, 3, 2)).findings == ()
    [found] = budget([BONNET], [at(0, "before", 102)], [COMPOUND], floor, own(3, 3, 2)).findings
    assert found.because == (
        "The floor is 100 µm of whole film, 40 µm of clear coat. "
        "What the cut takes is the shop's own median of 3 measurements."
    )


def test_before_and_after_of_a_single_cut_are_a_measurement() -> None:
    readings = [at(0, "before", 112), at(0, "after", 109, hour=5)]
    assert measured([COMPOUND], readings) == (Measured("Rask compound", "wool pad", 2, 3),)


@pytest.mark.parametrize(
    ("cuts", "readings", "because"),
    [
        ([COMPOUND, COMPOUND], [at(0, "before", 112), at(1, "after", 109)], "of two cuts nobody knows which"),
        ([COMPOUND], [at(0, "before", 112)], "nothing was read after"),
        ([COMPOUND], [at(0, "before", 112), at(1, "after", 113)], "a gain is the gauge's own error"),
        ([COMPOUND], [at(0, "before", 112), at(1, "after", 45, "clear")], "one film before, another after"),
        ([COMPOUND], [at(0, "before", None), at(1, "after", None)], "not readable"),
        ([], [at(0, "before", 112), at(1, "after", 109)], "nothing was cut"),
    ],
)
def test_what_cannot_be_told_apart_is_no_measurement(
    cuts: list[Cut], readings: list[Reading], because: str
) -> None:
    assert measured(cuts, readings) == (), because


def test_what_all_visits_took_is_summed_over_the_cars_life() -> None:
    """120 − 116 and 115 − 112 µm; what went between visits no gauge of this shop saw."""
    panel = left(at(0, "before", 120), at(1, "after", 116), at(200, "before", 115), at(201, "after", 112))
    assert panel.removed_um == 7


def test_a_visit_that_gained_gives_nothing_back() -> None:
    panel = left(at(0, "before", 120), at(1, "after", 116), at(200, "before", 116), at(201, "after", 118))
    assert panel.removed_um == 4


def test_the_life_total_counts_towards_the_next_cut() -> None:
    visits = (at(0, "before", 120), at(1, "after", 112))
    [found] = budget([BONNET], visits, [COMPOUND]).findings
    assert found.says == "More than 12.7 µm would be gone: bonnet 8 µm gone so far, 5 µm planned."
    assert budget([BONNET], (at(0, "before", 120), at(1, "after", 113)), [COMPOUND]).findings == ()


def test_the_last_reading_counts_after_the_work_rather_than_before() -> None:
    film = left(at(0, "before", 120), at(0, "after", 116)).tightest
    assert film is not None
    assert film.last_um == 116


def test_of_several_points_read_in_one_go_the_thinnest_counts() -> None:
    film = left(at(0, "before", 131), at(0, "before", 118, hour=1), at(0, "before", 125, hour=2)).tightest
    assert film is not None
    assert film.last_um == 118


def test_a_point_read_on_an_earlier_day_is_another_state_of_the_paint() -> None:
    film = left(at(0, "before", 95), at(1, "before", 118)).tightest
    assert film is not None
    assert film.last_um == 118


def test_what_is_left_is_above_the_floor_and_a_part_of_what_there_ever_was() -> None:
    """110 − 5 − 80 = 25 µm, of 130 − 80 = 50 µm: half."""
    readings = (at(0, "before", 130), at(1, "after", 126), at(200, "before", 110))
    film = left(*readings, cuts=(COMPOUND,)).tightest
    assert film is not None
    assert (film.after_um, film.left_um, film.fraction) == (105, 25, 0.5)


@pytest.mark.parametrize(
    ("um", "fraction", "because"),
    [(75, 0.0, "under the floor nothing is left"), (80, 0.0, "nor at it"), (81, 1.0, "all there ever was")],
)
def test_the_bar_runs_from_nothing_to_all(um: int, fraction: float, because: str) -> None:
    film = left(at(0, "before", um)).tightest
    assert film is not None
    assert film.fraction == fraction, because


def test_the_film_with_the_least_above_its_floor_is_the_one_to_draw() -> None:
    """120 − 80 = 40 µm of whole film, 52 − 40 = 12 µm of clear coat."""
    film = left(at(0, "before", 120), at(0, "before", 52, "clear")).tightest
    assert film is not None
    assert (film.film, film.left_um) == ("clear", 12)


def test_clear_coat_read_once_loses_what_the_whole_film_lost_since() -> None:
    """52 µm of clear coat, then 120 − 114 = 6 µm off the whole film of a later visit: 46."""
    panel = left(
        at(0, "before", 52, "clear"),
        at(1, "after", 52, "clear"),
        at(200, "before", 120),
        at(201, "after", 114),
    )
    [clear] = [one for one in panel.films if one.film == "clear"]
    assert (clear.last_um, clear.since_um, clear.now_um) == (52, 6, 46)


def test_clear_coat_read_before_a_cut_loses_what_the_cut_took_off_the_whole_film() -> None:
    panel = left(at(0, "before", 52, "clear"), at(0, "before", 120), at(1, "after", 114))
    [clear] = [one for one in panel.films if one.film == "clear"]
    assert clear.now_um == 46


def test_clear_coat_read_after_a_cut_has_lost_it_already() -> None:
    readings = (at(0, "before", 52, "clear"), at(0, "before", 120))
    panel = left(*readings, at(1, "after", 48, "clear"), at(1, "after", 114))
    [clear] = [one for one in panel.films if one.film == "clear"]
    assert clear.now_um == 48


def test_of_two_films_read_before_and_after_the_larger_loss_counts() -> None:
    """120 − 114 = 6 µm of whole film against 52 − 48 = 4 µm of clear coat."""
    readings = (at(0, "before", 52, "clear"), at(0, "before", 120))
    assert left(*readings, at(1, "after", 48, "clear"), at(1, "after", 114)).removed_um == 6


def test_a_cut_through_the_floor_leaves_an_empty_bar() -> None:
    """84 − 5 is 1 µm under the floor."""
    film = left(at(0, "before", 130), at(1, "after", 84), cuts=(COMPOUND,)).tightest
    assert film is not None
    assert (film.left_um, film.fraction) == (-1, 0.0)


def test_a_panel_that_the_gauge_cannot_read_has_a_line_without_figures() -> None:
    panel = left(at(0, "before", None))
    assert (panel.films, panel.not_readable, panel.tightest) == ((), True, None)


def test_a_panel_that_nobody_read_is_not_the_same_as_one_that_cannot_be_read() -> None:
    assert left().not_readable is False
