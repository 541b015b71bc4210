"""What a measurement leaves to the model: other work, other substances, fire, named masks; the day's sum."""

from dataclasses import replace
from datetime import timedelta

from safety.air.values import Limit
from tests.inventory.precheck.airs import BAY_2, BRACK, coating, finding, said, wiping
from tests.inventory.precheck.cases import COAT, FRIDAY
from tests.inventory.precheck.measurings import TWA, bay, measured, samples

STEP = wiping(100)


def test_what_something_else_lets_go_there_too_is_left_to_the_model() -> None:
    beside = replace(STEP, code="SREDKLNB", job="000000000003", name="Red van wipe", person="HINSKLNB")
    asked = finding("air.exposure", STEP, place=bay(measured()), others=[beside])
    assert asked.grade == "ask"
    assert (
        "The measurement of Hollin panel wipe does not cover its isopropanol: other work lets it go there, "
        "too." in asked.because
    )


def test_a_substance_that_was_not_measured_still_asks() -> None:
    """The coating lets butyl acetate and ammonia go: the wipe's measurement says nothing of them."""
    both = replace(STEP, uses=(*STEP.uses, *coating(40).uses))
    asked = finding("air.exposure", both, place=bay(measured()))
    assert asked.grade == "ask"
    assert "ammonia" in asked.says


def test_a_measurement_ends_neither_what_burns_nor_what_a_mask_is_named_for() -> None:
    closed = bay(measured(*samples(1, 1, 1), minutes=60), place=replace(BAY_2.place, air_m3_h=0.0))
    big = wiping(100_000 / 1000 * 20)
    before = dict(said(big, place=replace(closed, measurements=())))
    assert before["air.lel"] == "stop"
    assert dict(said(big, place=closed))["air.lel"] == "stop"
    fluoride = measured(
        *samples(0.1, 0.1, 0.1, cas="7664-39-3", name="Hydrogen fluoride", kind=TWA), product=BRACK.code
    )
    assert dict(said(wiping(60, BRACK), place=bay(fluoride)))["air.named_protection"] == "stop"


def test_the_day_sums_what_was_measured_where_it_stands_and_the_model_elsewhere() -> None:
    """Two wipes of 150 ml against 20 ppm typed are 59 % each by the model; measured 1.9 ppm are 9.5 %."""
    typed = (Limit("national list, 2026", TWA, 20.0, None, "typed"),)
    more: dict[str, object] = {"regime": "EU", "limits": {"67-63-0": typed}}
    later = replace(
        wiping(150), code=COAT.code, name="Second wipe", starts_at=FRIDAY + timedelta(hours=1),
        ends_at=FRIDAY + timedelta(hours=1, minutes=30),
    )  # fmt: skip
    assert "air.shift" in dict(said(wiping(150), later, **more))
    place = bay(measured(*samples(1.9, 1.8, 1.7, kind=TWA)))
    assert "air.shift" not in dict(said(wiping(150), later, place=place, **more))
    over = bay(measured(*samples(10.2, kind=TWA)))
    told = finding("air.shift", wiping(150), later, place=over, **more)
    assert "Panel wipe 59 %, Second wipe 59 %." in told.because, "what decides nothing leaves the larger"
