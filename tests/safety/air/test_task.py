"""A task's document: what cannot be taken is refused by its place, what is missing is unknown."""

from typing import Any

import pytest

from safety.air.task import TaskError, read_task
from safety.air.values import Limit, NearField
from tests.safety.air.tasks import ISOPROPANOL, document

WIPE = ISOPROPANOL | {"grams": 10}


def limit(**changed: Any) -> dict[str, Any]:
    return {"kind": "TWA", "value": 5, "unit": "ppm", "from": "our country"} | changed


def typed(*limits: Any) -> dict[str, Any]:
    return document(WIPE | {"limits": list(limits)})


REFUSED = [
    ([], "The task: an object was expected, not []."),
    ({}, "The task: “emissions” is missing; a list was expected."),
    (document(), "The task, emissions: at least one was expected."),
    (document(WIPE, minutes=None), "The task: “minutes” is missing; a number was expected."),
    (document(WIPE, minutes=0), "The task, minutes: a number above 0 was expected, not 0."),
    (document(WIPE, minutes=True), "The task, minutes: a number above 0 was expected, not true."),
    (document(WIPE, minutes=961), "The task, minutes: at most 960 was expected, not 961."),
    (document(WIPE, regime="CA"), "The task, regime: one of US, EU, UK was expected, not “CA”."),
    (document(WIPE, regime=None), "The task: “regime” is missing; one of US, EU, UK was expected."),
    (document(WIPE, regime=["US"]), "The task, regime: one of US, EU, UK was expected, not ['US']."),
    (
        document(WIPE, respirator="scarf"),
        "The task, respirator: one of none, ffp1, ffp2, ffp3, quarter, half, full, "
        "powered_half, powered_full, "
        "hood, air_fed was expected, not “scarf”.",
    ),
    (document(WIPE, air_c=200), "The task, air_c: a number from -40 to 120 °C was expected, not 200."),
    (
        document(WIPE, car="red"),
        "The task: there is no key “car”; expected are place, minutes, regime, "
        "emissions, respirator, air_c, panel_c.",
    ),
    (document(WIPE, place={"volume_m3": 0}), "The place, volume_m3: a number above 0 was expected, not 0."),
    (
        document(WIPE, place={"air_m3_h": -1}),
        "The place, air_m3_h: a number from 0 to 100000 m³/h was expected, not -1.",
    ),
    (
        document(WIPE, place={"mixing_k": 0.5}),
        "The place, mixing_k: a number from 1 to 20 was expected, not 0.5.",
    ),
    (
        document(WIPE, place={"near_field": {"radius_m": 9}}),
        "The place, near_field, radius_m: a number from 0.1 to 5 m was expected, not 9.",
    ),
    (
        document(WIPE, place={"volume_m3": 1}),
        "The place, near_field: a near field of at most its 1 m³ was expected, not 1.07 "
        "m³; give a smaller radius_m.",
    ),
    (document({"grams": 1}), "Emission 1, name: a text was expected, not null."),
    (
        document(WIPE, WIPE | {"cas": "67-63-1"}),
        "Emission 2 (isopropanol), cas: the check digit of 67-63-1 would be 0; look for a wrong digit.",
    ),
    (
        document(WIPE | {"grams": -1}),
        "Emission 1 (isopropanol), grams: a number from 0 to 100000 g was expected, not -1.",
    ),
    (
        document(WIPE | {"form": "smoke"}),
        "Emission 1 (isopropanol), form: one of vapour, mist, dust was expected, not “smoke”.",
    ),
    (
        document(WIPE | {"hazards": ["Flam. Liq. 2 H226"]}),
        "Emission 1 (isopropanol), hazards: “Flam. Liq. 2 H226”: Flam. Liq. 2 carries H225, not H226.",
    ),
    (
        typed(limit(kind="8 hours")),
        "Emission 1 (isopropanol), limit 1, kind: one of TWA, short term 15 min, "
        "ceiling, IDLH, LEL was expected, "
        "not “8 hours”.",
    ),
    (
        typed(limit(), limit(unit="%", kind="ceiling")),
        "Emission 1 (isopropanol), limit 2, unit: % was expected for LEL, ppm, mg/m3 or "
        "ug/m3 for all others.",
    ),
    (
        typed(limit(value=0)),
        "Emission 1 (isopropanol), limit 1, value: a number above 0 was expected, not 0.",
    ),
    (typed(limit(**{"from": ""})), "Emission 1 (isopropanol), limit 1, from: a text was expected, not “”."),
    (
        typed(limit(), limit(value=6)),
        "Emission 1 (isopropanol), limit 2: “our country” gives this TWA twice in one unit.",
    ),
]


@pytest.mark.parametrize(("given", "sentence"), REFUSED)
def test_bad_input_is_refused_by_its_place(given: object, sentence: str) -> None:
    with pytest.raises(TaskError) as refused:
        read_task(given)
    assert str(refused.value) == sentence


def test_what_is_missing_is_unknown() -> None:
    task = read_task({"minutes": 5, "regime": "UK", "emissions": [{"name": "something"}]})
    place, [one] = task.place, task.emissions
    assert (place.volume_m3, place.air_m3_h, place.mixing_k, place.mixing_known) == (None, None, 6, False)
    assert (place.near_field, task.respirator, task.air_c, task.panel_c) == (
        NearField(0.8, 4),
        "none",
        None,
        None,
    )
    assert (one.cas, one.grams, one.form, one.hazards, one.typed) == ("", None, "vapour", None, ())


def test_two_units_of_one_limit_are_one_limit_and_micrograms_are_milligrams() -> None:
    [one] = read_task(typed(limit(), limit(unit="mg/m³", value=12))).emissions
    assert one.typed == (Limit("our country", "TWA", 5, 12, "typed"),)
    [one] = read_task(typed(limit(unit="µg/m3", value=20))).emissions
    assert one.typed[0].mg_m3 == pytest.approx(0.02)
    [one] = read_task(typed(limit(unit="%", value=2, kind="LEL"))).emissions
    assert one.typed[0].ppm == 20_000


def test_what_can_only_drift_is_a_mist_unless_it_is_said() -> None:
    lye = {"name": "lye", "cas": "1310-73-2", "grams": 1}
    assert read_task(document(lye)).emissions[0].form == "mist"
    assert read_task(document(lye | {"form": "dust"})).emissions[0].form == "dust"
