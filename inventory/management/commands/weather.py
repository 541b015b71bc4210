"""`weather --air C --humidity PERCENT [--panel C]`: the dew point, and whether the panel is warm enough."""

from argparse import ArgumentParser
from collections.abc import Iterator
from typing import Any

from inventory.management.scripted import Answer, ScriptedCommand
from safety.weather import Weather, WeatherError, weather


class Command(ScriptedCommand):
    """Judges one reading. Needs no database."""

    help = "Say the dew point, the panel's margin above it, and what would mend the weather for a coat."
    domain_errors = (WeatherError,)

    def add_arguments(self, parser: ArgumentParser) -> None:
        """Take what was read from the instruments."""
        parser.add_argument("--air", type=float, required=True, metavar="C", help="air in °C")
        parser.add_argument(
            "--humidity", type=float, required=True, metavar="PERCENT", help="relative, in %%"
        )
        parser.add_argument("--panel", type=float, metavar="C", help="panel in °C, as measured on it")

    def answer(self, **options: Any) -> Answer:
        """Return dew point, margin and findings in sentences, and as JSON."""
        found = weather(options["air"], options["humidity"], options["panel"])
        return "\n".join(said(found)), found.as_json()


def said(found: Weather) -> Iterator[str]:
    """Yield the answer line by line."""
    yield f"Dew point {found.dew_point_c:.1f} °C"
    yield margin(found.margin_c)
    for one in found.findings:
        grade = "NOTE" if one.grade == "tell" else one.grade.upper()
        yield f"{grade}: {one.says} {one.do}"
        yield f"  {one.because} {one.source}"


def margin(kelvin: float | None) -> str:
    """Return how far the panel is from the dew point."""
    if kelvin is None:
        return "Panel not measured"
    return f"Panel {abs(kelvin):.1f} K {'above' if kelvin >= 0 else 'below'} the dew point"
