"""The newest reading of the instruments in each place."""

from collections.abc import Iterable

from django.db.models import OuterRef, Subquery

from inventory.models import WeatherReading
from inventory.precheck.questions.topics.weather import Reading


def newest(places: Iterable[int]) -> dict[str, Reading]:
    """Return the newest reading of each place by the place's code, in one query."""
    last = WeatherReading.objects.filter(place=OuterRef("place")).order_by("-taken_at", "-id")
    rows = WeatherReading.objects.filter(place__in=set(places), pk=Subquery(last.values("pk")[:1]))
    return {row.place.code: reading(row) for row in rows.select_related("place")}


def reading(row: WeatherReading) -> Reading:
    """Return a row as the check's value."""
    panel = None if row.panel_c is None else float(row.panel_c)
    return Reading(row.taken_at, float(row.air_c), panel, float(row.humidity))
