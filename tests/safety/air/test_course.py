"""A rise and a fall: mean, worst fifteen minutes and peak, against sums over small steps."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from safety.air.course import Course, Part
from safety.air.near_field import breathed
from safety.air.room import room
from safety.air.values import Place

PARTS = st.builds(Part, st.floats(0, 1e4), st.sampled_from([0.0, 1e-9, 1e-6, 0.001, 0.05, 0.5, 8.0]))
COURSES = st.builds(Course, st.lists(PARTS, min_size=1, max_size=2).map(tuple), st.floats(1, 240))


def stepwise(course: Course, start: float, end: float) -> float:
    """The mean by the trapezoidal rule of NumPy."""
    times = np.linspace(start, end, 4001)
    return float(np.trapezoid([course.at(each) for each in times], times) / (end - start))


@given(COURSES)
def test_a_mean_is_the_area_under_the_curve(course: Course) -> None:
    assert course.task_mean == pytest.approx(stepwise(course, 0, course.minutes), rel=2e-3, abs=1e-9)


@given(COURSES)
def test_no_fifteen_minutes_are_worse_than_the_worst(course: Course) -> None:
    worst = course.worst_15
    for start in np.linspace(0, course.minutes + 5, 60):
        assert course.mean(start, start + 15) <= worst * (1 + 1e-9) + 1e-9
    assert worst <= course.peak * (1 + 1e-9) + 1e-9


def test_the_air_after_the_end_belongs_to_the_worst_fifteen_minutes() -> None:
    """By hand: 20 mg/m³ a minute for 5 minutes, no air: 100 from then on, 83.3 over the first 15."""
    course = room(Place(100, 0, 1), 10, 5)
    assert course.peak == pytest.approx(100)
    assert course.mean(0, 15) == pytest.approx(100 * 12.5 / 15)
    assert course.worst_15 == pytest.approx(100)


def test_ten_millilitres_wiped_are_5_ppm_over_the_hour_and_40_at_the_nose_in_a_quarter_of_it() -> None:
    """Worked by hand (rounded so): 7.85 g of isopropanol, 600 m³/h, 100 m³, default near field."""
    bay, to_ppm = Place(100, 600, 1), 24.45 / 60.10
    assert room(bay, 7.85, 60).peak * to_ppm == pytest.approx(5.3, abs=0.05)
    assert breathed(bay, 7.85, 15).end * to_ppm == pytest.approx(40, abs=5)
    assert breathed(bay, 7.85, 15).worst_15 * to_ppm == pytest.approx(40, abs=5)


@given(st.floats(15, 2000), st.floats(0, 9000), st.floats(1, 3000), st.floats(1, 500), st.floats(1, 10))
def test_more_air_never_raises_the_room_and_more_grams_never_lower_it(
    volume: float, flow: float, more: float, grams: float, k: float
) -> None:
    base = room(Place(volume, flow, k), grams, 45)
    assert room(Place(volume, flow + more, k), grams, 45).peak <= base.peak * (1 + 1e-12)
    assert room(Place(volume, flow, k), grams + more, 45).peak >= base.peak
