"""The demo's bays as somebody measured them: air, what may spark, and this morning's reading."""

from datetime import datetime, timedelta

from inventory.management.demo.nouns import Cast
from inventory.management.demo.tables import Row, listed, table
from inventory.models import IgnitionSource, Place, WeatherReading

MEASURED = timedelta(minutes=40)


def measure(cast: Cast, now: datetime) -> None:
    """Type in what the bays' table says, as a technician did less than an hour ago."""
    for row in table("bays"):
        place = cast.places[row["place"]]
        Place.objects.filter(pk=place.pk).update(
            volume_m3=row["volume_m3"] or None,
            air_m3_h=row["air_m3_h"] or None,
            mixing_k=row["mixing_k"] or None,
        )
        _sparks(cast, place, row, now)
        if row["air_c"]:
            WeatherReading.objects.create(
                place=place, taken_at=now - MEASURED, air_c=row["air_c"], panel_c=row["panel_c"] or None,
                humidity=row["humidity"], by=cast.people["tomas"],
            )  # fmt: skip


def _sparks(cast: Cast, place: Place, row: Row, now: datetime) -> None:
    for text in listed(row["sparks"]):
        name, state, sort = text.split(":")
        IgnitionSource.objects.create(
            place=place,
            name=name,
            state=state,
            sort=sort,
            said_at=now - MEASURED,
            said_by=cast.people["tomas"],
        )
