"""Local exhaust that was examined in places, and what was measured there; what was withdrawn is left out."""

from collections import defaultdict
from collections.abc import Collection

from inventory.models import AirMeasurement, AirSample, LocalExhaust
from inventory.precheck.questions.topics.measured import Exhaust, Measurement
from safety.air.measured import Sample


def exhausts(places: Collection[int]) -> dict[int, list[Exhaust]]:
    """Return by place its local exhaust, the latest examination first."""
    found: dict[int, list[Exhaust]] = defaultdict(list)
    for row in LocalExhaust.objects.filter(place__in=places).order_by("-until_on", "-id"):
        found[row.place_id].append(exhaust(row))
    return found


def exhaust(row: LocalExhaust) -> Exhaust:
    """Return one examined exhaust."""
    return Exhaust(row.name, row.catches, row.examined_on, row.until_on, row.ended_on)


def measurements(places: Collection[int]) -> dict[int, list[Measurement]]:
    """Return by place what was measured there, the newest first, in one query for all results."""
    rows = AirSample.objects.filter(measurement__place__in=places, measurement__withdrawn_on=None)
    ordered = rows.order_by("-measurement__measured_on", "-measurement", "id")
    samples: dict[AirMeasurement, list[Sample]] = defaultdict(list)
    for one in ordered.select_related("measurement__product", "measurement__exhaust"):
        samples[one.measurement].append(sample(one))
    found: dict[int, list[Measurement]] = defaultdict(list)
    for row, each in samples.items():
        found[row.place_id].append(measurement(row, each))
    return found


def measurement(row: AirMeasurement, samples: list[Sample]) -> Measurement:
    """Return one measurement with its results."""
    return Measurement(
        row.product.code, row.product.name, row.product.dimension, row.amount, row.minutes,
        row.exhaust.name if row.exhaust else "", row.measured_on, row.until_on, row.by_whom, tuple(samples),
    )  # fmt: skip


def sample(row: AirSample) -> Sample:
    """Return one result."""
    return Sample(row.name, row.cas, row.against, float(row.value), row.unit)
