"""Weather and air as the database keeps them: what is loaded, whose it is, and in how many queries."""

from datetime import date, timedelta
from decimal import Decimal

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from inventory.models import (
    AirLimit,
    IgnitionSource,
    Job,
    Place,
    Product,
    Profile,
    Shop,
    Step,
    WeatherReading,
)
from inventory.precheck import queries
from inventory.precheck.questions.topics.air import AirFacts
from inventory.precheck.questions.topics.weather import WeatherFacts
from safety.models import DataSheet, SheetVersion
from safety.weather import ProductWindow
from tests import world as w
from tests.world import ML, NOON

pytestmark = pytest.mark.django_db
TOMORROW = NOON + timedelta(days=1)
ISOPROPANOL = {"name": "Propan-2-ol", "cas": "67-63-0", "percent": [60, 70], "hazards": ["Flam. Liq. 2 H225"]}


def composed(product: Product, *rows: dict[str, object], confirmed: bool = True, **facts: object) -> Product:
    """Give a product a sheet with these ingredients."""
    sheet = DataSheet.objects.create(supplier="Orlo Supply", title=product.code)
    SheetVersion.objects.create(
        sheet=sheet, revision_on=date(2025, 1, 1), typed_on=date(2025, 2, 1), composition=list(rows),
        confirmed_on=date(2025, 2, 1) if confirmed else None, confirmed_by="Ines" if confirmed else "",
        **facts,
    )  # fmt: skip
    product.sheet, product.density_mg_per_l = sheet, 880_000
    product.save()
    return product


def measured(place: Place, by: object, hours_ago: float, air: str = "20.0") -> WeatherReading:
    """Type in a reading."""
    return WeatherReading.objects.create(
        place=place, taken_at=TOMORROW - timedelta(hours=hours_ago), air_c=Decimal(air),
        humidity=Decimal("50.0"), panel_c=Decimal("19.0"), by=by,
    )  # fmt: skip


def aired(place: Place) -> Place:
    """Say what the air of a bay does."""
    place.volume_m3, place.air_m3_h, place.mixing_k = 160, 960, Decimal("3.0")
    place.save()
    return place


def wiping(shop: w.World, product: Product, ml: int = 180, **facts: object) -> Job:
    """Book a wipe in Bay 2."""
    job = w.job(shop, TOMORROW)
    w.need(w.step(job, bay=shop.bay_2, person=shop.tomas, **facts), product, ml * ML)  # type: ignore[arg-type]
    return Job.objects.select_related("shop", "vehicle").get(pk=job.pk)


def air(job: Job) -> AirFacts:
    """Return the loaded air of a job."""
    return queries.facts_of(job.shop, [job], ["steps", "air"])[job.id].air


def weather(job: Job) -> WeatherFacts:
    """Return the loaded weather of a job."""
    return queries.facts_of(job.shop, [job], ["steps", "weather"])[job.id].weather


def told(job: Job, code: str, at: object = NOON) -> list[str]:
    """Return the sentences of a code."""
    return [one.says for one in queries.check(job, at).check.findings if one.code == code]  # type: ignore[arg-type]


def test_a_wipe_in_a_measured_bay_is_judged_from_sheet_density_and_amount(shop: w.World) -> None:
    """180 ml · 0.88 · 70 % are 111 g; of 234 ml they were 118 % by hand (airs.py), so of 180 ml 91 %."""
    aired(shop.bay_2)
    job = wiping(shop, composed(w.hollin(shop), ISOPROPANOL))
    assert told(job, "air.exposure") == [
        "Panel wipe, Bay 2: who works here breathes 91.2 % of the 15-minute limit (isopropanol)."
    ]


def test_a_sheet_that_nobody_confirmed_says_nothing_of_what_is_in_it(shop: w.World) -> None:
    aired(shop.bay_2)
    product = composed(w.hollin(shop), ISOPROPANOL, confirmed=False)
    job = wiping(shop, product)
    assert air(job).makeups[product.code].ingredients == ()
    assert told(job, "air.exposure") == []


