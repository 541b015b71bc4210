"""The near field against the two differential equations themselves, solved by SciPy."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from safety.air.near_field import breathed, exchange_m3_min, near_field, volume_m3
from safety.air.room import room
from safety.air.values import NearField, Place
from tests.safety.air.test_worked_values import EIGHT


def exact(place: Place, mg_min: float, minutes: float) -> tuple[float, float]:
    """Near and far field by Nicas 1996: V_N·dC_N = G + β(C_F − C_N); V_F·dC_F = β(C_N − C_F) − Q·C_F."""
    beta, small = exchange_m3_min(place.near_field), volume_m3(place.near_field)
    far, flow = (place.volume_m3 or 0) - small, (place.air_m3_h or 0) / 60
    solved = solve_ivp(
        lambda _, c: [
            (mg_min + beta * (c[1] - c[0])) / small,
            (beta * (c[0] - c[1]) - flow * c[1]) / far,
        ],
        (0, minutes),
        [0, 0],
        rtol=1e-10,
        atol=1e-12,
        method="LSODA",
    )
    return solved.y[0, -1], solved.y[1, -1]


def test_the_exact_solution_is_17_359_and_7_569_after_a_quarter_of_an_hour() -> None:
    """The same figures worked outside this program by matrix exponential."""
    near, far = exact(Place(100, 600, 1, EIGHT), 100, 15)
    assert (near, far) == (pytest.approx(17.359, abs=5e-4), pytest.approx(7.569, abs=5e-4))


@pytest.mark.parametrize(("minutes", "too_high"), [(1, 0.12), (15, 0.025), (60, 0.025)])
def test_the_approximation_errs_high_and_by_no_more_than_said(minutes: float, too_high: float) -> None:
    place = Place(100, 600, 1, EIGHT)
    approximate = near_field(place, 0.1 * minutes, minutes).peak
    exactly = exact(place, 100, minutes)[0]
    assert 1 <= approximate / exactly <= 1 + too_high


PLACES = st.builds(
    Place,
    st.floats(15, 2000),
    st.floats(0, 20_000),
    st.floats(1, 10),
    st.builds(NearField, st.floats(0.3, 1.5), st.floats(1, 20)),
)
GRAMS, MINUTES = st.floats(0.01, 5000), st.floats(0.5, 960)


@given(PLACES, GRAMS, MINUTES)
def test_the_technicians_figures_are_never_below_the_rooms(
    place: Place, grams: float, minutes: float
) -> None:
    nose, average = breathed(place, grams, minutes), room(place, grams, minutes)
    assert nose.end >= average.peak
    assert nose.task_mean >= average.task_mean
    assert nose.worst_15 >= average.worst_15


@given(PLACES, GRAMS, MINUTES)
@settings(max_examples=60)
def test_the_breathing_zone_is_never_milder_than_the_exact_near_field(
    place: Place, grams: float, minutes: float
) -> None:
    exactly = exact(place, grams * 1000 / minutes, minutes)[0]
    assert breathed(place, grams, minutes).end >= exactly * (1 - 1e-6)
