"""Forms and rows of local exhaust and of measurements in Bay 2, as the tests of its pages use them."""

from datetime import date, timedelta

from django.test import Client
from django.urls import reverse
from django.utils import timezone

from inventory.models import AirMeasurement, AirSample, LocalExhaust, Product
from tests.world import ML, World

SHORT, TWA = "short term 15 min", "TWA"


def days(count: int) -> date:
    """Return a day so many days from today."""
    return timezone.localdate() + timedelta(days=count)


def examination(**changed: object) -> dict[str, object]:
    """Return the form of an arm that was examined last month."""
    return {
        "name": "Extraction arm", "catches": "vapour", "examined_on": days(-30), "until_on": days(300),
        "proof": "A. Finch, folder 3", **changed,
    }  # fmt: skip


def arm(world: World, **changed: object) -> LocalExhaust:
    """Write an arm of Bay 2 down."""
    facts = {**examination(), "place": world.bay_2, "kept_by": world.ines, **changed}
    return LocalExhaust.objects.create(**facts)  # type: ignore[arg-type]


def report(*rows: tuple[str, str, str], substance: str = "67-63-0", **changed: object) -> dict[str, object]:
    """Return the form of a measurement: rows of results, unit and kind of limit."""
    given: dict[str, object] = {
        "amount": "180 ml", "minutes": "30", "exhaust": "", "measured_on": days(-10), "until_on": days(300),
        "by_whom": "A. Finch, pumped tubes", "results-TOTAL_FORMS": "4", "results-INITIAL_FORMS": "0",
    }  # fmt: skip
    for at in range(4):
        results, unit, against = rows[at] if at < len(rows) else ("", "ppm", TWA)
        given |= {
            f"results-{at}-substance": substance, f"results-{at}-results": results,
            f"results-{at}-unit": unit, f"results-{at}-against": against,
        }  # fmt: skip
    return {**given, **changed}


def address(world: World, product: Product) -> str:
    """Return where a measurement of a product in Bay 2 is written down."""
    return reverse("bays:measure", args=[world.bay_2.code]) + f"?product={product.code}"


def kept(world: World, product: Product, *ppm: str, **changed: object) -> AirMeasurement:
    """Keep a measurement with results against the 15-minute limit."""
    facts = {
        "place": world.bay_2, "product": product, "amount": 180 * ML, "minutes": 30,
        "measured_on": days(-10), "until_on": days(300), "by_whom": "A. Finch", "kept_by": world.ines,
        **changed,
    }  # fmt: skip
    row = AirMeasurement.objects.create(**facts)  # type: ignore[arg-type]
    for value in ppm:
        AirSample.objects.create(
            measurement=row, name="Propan-2-ol", cas="67-63-0", against=SHORT, value=value, unit="ppm"
        )
    return row


def page(client: Client, world: World) -> str:
    """Return the text of Bay 2's page."""
    return client.get(reverse("bays:bay", args=[world.bay_2.code])).content.decode()
