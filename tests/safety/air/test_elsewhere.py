"""What others let go in the same room reaches who works here through the room, not the near field."""

from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from safety.air.answer import air
from safety.air.over_time import Source, over_time
from safety.air.values import Emission, Place, Task

ON = date(2026, 11, 25)
BAY = Place(100.0, 600.0, 1.0)
WIPE = Emission("isopropanol", "67-63-0", 785.0)
GRAMS = st.floats(0, 500)


def figures(one: Emission, place: Place = BAY, minutes: float = 60) -> tuple[float, float]:
    found = air(Task(place, minutes, "US", (one,)), ON).as_json()["contaminants"][0]
    return found["room_ppm"], found["breathing_zone_ppm"]


def test_of_others_the_breathing_zone_gets_the_rooms_share_alone() -> None:
    """785 g/h at the nose: 530.9 + 662 ppm (exposure.md, section 1); across the room 530.9 more."""
    assert figures(WIPE) == (pytest.approx(530.9, abs=0.1), pytest.approx(1192.9, abs=0.2))
    room, nose = figures(replace(WIPE, elsewhere=785.0))
    assert room == pytest.approx(2 * 530.9, abs=0.2)
    assert nose == pytest.approx(1192.9 + 530.9, abs=0.3)


def test_what_two_others_let_go_adds_up() -> None:
    twice = air(Task(BAY, 60, "US", (replace(WIPE, elsewhere=10), replace(WIPE, elsewhere=20))), ON)
    [one] = twice.facts.contaminants
    assert (one.emission.grams, one.emission.elsewhere) == (1570.0, 30)


def test_air_for_the_breathing_zone_grows_with_others_and_is_not_called_impossible_for_them() -> None:
    """100 g/h need 129 m³/h at the nose (exposure.md, section 1); twenty such jobs elsewhere are only air."""
    one = air(Task(BAY, 60, "US", (Emission("isopropanol", "67-63-0", 100.0),)), ON)
    many = air(Task(BAY, 60, "US", (Emission("isopropanol", "67-63-0", 100.0, elsewhere=2000.0),)), ON)
    assert one.facts.figures.breathing_zone_m3_h == pytest.approx(129, abs=1)
    assert many.facts.figures.breathing_zone_m3_h == pytest.approx(129 * 21, rel=0.01)


@given(GRAMS, GRAMS, GRAMS, st.floats(1, 5000), st.floats(0, 5000), st.floats(1, 20), st.floats(1, 15))
@settings(max_examples=200)
def test_others_never_lower_a_figure_and_the_nose_is_never_below_the_room(
    grams: float, others: float, more: float, volume: float, flow: float, k: float, minutes: float
) -> None:
    place = Place(volume, flow, k)
    before = figures(replace(WIPE, grams=grams, elsewhere=others), place, minutes)
    after = figures(replace(WIPE, grams=grams, elsewhere=others + more), place, minutes)
    assert after[0] >= before[0] * (1 - 1e-9)
    assert after[1] >= before[1] * (1 - 1e-9)
    assert after[1] >= after[0]


def test_what_lasts_longer_than_the_task_is_spread_over_its_own_minutes() -> None:
    """785 g over an hour are the same 530.9 ppm, whether the task is of an hour or of a quarter."""
    hour = replace(WIPE, lasts=60.0)
    assert figures(hour, minutes=15) == figures(WIPE, minutes=60)
    assert figures(WIPE, minutes=15)[0] > figures(hour, minutes=15)[0]
    quarter = air(Task(BAY, 15, "US", (hour,)), ON).facts
    whole = air(Task(BAY, 60, "US", (WIPE,)), ON).facts
    assert [each.index for each in quarter.nose] == [each.index for each in whole.nose]
    assert quarter.figures == whole.figures


def test_a_curve_ends_at_the_tasks_own_figure_and_falls_after_it() -> None:
    """The room after an hour of 785 g/h in 600 m³/h, 100 m³: 530.9 ppm are 1304.98 mg/m³ at 24.45 l/mol."""
    before, end, after = over_time(BAY, [Source(785.0, 60.0)], [30, 60, 90])
    assert end.room == pytest.approx(530.9 * 60.10 / 24.45, rel=1e-3)
    assert end.nose == pytest.approx(1192.9 * 60.10 / 24.45, rel=1e-3)
    assert before.room < end.room > after.room


@given(st.lists(st.builds(Source, GRAMS, st.floats(1, 60), GRAMS), max_size=3), st.floats(1, 20))
def test_on_a_curve_the_breathing_zone_is_never_below_the_room(sources: list[Source], k: float) -> None:
    for one in over_time(Place(160.0, 960.0, k), sources, range(0, 121, 5)):
        assert one.nose >= one.room
