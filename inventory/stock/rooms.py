"""A place whose air changed: what was measured at the nose there was measured in another room.

No row keeps how a room was when somebody measured, so what stands there ends on the day it changes. To say
for the first time how large it is changes no room; to take it back does, for then nobody knows the room.
"""

from datetime import date

from django.db import transaction
from django.db.models import QuerySet

from inventory.models import AirMeasurement, Place

# How a place's form says them, and what a measurement depends on.
ROOM = ("volume_m3", "air_m3_h", "mixing_k", "enclosed")


def counting(place: Place, *, on: date) -> "QuerySet[AirMeasurement]":
    """Return the measurements of a place that count on a day: neither withdrawn nor out of date."""
    return AirMeasurement.objects.filter(place_id=place.pk, withdrawn_on=None, until_on__gte=on)


def changed(place: Place) -> bool:
    """Say whether a place that is not saved yet is another room than the one that is kept."""
    kept = Place.objects.select_for_update().filter(pk=place.pk).values(*ROOM).first() or {}
    return any(was is not None and was != getattr(place, name) for name, was in kept.items())


@transaction.atomic
def keep_room(place: Place, *, on: date) -> int:
    """Save a place; return how many measurements count no more because it is another room now."""
    other = changed(place)
    place.save()
    return end_measurements(place, on=on) if other else 0


def end_measurements(place: Place, *, on: date) -> int:
    """Withdraw what counts in a place; return how many that were."""
    return counting(place, on=on).update(withdrawn_on=on)


def before(count: int) -> str:
    """Return what is said beside the fields of a room while something measured counts there; else nothing."""
    if not count:
        return ""
    what = (
        "1 measurement counts here: it ends" if count == 1 else f"{count} measurements count here: they end"
    )
    return f"{what} when size, fresh air or mixing change. Then have it measured again."


def after(count: int) -> str:
    """Return what is said once measurements ended with a room."""
    counts = "1 measurement no longer counts" if count == 1 else f"{count} measurements no longer count"
    return f"{counts}: the room changed. Have it measured again."
