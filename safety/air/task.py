"""From a JSON document to a task; what cannot be taken is refused by its place.

A key that is missing, or null, means unknown. An unknown mixing factor counts as 6, and is shown.
"""

from typing import Any

from safety.air.near_field import volume_m3
from safety.air.substances import substances
from safety.air.values import (
    FORMS,
    IDLH,
    KINDS,
    LEL,
    REGIMES,
    RESPIRATORS,
    Emission,
    Limit,
    NearField,
    Place,
    Task,
)
from safety.hazards.mixtures.fields import (
    MixtureError,
    a_list,
    above_zero,
    an_object,
    cas_number,
    known_keys,
    number,
    shown,
    words,
)
from safety.hazards.mixtures.reading import read_hazards

UNKNOWN_MIXING = 6.0
LONGEST_SHIFT = 960
TASK_KEYS = ("place", "minutes", "regime", "emissions", "respirator", "air_c", "panel_c")
PLACE_KEYS = ("volume_m3", "air_m3_h", "mixing_k", "near_field")
EMISSION_KEYS = ("name", "cas", "grams", "hazards", "form", "limits")
LIMIT_KEYS = ("kind", "value", "unit", "from")
UNITS = ("ppm", "mg/m3", "mg/m³", "ug/m3", "µg/m3", "µg/m³", "%")
TYPED_KINDS = (*KINDS, IDLH, LEL)
DRIFTS = "particles"


class TaskError(ValueError):
    """A task that cannot be taken; the sentence names the place and what was expected."""


def read_task(document: object) -> Task:
    """Return the task of a JSON document as the user's guide shows it; raise TaskError."""
    try:
        return _task(document)
    except MixtureError as odd:
        raise TaskError(str(odd)) from odd


def _task(document: object) -> Task:
    given = an_object(document, "The task")
    known_keys(given, TASK_KEYS, "The task")
    rows = a_list(_required(given, "emissions", "a list"), "The task, emissions")
    if not rows:
        raise MixtureError("The task, emissions: at least one was expected.")
    return Task(
        place=read_place(given.get("place") or {}),
        minutes=_minutes(_required(given, "minutes", "a number")),
        regime=one_of(
            _required(given, "regime", f"one of {', '.join(REGIMES)}"), REGIMES, "The task, regime"
        ),
        emissions=tuple(read_emission(row, at) for at, row in enumerate(rows, 1)),
        respirator=one_of(given.get("respirator") or "none", RESPIRATORS, "The task, respirator"),
        air_c=temperature(given.get("air_c"), "The task, air_c"),
        panel_c=temperature(given.get("panel_c"), "The task, panel_c"),
    )


def _required(given: dict[str, Any], key: str, wanted: str) -> object:
    if given.get(key) is None:
        raise MixtureError(f"The task: “{key}” is missing; {wanted} was expected.")
    return given[key]


def _minutes(value: object) -> float:
    if above_zero(value, "The task, minutes") > LONGEST_SHIFT:
        raise MixtureError(f"The task, minutes: at most {LONGEST_SHIFT} was expected, not {shown(value)}.")
    return above_zero(value, "The task, minutes")


def one_of(value: object, allowed: tuple[str, ...], place: str) -> str:
    """Return one of the words allowed."""
    if value not in allowed:
        raise MixtureError(f"{place}: one of {', '.join(allowed)} was expected, not {shown(value)}.")
    return str(value)


def temperature(value: object, place: str) -> float | None:
    """Return °C, None where nobody measured."""
    return None if value is None else number(value, place, -40, 120, " °C")


