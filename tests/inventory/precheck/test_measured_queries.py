"""What the check is told of measurements and exhaust: of which place, and not what was withdrawn."""

from datetime import date, timedelta

import pytest

from inventory.models import AirMeasurement, AirSample, LocalExhaust
from inventory.precheck.questions.topics.measured import Exhaust, Measurement
from inventory.precheck.views.ways import way_out
from safety.air.measured import Sample
from tests import world as w
from tests.inventory.precheck.airs import BRACK as ACID
from tests.inventory.precheck.airs import finding, wiping
from tests.inventory.precheck.test_air_queries import ISOPROPANOL, air, aired, composed, told
from tests.inventory.precheck.test_air_queries import wiping as booked
from tests.world import ML

pytestmark = pytest.mark.django_db
MADE, ENDS = date(2026, 6, 2), date(2027, 6, 1)


def arm(shop: w.World, **changed: object) -> LocalExhaust:
    """Write an arm of Bay 2 down."""
    facts = {
        "place": shop.bay_2, "name": "Extraction arm", "catches": "vapour", "examined_on": MADE,
        "until_on": ENDS, "proof": "folder 3", "kept_by": shop.ines, **changed,
    }  # fmt: skip
    return LocalExhaust.objects.create(**facts)  # type: ignore[arg-type]


def kept(shop: w.World, product: object, **changed: object) -> AirMeasurement:
    """Write a measurement of 200 ml in 60 minutes down, three results of 49, 48 and 47 ppm."""
    facts = {
        "place": shop.bay_2, "product": product, "amount": 200 * ML, "minutes": 60, "measured_on": MADE,
        "until_on": ENDS, "by_whom": "A. Finch", "kept_by": shop.ines, **changed,
    }  # fmt: skip
    row = AirMeasurement.objects.create(**facts)  # type: ignore[arg-type]
    for value in (49, 48, 47):
        AirSample.objects.create(
            measurement=row, name="Propan-2-ol", cas="67-63-0", against="short term 15 min", value=value,
            unit="ppm",
        )  # fmt: skip
    return row


@pytest.fixture
def shop() -> w.World:
    """The shop, with the air of Bay 2 known."""
    world = w.larkmoor()
    aired(world.bay_2)
    return world


def test_what_was_withdrawn_or_made_elsewhere_is_not_told(shop: w.World) -> None:
    wipe = composed(w.hollin(shop), ISOPROPANOL)
    kept(shop, wipe, withdrawn_on=date(2026, 7, 1))
    kept(shop, wipe, place=shop.bay_1)
    arm(shop, place=shop.bay_1)
    place = air(booked(shop, wipe)).places[shop.bay_2.code]
    assert (place.measurements, place.exhausts) == ((), ())


def test_the_newest_measurement_comes_first_with_all_its_results(shop: w.World) -> None:
    wipe = composed(w.hollin(shop), ISOPROPANOL)
    kept(shop, wipe)
    kept(shop, wipe, measured_on=MADE + timedelta(days=30), exhaust=arm(shop))
    place = air(booked(shop, wipe)).places[shop.bay_2.code]
    result = Sample("Propan-2-ol", "67-63-0", "short term 15 min", 49.0, "ppm")
    newest = Measurement(
        wipe.code, wipe.name, "volume", 200 * ML, 60, "Extraction arm", date(2026, 7, 2), ENDS, "A. Finch",
        (result, Sample(**{**vars(result), "value": 48.0}), Sample(**{**vars(result), "value": 47.0})),
    )  # fmt: skip
    assert place.measurements[0] == newest
    assert [one.measured_on for one in place.measurements] == [date(2026, 7, 2), MADE]
    assert place.exhausts == (Exhaust("Extraction arm", "vapour", MADE, ENDS),)


def test_a_measured_wipe_of_the_database_is_told_and_another_product_s_still_asks(shop: w.World) -> None:
    """100 ml in an hour keep to 200 ml in an hour."""
    wipe = composed(w.hollin(shop), ISOPROPANOL)
    job = booked(shop, wipe, 100)
    assert told(job, "air.exposure")
    row = kept(shop, w.marl(shop))
    assert told(job, "air.exposure"), "of another product"
    row.product = wipe
    row.save()
    assert told(job, "air.exposure") == []


def test_a_step_that_says_local_exhaust_asks_until_an_arm_is_examined(shop: w.World) -> None:
    job = booked(shop, composed(w.hollin(shop), ISOPROPANOL), 5)
    assert told(job, "air.local_exhaust") == [], "it does not count on any"
    job.steps.update(local_exhaust=True)
    assert told(job, "air.local_exhaust") == [
        "Panel wipe counts on local exhaust, and none in Bay 2 that catches vapour is examined: none is "
        "written down."
    ]
    arm(shop)
    assert told(job, "air.local_exhaust") == []


def test_a_step_without_products_that_says_local_exhaust_asks_too(shop: w.World) -> None:
    job = w.job(shop, w.NOON + timedelta(days=1))
    step = w.step(job, "Sanding", bay=shop.bay_2, person=shop.tomas)
    assert told(job, "air.local_exhaust") == []
    step.local_exhaust = True
    step.save()
    assert told(job, "air.local_exhaust") == [
        "Sanding counts on local exhaust, and none in Bay 2 is examined: none is written down."
    ]


def test_the_buttons_lead_to_what_ends_a_finding() -> None:
    stop = way_out(finding("air.named_protection", wiping(60, ACID)), "JDPXKLNB")
    assert stop is not None
    assert (stop.label, stop.to) == ("Change the step", "/jobs/JDPXKLNB/steps/SWPXKLNB/")
    ask = way_out(finding("air.local_exhaust", wiping(10, exhaust=True)), "JDPXKLNB")
    assert ask is not None
    assert (ask.label, ask.to) == ("Write its examination down", "/bays/PBAYTWOX/")
    curve = way_out(finding("air.exposure", wiping(100)), "JDPXKLNB")
    assert curve is not None
    assert curve.label == "See the curve"
