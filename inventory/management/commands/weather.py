"""`weather --air C --humidity PERCENT [--panel C] [--product P]`: dew point, margin, and what mends it."""

from argparse import ArgumentParser
from collections.abc import Iterator
from typing import Any

from inventory.codes import pair, tidy
from inventory.management.scripted import Answer, BadInput, ScriptedCommand
from inventory.models import Product, Profile
from inventory.precheck.queries.weather import window_of
from safety.weather import ProductWindow, Weather, WeatherError, weather


class Command(ScriptedCommand):
    """Judges one reading. Needs a database only where a product is named."""

    help = "Say the dew point, the panel's margin above it, and what would mend the weather for a coat."
    domain_errors = (WeatherError,)

    def add_arguments(self, parser: ArgumentParser) -> None:
        """Take what was read from the instruments."""
        parser.add_argument("--air", type=float, required=True, metavar="C", help="air in °C")
        parser.add_argument(
            "--humidity", type=float, required=True, metavar="PERCENT", help="relative, in %%"
        )
        parser.add_argument("--panel", type=float, metavar="C", help="panel in °C, as measured on it")
        parser.add_argument("--product", metavar="P", help="a product's code: its own window judges")

    def answer(self, **options: Any) -> Answer:
        """Return dew point, margin and findings in sentences, and as JSON."""
        window, whose = product_window(options["product"]) if options["product"] else (ProductWindow(), "")
        found = weather(options["air"], options["humidity"], options["panel"], window)
        lines = [*said(found), *([f"Window: {whose}"] if whose else [])]
        return "\n".join(lines), found.as_json()


def product_window(text: str) -> tuple[ProductWindow, str]:
    """Return the window of a product by its code and whose word it is; raise BadInput for no product."""
    product = Product.objects.filter(code=tidy(text) or "").first()
    if product is None:
        raise BadInput(f"--product: “{text}” is no product's code. Its code stands on the product's page.")
    window, own = window_of(product, Profile.objects.filter(product=product).first())
    return window, own or f"the trade's own; {product.name} ({pair(product.code)}) has none"


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
