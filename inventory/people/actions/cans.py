"""Writing down that a rag can or a waste can was emptied."""

from datetime import datetime, timedelta

from inventory.models import Person, Place, PlaceCheck

TWICE = timedelta(minutes=1)


def emptied(place: Place, what: str, *, by: Person, at: datetime) -> None:
    """Keep that the rag can of a bay, or a can, was emptied; pressed twice within a minute it was once."""
    rows = place.checks.filter(what=what, by=by, done_at__gt=at - TWICE, done_at__lte=at)
    if not rows.exists():
        PlaceCheck.objects.create(place=place, what=what, done_at=at, by=by)
