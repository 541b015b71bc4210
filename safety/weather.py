"""Weather for a coat: the dew point, the panel's margin above it, the product's window, and what would mend
it.

Numbers only: sources disagree on which way humidity acts, so nothing is predicted. Humidity is judged from
both sides: a moisture-curing coating needs a lower bound as well as an upper one.
Source: Magnus formula as the WMO gives it (a 17.62, b 243.12 °C), over water; panel at least 3 K above the
dew point by ISO 8502-4 practice for coating work (abstract read; for car panels a house rule by analogy);
the window's defaults are common practice and public trade pages, no authority.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from safety.findings import Finding, gravest_first

A, B = 17.62, 243.12
LEAST_MARGIN_K = 3.0
ROUNDING = 1e-9  # 12.26 − 9.26 is 3, whatever binary fractions say
TRADE = "Trade pages and common practice; the product's own sheet comes first"
DEW = "Magnus formula (WMO); ISO 8502-4 practice, a house rule for car panels"


class WeatherError(ValueError):
    """Weather that cannot be; the sentence names the value and what was expected."""


@dataclass(frozen=True)
class Window:
    """Bounds within which a value is not told, asked about, stopped; None is no bound."""

    tell: tuple[float | None, float | None]
    ask: tuple[float | None, float | None]
    stop: tuple[float | None, float | None]

    def grade(self, value: float) -> str | None:
        """Return the gravest grade whose bounds a value leaves."""
        for grade, (low, high) in (("stop", self.stop), ("ask", self.ask), ("tell", self.tell)):
            if (low is not None and value < low) or (high is not None and value > high):
                return grade
        return None

    def nearest(self, value: float) -> float:
        """Return the nearest value at which nothing is said."""
        low, high = self.tell
        if low is not None and value < low:
            return low
        return high if high is not None and value > high else value


@dataclass(frozen=True)
class ProductWindow:
    """What a product wants of air and panel (°C) and of humidity (%)."""

    temperature: Window = Window((15, 27), (10, 30), (5, 35))
    humidity: Window = Window((40, 70), (30, 80), (None, 85))


def window(
    air_from_c: float | None = None,
    air_to_c: float | None = None,
    humidity_from: float | None = None,
    humidity_to: float | None = None,
) -> ProductWindow:
    """Return the trade's window with the bounds that a product gives in their place; None is not given.

    Outside its own bounds a product is asked about; the trade's stops give way where its own go further.
    """
    usual = ProductWindow()
    return ProductWindow(
        _typed(usual.temperature, air_from_c, air_to_c), _typed(usual.humidity, humidity_from, humidity_to)
    )


def _typed(usual: Window, low: float | None, high: float | None) -> Window:
    least, most = usual.stop
    if low is not None:
        usual = Window((low, usual.tell[1]), (low, usual.ask[1]), (_further(min, least, low), most))
    if high is not None:
        least = usual.stop[0]
        usual = Window((usual.tell[0], high), (usual.ask[0], high), (least, _further(max, most, high)))
    return usual


def _further(choose: Callable[[float, float], float], bound: float | None, own: float) -> float | None:
    return None if bound is None else choose(bound, own)


@dataclass(frozen=True)
class Weather:
    """The answer. `margin_c` is None where the panel was not measured."""

    dew_point_c: float
    margin_c: float | None
    findings: tuple[Finding, ...]

    def as_json(self) -> dict[str, Any]:
        """Return the document that a script reads."""
        return {
            "dew_point_c": self.dew_point_c,
            "margin_c": self.margin_c,
            "findings": [vars(one) for one in self.findings],
        }


def dew_point(air_c: float, humidity: float) -> float:
    """Return the dew point in °C from air in °C and relative humidity in percent."""
    g = math.log(humidity / 100) + A * air_c / (B + air_c)
    return B * g / (A - g)


def humidity_for(dew_point_c: float, air_c: float) -> float:
    """Return the relative humidity in percent at which air of this temperature has this dew point."""
    return 100 * math.exp(A * dew_point_c / (B + dew_point_c) - A * air_c / (B + air_c))


def weather(
    air_c: float, humidity: float, panel_c: float | None = None, window: ProductWindow = ProductWindow()
) -> Weather:
    """Return dew point, margin and findings; raise WeatherError for what cannot be measured in a workshop."""
    for name, value, least, most, unit in (
        ("air", air_c, -40.0, 60.0, " °C"),
        ("humidity", humidity, 1.0, 100.0, " %"),
        ("panel", panel_c, -40.0, 120.0, " °C"),
    ):
        if value is not None and not least <= value <= most:
            wanted = f"a number from {least:g} to {most:g}{unit}"
            raise WeatherError(f"{name}: {wanted} was expected, not {value:g}.")
    dew = dew_point(air_c, humidity)
    found = [
        *_temperature("air", air_c, window.temperature),
        *([] if panel_c is None else _temperature("panel", panel_c, window.temperature)),
        *_humidity(humidity, window.humidity),
        *_margin(air_c, humidity, panel_c, dew),
    ]
    return Weather(dew, None if panel_c is None else panel_c - dew, gravest_first(found))


def _temperature(what: str, value: float, window: Window) -> list[Finding]:
    grade = window.grade(value)
    if grade is None:
        return []
    word, good = ("warmed", "at least") if value < window.nearest(value) else ("cooled", "at most")
    says = f"The {what} is at {value:g} °C."
    because = (
        f"Preferred are {_span(window.tell)} °C, allowed {_span(window.ask)}; {_span(window.stop)} at all."
    )
    do = f"Wait until the {what} has {word} to {good} {window.nearest(value):g} °C."
    return [Finding(f"weather.{what}", grade, says, because, do, TRADE, (what,))]


def _humidity(value: float, window: Window) -> list[Finding]:
    grade = window.grade(value)
    if grade is None:
        return []
    says, good = f"Humidity is {value:g} %.", window.nearest(value)
    if value < good:
        because = f"A coating that cures by moisture wants at least {good:g} %; others do not mind."
        do = f"Where it cures by moisture, wait for or bring humidity to {good:g} %."
    else:
        tell, ask, stop = window.tell[1], window.ask[1], window.stop[1]
        because = f"Over {tell:g} % is told, over {ask:g} asked, over {stop:g} stopped."
        do = f"Wait until humidity is down to {good:g} %."
    return [Finding("weather.humidity", grade, says, because, do, TRADE, ("humidity",))]


def _margin(air_c: float, humidity: float, panel_c: float | None, dew: float) -> list[Finding]:
    if panel_c is None:
        says = f"The panel was not measured; it must be at least {dew + LEAST_MARGIN_K:.1f} °C."
        because = (
            f"The dew point is {dew:.1f} °C, and water settles on a colder panel before anybody sees it."
        )
        return [
            Finding("weather.panel_unknown", "tell", says, because, "Measure the panel.", DEW, ("panel",))
        ]
    margin = panel_c - dew
    if margin >= LEAST_MARGIN_K - ROUNDING:
        return []
    drier = humidity_for(panel_c - LEAST_MARGIN_K, air_c)
    where = f"{abs(margin):.1f} K {'above' if margin >= 0 else 'below'} the dew point"
    says = f"The panel is {where}; at least {LEAST_MARGIN_K:g} K above is wanted."
    because = f"Panel {panel_c:g} °C, dew point {dew:.1f} °C at {air_c:g} °C and {humidity:g} %."
    do = (
        f"Wait until the panel is at least {dew + LEAST_MARGIN_K:.1f} °C, "
        f"or until humidity is down to {drier:.0f} % at this air."
    )
    return [Finding("weather.dew_point", "stop", says, because, do, DEW, ("panel",))]


def _span(bounds: tuple[float | None, float | None]) -> str:
    return f"{bounds[0]:g} to {bounds[1]:g}"