def read_place(value: object) -> Place:
    """Return the place; a volume or an air flow that nobody knows stays unknown, no air flow is 0."""
    given = an_object(value, "The place")
    known_keys(given, PLACE_KEYS, "The place")
    volume, air, mixing = given.get("volume_m3"), given.get("air_m3_h"), given.get("mixing_k")
    place = Place(
        volume_m3=None if volume is None else above_zero(volume, "The place, volume_m3"),
        air_m3_h=None if air is None else number(air, "The place, air_m3_h", 0, 100_000, " m³/h"),
        mixing_k=UNKNOWN_MIXING if mixing is None else number(mixing, "The place, mixing_k", 1, 20),
        near_field=read_near_field(given.get("near_field") or {}),
        mixing_known=mixing is not None,
    )
    small = volume_m3(place.near_field)
    if place.volume_m3 is not None and small > place.volume_m3:
        says = f"a near field of at most its {place.volume_m3:g} m³ was expected, not {small:.3g} m³"
        raise MixtureError(f"The place, near_field: {says}; give a smaller radius_m.")
    return place


def read_near_field(value: object) -> NearField:
    """Return the near field, the usual one where nothing is given."""
    given, usual = an_object(value, "The place, near_field"), NearField()
    known_keys(given, ("radius_m", "air_speed_m_min"), "The place, near_field")
    radius, speed = given.get("radius_m"), given.get("air_speed_m_min")
    return NearField(
        usual.radius_m if radius is None else number(radius, "The place, near_field, radius_m", 0.1, 5, " m"),
        usual.air_speed_m_min
        if speed is None
        else number(speed, "The place, near_field, air_speed_m_min", 0.1, 100, " m/min"),
    )


def read_emission(value: object, at: int) -> Emission:
    """Return one emission; `at` counts from 1. A substance that only drifts is a mist unless it is said."""
    given = an_object(value, f"Emission {at}")
    known_keys(given, EMISSION_KEYS, f"Emission {at}")
    name = words(given.get("name"), f"Emission {at}, name")
    place, grams = f"Emission {at} ({name})", given.get("grams")
    cas = "" if given.get("cas") is None else cas_number(given["cas"], f"{place}, cas")
    known = substances().get(cas)
    usual = "mist" if known is not None and known.filters["US"] == DRIFTS else "vapour"
    limits = given.get("limits")
    return Emission(
        name=name,
        cas=cas,
        grams=None if grams is None else number(grams, f"{place}, grams", 0, 100_000, " g"),
        form=one_of(given.get("form") or usual, FORMS, f"{place}, form"),
        hazards=read_hazards(given.get("hazards"), f"{place}, hazards")[0],
        typed=() if limits is None else read_typed(limits, place),
    )


def read_typed(value: object, place: str) -> tuple[Limit, ...]:
    """Return the limits that the shop typed, two units of one kind and origin joined."""
    found: dict[tuple[str, str], dict[str, float]] = {}
    for at, row in enumerate(a_list(value, f"{place}, limits"), 1):
        here = f"{place}, limit {at}"
        given = an_object(row, here)
        known_keys(given, LIMIT_KEYS, here)
        kind = one_of(given.get("kind"), TYPED_KINDS, f"{here}, kind")
        unit = one_of(given.get("unit"), UNITS, f"{here}, unit")
        if (unit == "%") != (kind == LEL):
            raise MixtureError(f"{here}, unit: % was expected for LEL, ppm, mg/m3 or ug/m3 for all others.")
        source = words(given.get("from"), f"{here}, from")
        field, amount = in_unit(above_zero(given.get("value"), f"{here}, value"), unit)
        if field in found.setdefault((source, kind), {}):
            raise MixtureError(f"{here}: “{source}” gives this {kind} twice in one unit.")
        found[source, kind][field] = amount
    return tuple(
        Limit(source, kind, units.get("ppm"), units.get("mg_m3"), "typed")
        for (source, kind), units in found.items()
    )


def in_unit(value: float, unit: str) -> tuple[str, float]:
    """Return which field a typed value goes into, and the value in its unit."""
    if unit == "ppm":
        return "ppm", value
    if unit == "%":
        return "ppm", value * 1e4
    return "mg_m3", value * (0.001 if unit[0] in "uµ" else 1.0)
