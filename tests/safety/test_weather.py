"""Weather for a coat: dew point against outside figures, the margin, the window, and the wait in numbers."""

import psychrolib
import pytest

from safety.weather import (
    ProductWindow,
    Weather,
    WeatherError,
    Window,
    dew_point,
    humidity_for,
    weather,
)


def found(code: str, *reading: float) -> tuple[str, str] | None:
    """Grade and sentence of a finding, None where the check is silent."""
    told = [(one.grade, one.says) for one in weather(*reading).findings if one.code == f"weather.{code}"]
    assert len(told) <= 1
    return told[0] if told else None


def doing(code: str, answer: Weather) -> str:
    [told] = [one.do for one in answer.findings if one.code == f"weather.{code}"]
    return told


@pytest.mark.parametrize(
    ("reading", "sentence"),
    [
        ((20, 0, None), "humidity: a number from 1 to 100 % was expected, not 0."),
        ((20, 101, None), "humidity: a number from 1 to 100 % was expected, not 101."),
        ((-41, 50, None), "air: a number from -40 to 60 °C was expected, not -41."),
        ((20, 50, 121), "panel: a number from -40 to 120 °C was expected, not 121."),
        ((float("nan"), 50, None), "air: a number from -40 to 60 °C was expected, not nan."),
    ],
)
def test_what_no_workshop_measures_is_refused(reading: tuple[float, float, float], sentence: str) -> None:
    with pytest.raises(WeatherError) as refused:
        weather(*reading)
    assert str(refused.value) == sentence


@pytest.mark.parametrize(
    ("air_c", "humidity", "expected"), [(20, 50, 9.26), (25, 60, 16.69), (30, 80, 26.17), (15, 80, 11.58)]
)
def test_the_dew_point_is_that_of_four_readings_worked_by_hand(
    air_c: float, humidity: float, expected: float
) -> None:
    """Magnus formula with the WMO's constants."""
    assert dew_point(air_c, humidity) == pytest.approx(expected, abs=0.005)


GRID = [(air_c, humidity) for air_c in range(5, 41) for humidity in range(20, 96)]


def test_the_dew_point_is_psychrolibs_within_a_twentieth_of_a_degree_above_freezing() -> None:
    """PsychroLib (MIT), ASHRAE Handbook of Fundamentals 2017 ch. 1; below 0 °C it returns the frost point."""
    psychrolib.SetUnitSystem(psychrolib.SI)
    outside = {key: psychrolib.GetTDewPointFromRelHum(key[0], key[1] / 100) for key in GRID}
    above = {key: dew for key, dew in outside.items() if dew > 0}
    assert len(above) > 2000
    apart = {key: abs(dew_point(*key) - dew) for key, dew in above.items()}
    assert max(apart.values()) < 0.05


def test_saturated_air_is_at_its_dew_point_and_the_way_back_gives_the_humidity() -> None:
    assert dew_point(17, 100) == pytest.approx(17)
    assert humidity_for(dew_point(22, 63), 22) == pytest.approx(63)


def test_a_panel_stops_below_three_kelvin_above_the_dew_point_and_not_at_them() -> None:
    """20 °C and 50 %: 9.26 °C."""
    at = dew_point(20, 50) + 3
    assert found("dew_point", 20, 50, at) is None
    told = ("stop", "The panel is 2.9 K above the dew point; at least 3 K above is wanted.")
    assert found("dew_point", 20, 50, at - 0.1) == told
    told = ("stop", "The panel is 1.0 K below the dew point; at least 3 K above is wanted.")
    assert found("dew_point", 20, 50, at - 4) == told


def test_the_wait_that_mends_a_cold_panel_is_told_in_numbers_and_mends_it() -> None:
    """20 °C and 83 %, panel 18 °C. By hand: dew point 17.03 °C; 15 °C are 72.9 % of what 20 °C hold."""
    answer = weather(20, 83, 18)
    assert answer.dew_point_c == pytest.approx(17.03, abs=0.01)
    assert answer.margin_c == pytest.approx(0.97, abs=0.01)
    assert doing("dew_point", answer) == (
        "Wait until the panel is at least 20.0 °C, or until humidity is down to 73 % at this air."
    )
    assert found("dew_point", 20, 83, 20.1) is None
    assert found("dew_point", 20, 72.8, 18) is None


def test_without_a_panel_there_is_no_margin_and_the_needed_one_is_told() -> None:
    answer = weather(20, 50)
    assert answer.margin_c is None
    assert [(one.code, one.grade, one.says) for one in answer.findings] == [
        ("weather.panel_unknown", "tell", "The panel was not measured; it must be at least 12.3 °C.")
    ]


@pytest.mark.parametrize(
    ("humidity", "expected", "because"),
    [
        (29.9, "ask", "a moisture-curing coating lacks water"),
        (30, "tell", "from 30 it is told"),
        (39.9, "tell", "under 40"),
        (40, None, "the lower end of what is preferred"),
        (70, None, "the upper end"),
        (70.1, "tell", "over 70"),
        (80, "tell", "up to 80"),
        (80.1, "ask", "over 80"),
        (85, "ask", "up to 85"),
        (85.1, "stop", "over 85"),
    ],
)
def test_humidity_is_judged_from_both_sides(humidity: float, expected: str | None, because: str) -> None:
    """Common practice and trade pages. Trap: a moisture-curing coating has a lower bound, too."""
    told = found("humidity", 20, humidity, 25)
    assert (told and told[0]) == expected, because


@pytest.mark.parametrize("what", ["air", "panel"])
@pytest.mark.parametrize(
    ("value", "expected"),
    [
        (4.9, "stop"), (5, "ask"), (9.9, "ask"), (10, "tell"), (14.9, "tell"), (15, None),
        (27, None), (27.1, "tell"), (30, "tell"), (30.1, "ask"), (35, "ask"), (35.1, "stop"),
    ],
)  # fmt: skip
def test_air_and_panel_are_judged_alike(what: str, value: float, expected: str | None) -> None:
    """Common practice and trade pages: 15 to 27 °C preferred, 10 to 30 allowed, 5 to 35 at all."""
    told = found(what, *((value, 45, 20) if what == "air" else (20, 45, value)))
    assert (told and told[0]) == expected


def test_the_wait_for_air_and_humidity_is_told_in_numbers() -> None:
    assert doing("air", weather(12, 50, 20)) == "Wait until the air has warmed to at least 15 °C."
    assert doing("panel", weather(20, 50, 33)) == "Wait until the panel has cooled to at most 27 °C."
    assert doing("humidity", weather(20, 83, 25)) == "Wait until humidity is down to 70 %."
    assert doing("humidity", weather(20, 35, 25)) == (
        "Where it cures by moisture, wait for or bring humidity to 40 %."
    )


def test_a_products_own_window_takes_the_place_of_the_usual_one() -> None:
    own = ProductWindow(humidity=Window((50, 60), (45, 65), (None, 65)))
    [told] = [one for one in weather(20, 66, 25, own).findings if one.code == "weather.humidity"]
    assert (told.grade, told.do) == ("stop", "Wait until humidity is down to 60 %.")
    assert found("humidity", 20, 66, 25) is None


def test_the_gravest_finding_stands_first() -> None:
    assert [one.grade for one in weather(9, 82, 7).findings] == ["stop", "ask", "ask", "ask"]
