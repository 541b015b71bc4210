"""What is kept of local exhaust and of measured air. Nothing is deleted: it ends, or it is withdrawn."""

from collections.abc import Iterable
from datetime import date

from django.db import transaction

from inventory.models import AirMeasurement, AirSample, LocalExhaust, Person, Place, Product
from safety.air.measured import Sample


def keep_exhaust(place: Place, row: LocalExhaust, *, by: Person) -> LocalExhaust:
    """Keep that local exhaust of a place was examined."""
    row.place, row.kept_by = place, by
    row.save()
    return row


def end_exhaust(row: LocalExhaust, *, on: date) -> LocalExhaust:
    """Keep that local exhaust is here no more; the first day stays."""
    if row.ended_on is None:
        row.ended_on = on
        row.save(update_fields=["ended_on"])
    return row


@transaction.atomic
def keep_measurement(
    place: Place, product: Product, row: AirMeasurement, samples: Iterable[Sample], *, by: Person
) -> AirMeasurement:
    """Keep a measurement with all its results."""
    row.place, row.product, row.kept_by = place, product, by
    row.save()
    AirSample.objects.bulk_create(
        AirSample(
            measurement=row, name=one.name, cas=one.cas, against=one.kind, value=one.value, unit=one.unit
        )
        for one in samples
    )
    return row


def withdraw(row: AirMeasurement, *, on: date) -> AirMeasurement:
    """Keep that a measurement counts no more; the first day stays."""
    if row.withdrawn_on is None:
        row.withdrawn_on = on
        row.save(update_fields=["withdrawn_on"])
    return row
