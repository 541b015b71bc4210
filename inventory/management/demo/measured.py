"""The demo's local exhaust, and what was measured under it: one wipe is told, and one still asks."""

from datetime import date, datetime, timedelta
from decimal import Decimal

from inventory.management.demo.nouns import Cast
from inventory.management.demo.tables import Row, table
from inventory.models import AirMeasurement, AirSample, LocalExhaust
from inventory.units import parse_amount


def measure_the_air(cast: Cast, now: datetime) -> None:
    """Write down the examined exhaust and the measurements, as the tables have them."""
    on = now.astimezone(cast.shop.zone).date()
    for row in table("exhausts"):
        LocalExhaust.objects.create(
            place=cast.places[row["place"]], name=row["name"], catches=row["catches"],
            examined_on=_before(row, on), until_on=_until(row, on), proof=row["proof"],
            kept_by=cast.people["ines"],
        )  # fmt: skip
    found: dict[tuple[str, str, str], AirMeasurement] = {}
    for row in table("air_measured"):
        key = row["place"], row["product"], row["days_ago"]
        if key not in found:
            found[key] = _measurement(cast, row, on)
        AirSample.objects.bulk_create(
            AirSample(
                measurement=found[key], name=row["substance"], cas=row["cas"], against=row["against"],
                value=Decimal(value), unit=row["unit"],
            )
            for value in row["results"].split()
        )  # fmt: skip


def _measurement(cast: Cast, row: Row, on: date) -> AirMeasurement:
    place, product = cast.places[row["place"]], cast.products[row["product"]]
    return AirMeasurement.objects.create(
        place=place, product=product, minutes=int(row["minutes"]),
        amount=parse_amount(row["amount"], dimension=product.dimension).base,
        exhaust=LocalExhaust.objects.get(place=place, name=row["exhaust"]) if row["exhaust"] else None,
        measured_on=_before(row, on), until_on=_until(row, on), by_whom=row["by_whom"],
        kept_by=cast.people["ines"],
    )  # fmt: skip


def _before(row: Row, on: date) -> date:
    return on - timedelta(days=int(row["days_ago"]))


def _until(row: Row, on: date) -> date:
    return on + timedelta(days=int(row["days_left"]))
