"""Writing down what a product protects from, how long a glove stands something, that an eyewash was run."""

from datetime import datetime, timedelta

from django.db import transaction

from inventory.models import Equipment, GloveMinutes, Person, Place, PlaceCheck, Product

TWICE = timedelta(minutes=1)


@transaction.atomic
def keep_equipment(row: Equipment, wear_minutes: int | None) -> None:
    """Keep what a product serves, and the minutes that one of it is worn before it is done for."""
    row.save()
    row.product.wear_minutes = wear_minutes
    row.product.save(update_fields=["wear_minutes"])


def forget(product: Product) -> None:
    """Take back that a product protects anybody."""
    Equipment.objects.filter(product=product).delete()


def keep_minutes(glove: Product, against: Product, minutes: int, source: str) -> None:
    """Keep how long a glove stands a product; said anew, it takes the place of what was said before."""
    GloveMinutes.objects.update_or_create(
        glove=glove, against=against, defaults={"minutes": minutes, "source": source}
    )


def ran(place: Place, *, by: Person, at: datetime) -> None:
    """Keep that the eyewash of a place was run; pressed twice within a minute it was run once."""
    rows = PlaceCheck.objects.filter(place=place, what=PlaceCheck.What.EYEWASH, by=by)
    if not rows.filter(done_at__gt=at - TWICE, done_at__lte=at).exists():
        PlaceCheck.objects.create(place=place, what=PlaceCheck.What.EYEWASH, done_at=at, by=by)