def test_of_a_range_the_upper_end_and_of_the_versions_the_newest_confirmed_one_counts(shop: w.World) -> None:
    product = composed(w.hollin(shop), ISOPROPANOL)
    newer = ISOPROPANOL | {"percent": 25}
    SheetVersion.objects.create(
        sheet=product.sheet, revision_on=date(2026, 1, 1), typed_on=date(2026, 1, 2), composition=[newer],
        confirmed_on=date(2026, 1, 2), confirmed_by="Ines",
    )  # fmt: skip
    assert [one.share for one in air(wiping(shop, product)).makeups[product.code].ingredients] == [0.25]
    SheetVersion.objects.filter(revision_on=date(2026, 1, 1)).update(composition=[ISOPROPANOL])
    assert [one.share for one in air(wiping(shop, product)).makeups[product.code].ingredients] == [0.7]


def test_a_place_of_kind_cabin_has_three_cubic_metres_and_no_air_until_it_was_measured(shop: w.World) -> None:
    cabin = Place.objects.create(shop=shop.shop, name="Cabin", kind="cabin")
    job = w.job(shop, TOMORROW)
    w.need(w.step(job, bay=cabin), composed(w.hollin(shop), ISOPROPANOL), 60 * ML)
    job = Job.objects.select_related("shop", "vehicle").get(pk=job.pk)
    assert told(job, "air.closed_space") == [
        "Panel wipe, Cabin: something flammable is used in 3 m³ without air flow."
    ]
    cabin.air_m3_h = 900
    cabin.save()
    assert told(job, "air.closed_space") == []


@pytest.mark.parametrize(
    ("touches", "in_the_cabin", "because"),
    [
        (["interior"], True, "the interior alone"),
        (["interior", "glass"], True, "the panes are wiped from inside as well"),
        (["interior", "paint"], True, "nobody says how much of it went inside: all of it counts there"),
        (["glass"], False, "glass alone is wiped from the bay"),
        (["glass", "paint"], False, "so are two areas outside"),
        (None, False, "it does not say, and a panel wipe is not for the interior"),
    ],
)
def test_a_step_that_touches_the_interior_is_in_the_cabin_with_all_that_it_takes(
    shop: w.World, touches: list[str] | None, in_the_cabin: bool, because: str
) -> None:
    aired(shop.bay_2)
    job = wiping(shop, composed(w.hollin(shop), ISOPROPANOL), 100)
    Step.objects.filter(job=job).update(touches=touches)
    cabin = ["Panel wipe, the car's cabin in Bay 2: something flammable is used in 3 m³ without air flow."]
    assert told(job, "air.closed_space") == (cabin if in_the_cabin else []), because


def test_a_limit_that_the_shop_typed_judges(shop: w.World) -> None:
    aired(shop.bay_2)
    Shop.objects.filter(pk=shop.shop.pk).update(country="DE")
    job = wiping(shop, composed(w.hollin(shop), ISOPROPANOL))
    assert told(job, "air.no_limit") == ["Panel wipe, Bay 2: no limit was found for isopropanol in EU IOELV."]
    AirLimit.objects.create(
        shop=shop.shop, cas="67-63-0", name="isopropanol", ppm=20, source="national, 2026"
    )
    assert told(job, "air.no_limit") == []
    assert told(job, "air.exposure") == [
        "Panel wipe, Bay 2: who works here breathes 70.9 % of the 8-hour limit (isopropanol)."
    ]


def test_ignition_sources_of_the_bay_stop_on_the_day(shop: w.World) -> None:
    aired(shop.bay_2)
    lamp = IgnitionSource.objects.create(place=shop.bay_2, name="Lamp")
    job, day = wiping(shop, composed(w.hollin(shop), ISOPROPANOL)), TOMORROW - timedelta(hours=1)
    assert told(job, "air.ignition") == []
    assert told(job, "air.ignition", day) == [
        "Panel wipe, Bay 2: Lamp is not confirmed off, and isopropanol can catch fire."
    ]
    lamp.state, lamp.said_at, lamp.said_by = "off", day, shop.tomas
    lamp.save()
    assert told(job, "air.ignition", day) == []


