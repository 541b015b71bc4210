"""Places as the air of a step needs them: volume, air flow, mixing, near field, what may spark."""

import math
from collections import defaultdict
from collections.abc import Iterable

from inventory.models import IgnitionSource, Place
from inventory.precheck.questions.topics.air import AirPlace, Spark
from inventory.precheck.questions.topics.measured import Exhaust, Measurement
from safety.air.task import UNKNOWN_MIXING
from safety.air.values import NearField
from safety.air.values import Place as Room

from .measured import exhausts, measurements

CABIN_M3 = 3  # a car's cabin, also a pit, a boot or an engine bay of which nobody said the size


def air_places(places: Iterable[Place]) -> dict[str, AirPlace]:
    """Return the places by their code, each kind of what they hold in one query."""
    rows = {place.pk: place for place in places}
    sparks: dict[int, list[Spark]] = defaultdict(list)
    for row in IgnitionSource.objects.filter(place__in=rows).order_by("name"):
        sparks[row.place_id].append(Spark(row.name, row.state, row.said_at, row.sort))
    caught, measured = exhausts(rows), measurements(rows)
    return {
        row.code: air_place(row, sparks[row.pk], caught.get(row.pk, ()), measured.get(row.pk, ()))
        for row in rows.values()
    }


def air_place(
    row: Place,
    sparks: Iterable[Spark] = (),
    caught: Iterable[Exhaust] = (),
    measured: Iterable[Measurement] = (),
) -> AirPlace:
    """Return one place; a cabin, pit, boot or engine bay has 3 m³ and no air flow unless it was measured."""
    cabin = row.kind == Place.Kind.CABIN or row.enclosed
    volume, flow = row.volume_m3, row.air_m3_h
    if cabin:
        volume, flow = volume or CABIN_M3, flow or 0
    return AirPlace(
        row.code, row.name,
        Room(
            volume_m3=volume, air_m3_h=flow,
            mixing_k=float(row.mixing_k) if row.mixing_k else UNKNOWN_MIXING,
            near_field=near_field(row, volume), mixing_known=row.mixing_k is not None or not flow,
        ),
        cabin, tuple(sparks), tuple(caught), tuple(measured),
    )  # fmt: skip


def near_field(row: Place, volume: float | None) -> NearField:
    """Return the near field of a place, never larger than the place itself."""
    usual = NearField()
    radius = float(row.near_radius_m) if row.near_radius_m else usual.radius_m
    speed = float(row.near_speed_m_min) if row.near_speed_m_min else usual.air_speed_m_min
    if volume:
        radius = min(radius, (3 * volume / (2 * math.pi)) ** (1 / 3))
    return NearField(radius, speed)
