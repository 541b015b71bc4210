"""A product's own bounds in place of the trade's: what they narrow, and what they widen."""

import pytest

from safety.weather import ProductWindow, weather, window


def grades(air: float, humidity: float, *bounds: float | None) -> dict[str, str]:
    """Return the grade of each code for a panel as warm as the air."""
    found = weather(air, humidity, air, window(*bounds)).findings
    return {one.code.removeprefix("weather."): one.grade for one in found}


def test_without_bounds_it_is_the_trade_s_own() -> None:
    assert window() == ProductWindow()


@pytest.mark.parametrize(
    ("air", "humidity", "bounds", "told", "because"),
    [
        (14, 50, (18, None), {"air": "ask", "panel": "ask"}, "below its own least it is asked about"),
        (18, 50, (18, None), {}, "its own least is content"),
        (3, 50, (18, None), {"air": "stop", "panel": "stop"}, "the trade's stop stands"),
        (8, 50, (5, None), {}, "its own word goes further than the trade's 15 °C"),
        (3, 50, (2, None), {}, "and further than the trade's stop at 5 °C"),
        (1, 50, (2, None), {"air": "stop", "panel": "stop"}, "below its own it stops there"),
        (36, 30, (None, 40, 20, None), {}, "a product for the heat"),
        (20, 65, (None, None, None, 60), {"humidity": "ask"}, "its own most of humidity"),
        (20, 65, (), {}, "which the trade would not speak of"),
        (20, 25, (None, None, 20, None), {}, "its own least of humidity"),
        (20, 25, (), {"humidity": "ask"}, "which the trade asks about"),
        (30, 88, (None, 35, None, 90), {}, "its own most beyond the trade's stop at 85 %"),
    ],
)
def test_each_bound(
    air: float, humidity: float, bounds: tuple[float | None, ...], told: dict[str, str], because: str
) -> None:
    found = grades(air, humidity, *bounds)
    assert {code: grade for code, grade in found.items() if code != "dew_point"} == told, because