def test_another_job_beside_is_seen_and_another_shop_s_is_not(shop: w.World) -> None:
    aired(shop.bay_2)
    wipe = composed(w.hollin(shop), ISOPROPANOL)
    job = wiping(shop, wipe)
    other = w.larkmoor("elsewhere")
    wiping(other, composed(w.hollin(other), ISOPROPANOL))
    assert air(job).others == ()
    alone = told(job, "air.exposure")
    red = wiping(shop, wipe)
    assert [step.job for step in air(job).others] == [queries.key(red.id)]
    assert told(job, "air.exposure") != alone
    Job.objects.filter(pk=red.pk).update(state="cancelled")
    job.shop.refresh_from_db()
    assert told(job, "air.exposure") == alone


def test_the_newest_reading_of_a_bay_counts_and_another_bay_s_does_not(shop: w.World) -> None:
    job = wiping(shop, w.tidewall(shop), 40)
    for hours, temperature in ((3, "11.0"), (1, "22.0"), (2, "12.0")):
        measured(shop.bay_2, shop.tomas, hours, temperature)
    measured(shop.bay_1, shop.tomas, 0.5, "5.0")
    found = weather(job)
    assert {code: one.air_c for code, one in found.readings.items()} == {shop.bay_2.code: 22.0}
    assert (found.coats[0].window, found.coats[0].own) == (ProductWindow(), "")


def test_a_product_s_own_window_comes_from_its_profile(shop: w.World) -> None:
    coating = w.tidewall(shop)
    Profile.objects.create(product=coating, air_from_c=18, air_to_c=24, source="Tidewall's sheet")
    measured(shop.bay_2, shop.tomas, 0.5, "26.0")
    job = wiping(shop, coating, 40)
    at = TOMORROW - timedelta(minutes=10)
    assert told(job, "weather.air", at) == ["Bay 2, Panel wipe: the air is at 26 °C."]
    Profile.objects.all().delete()
    assert told(job, "weather.air", at) == []


def test_nobody_measured_is_asked_near_the_coat_and_not_the_day_before(shop: w.World) -> None:
    job = wiping(shop, w.tidewall(shop), 40)
    assert told(job, "weather.not_measured") == []
    assert told(job, "weather.not_measured", TOMORROW) == ["Nobody has measured Bay 2 for Panel wipe."]


def many(shop: w.World, steps: int) -> Job:
    """Book a job of so many wipes and coats in both bays, beside another job."""
    wipe, coating = (
        Product.objects.get(name="Hollin panel wipe"),
        Product.objects.get(name="Tidewall coating"),
    )
    for job in (w.job(shop, TOMORROW), w.job(shop, TOMORROW)):
        for at in range(steps):
            bay = shop.bay_2 if at % 2 else shop.bay_1
            step = w.step(job, f"Step {at}", after_hours=at / 2, bay=bay, person=shop.tomas)
            w.need(step, wipe if at % 2 else coating, 10 * ML)
    return Job.objects.select_related("shop", "vehicle").get(pk=job.pk)


def test_weather_and_air_ask_the_database_as_often_for_fifteen_steps_as_for_three(shop: w.World) -> None:
    for product in (w.hollin(shop), w.tidewall(shop)):
        composed(product, ISOPROPANOL)
    for bay in (shop.bay_1, shop.bay_2):
        aired(bay)
        measured(bay, shop.tomas, 1)
        IgnitionSource.objects.create(place=bay, name="Lamp")
    small = many(shop, 3)
    with CaptureQueriesContext(connection) as few:
        queries.facts_of(small.shop, [small], ["steps", "weather", "air"])
    large = many(shop, 15)
    with CaptureQueriesContext(connection) as more:
        facts = queries.facts_of(large.shop, [large], ["steps", "weather", "air"])
    assert len(facts[large.id].air.steps) == 15
    assert len(facts[large.id].air.others) > 15
    # One of them asks what the ledger says was used on the car: it comes beside the plan.
    assert len(more) == len(few) <= 17
