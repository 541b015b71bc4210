"""What a bay's page keeps: a reading, how an ignition source stands, and what the bay's air does."""

from collections.abc import Iterable, Mapping
from datetime import date, datetime
from decimal import Decimal

from django.db import transaction

from inventory.models import IgnitionSource, Person, Place, WeatherReading
from inventory.stock.rooms import keep_room


def read(
    place: Place, air_c: Decimal, panel_c: Decimal | None, humidity: Decimal, *, by: Person, at: datetime
) -> WeatherReading:
    """Keep what the instruments read; older readings stay."""
    return WeatherReading.objects.create(
        place=place, taken_at=at, air_c=air_c, panel_c=panel_c, humidity=humidity, by=by
    )


def say(source: IgnitionSource, state: str, *, by: Person, at: datetime) -> IgnitionSource:
    """Keep how an ignition source stands, who says so and when."""
    source.state, source.said_by, source.said_at = state, by, at
    source.save(update_fields=["state", "said_by", "said_at"])
    return source


@transaction.atomic
def keep_air(place: Place, sources: Iterable[str], sorts: Mapping[str, str], *, on: date) -> int:
    """Save a place's air, and make its ignition sources those named: a new one is not confirmed off.

    `sorts` says by name what a source that was there already is. Return how many measurements count no more.
    """
    ended = keep_room(place, on=on)
    names = list(dict.fromkeys(sources))
    place.ignition_sources.exclude(name__in=names).delete()
    here = set(place.ignition_sources.values_list("name", flat=True))
    IgnitionSource.objects.bulk_create(
        IgnitionSource(place=place, name=name) for name in names if name not in here
    )
    for name in here & set(sorts):
        place.ignition_sources.filter(name=name).update(sort=sorts[name])
    return ended
