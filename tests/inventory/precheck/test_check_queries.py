"""The check over the shelf as the ledger keeps it: what is loaded, in how many queries, who gives way."""

import json
from datetime import date, timedelta
from io import StringIO

import pytest
from django.core.management import CommandError, call_command
from django.db import connection
from django.test.utils import CaptureQueriesContext

from inventory.models import Container, Job, Place, Step
from inventory.precheck import queries
from inventory.stock.rules.acts import Act
from safety.models import DataSheet, SheetVersion
from tests import world as w
from tests.world import ML, NOON

pytestmark = pytest.mark.django_db
TOMORROW = NOON + timedelta(days=1)


def sheeted(product):
    """Give a product a confirmed sheet, so that only what a test is about speaks."""
    sheet = DataSheet.objects.create(supplier="Orlo Supply", title=product.name)
    SheetVersion.objects.create(
        sheet=sheet, revision_on=date(2025, 1, 1), typed_on=date(2025, 2, 1), confirmed_on=date(2025, 2, 1),
        confirmed_by="Ines",
    )  # fmt: skip
    product.sheet = sheet
    product.save()
    return product


def said(job: Job, at=NOON) -> list[tuple[str, str]]:
    """Return what the check says of the shelf; of the car, air and people it speaks under dotted codes."""
    job = Job.objects.select_related("shop", "vehicle").get(pk=job.pk)
    return [(one.grade, one.says) for one in queries.check(job, at).check.findings if "." not in one.code]


def shelf_findings(job: Job) -> list[str]:
    """Return the codes of what the check says of the shelf."""
    return [one.code for one in queries.check(job, NOON).check.findings if "." not in one.code]


def wiping(world: w.World, wipe, ml: int, starts_at=TOMORROW, **facts: object) -> Job:
    job = w.job(world, starts_at, **facts)  # type: ignore[arg-type]
    w.need(w.step(job), wipe, ml * ML)
    return job


def test_an_earlier_job_takes_its_share_first_and_a_cancelled_one_gives_it_back_at_once(
    shop: w.World,
) -> None:
    wipe = sheeted(w.hollin(shop))
    w.bottle(shop, wipe, 200 * ML)
    first, later = wiping(shop, wipe, 60), wiping(shop, wipe, 180, TOMORROW + timedelta(days=1))
    assert said(first) == []
    assert said(later) == [("ask", "Hollin panel wipe: 180 ml needed, 140 ml free.")]

    Job.objects.filter(pk=first.pk).update(state=Job.State.CANCELLED)

    assert said(later) == []


def test_a_job_that_moves_behind_another_gives_way_to_it_at_once(shop: w.World) -> None:
    wipe = sheeted(w.hollin(shop))
    w.bottle(shop, wipe, 200 * ML)
    first, later = wiping(shop, wipe, 60), wiping(shop, wipe, 180, TOMORROW + timedelta(days=1))

    for row in (first, first.steps.get()):
        row.starts_at += timedelta(days=5)
        row.ends_at += timedelta(days=5)
        row.save()

    assert said(later) == []
    assert said(first) == [("ask", "Hollin panel wipe: 60 ml needed, 20 ml free.")]


def test_what_was_used_on_a_job_is_not_wanted_again(shop: w.World) -> None:
    wipe = sheeted(w.hollin(shop))
    bottle = w.bottle(shop, wipe, 180 * ML)
    Container.objects.update(labelled_at=NOON)
    job = wiping(shop, wipe, 180)
    step = job.steps.get()
    use = Act("use", NOON, source=bottle.code, amount=100 * ML, job=job.code, step=step.code)
    line = w.record(shop, use)[-1]
    assert said(job) == []
    assert [need.amount for need in queries.open_needs(shop.shop)] == [80 * ML]

    w.record(shop, Act("reverse", NOON, reverses=line.seq))

    assert [need.amount for need in queries.open_needs(shop.shop)] == [180 * ML]


def test_a_signed_step_wants_nothing_more(shop: w.World) -> None:
    job = wiping(shop, sheeted(w.hollin(shop)), 180)
    Step.objects.filter(job=job).update(signed_at=NOON, signed_by=shop.tomas)

    assert said(job) == []


def test_a_job_over_two_days_is_judged_step_by_step(shop: w.World) -> None:
    coating = sheeted(w.tidewall(shop))
    w.bottle(shop, coating, 50 * ML, expires_on=TOMORROW.date())
    job = w.job(shop, TOMORROW)
    w.need(w.step(job, "First layer"), coating, 20 * ML)
    w.need(w.step(job, "Second layer", after_hours=24), coating, 20 * ML)

    says = said(job)

    assert len(says) == 1
    assert says[0][0] == "stop"
    assert says[0][1].endswith("dies before its step.")
    checked = queries.check(Job.objects.select_related("shop", "vehicle").get(), NOON)
    assert [row.finding is None for row in checked.standings] == [True, False]
    assert checked.headline.says == "Not yet: one thing must change before Friday 12:00."


def test_a_lot_recalled_after_booking_stops_every_job_that_needs_it(shop: w.World) -> None:
    coating = sheeted(w.tidewall(shop))
    bottle = w.bottle(shop, coating, 30 * ML, lot="T-22")
    job = w.job(shop)
    w.need(w.step(job), coating, 20 * ML)
    assert said(job) == []

    lot = bottle.lots.get()
    w.record(
        shop, Act("quarantine", NOON, lot=lot.code, facts={"reason": "maker's notice 12", "recalled": True})
    )

    assert said(job) == [
        ("stop", f"Tidewall coating {bottle.code[:4]} {bottle.code[4:]} is recalled: maker's notice 12.")
    ]


NOTHING_HERE = ": there is nothing of it here, and Panel wipe cannot be done."


def test_what_stands_at_the_waste_point_serves_nobody_and_stops_nobody(shop: w.World) -> None:
    wipe = sheeted(w.hollin(shop))
    waste = Place.objects.create(shop=shop.shop, name="Waste", kind="waste")
    job = wiping(shop, wipe, 180)
    w.bottle(shop, wipe, 500 * ML, place=waste)
    assert said(job) == [("ask", f"Hollin panel wipe: 180 ml needed, 0 ml free{NOTHING_HERE}")]

    w.bottle(shop, wipe, 500 * ML)

    assert said(job) == []


def test_a_bottle_on_a_tray_in_the_bay_stands_in_the_bay(shop: w.World) -> None:
    coating = sheeted(w.tidewall(shop))
    tray = Place.objects.create(shop=shop.shop, name="Tray", kind="tray", within=shop.bay_2)
    job = w.job(shop)
    w.need(w.step(job, bay=shop.bay_2), coating, 20 * ML)
    w.bottle(shop, coating, 30 * ML, opened_at=NOON - timedelta(days=3), expires_on=NOON.date())
    assert [grade for grade, _ in said(job)] == ["stop"]

    w.bottle(shop, coating, 30 * ML, place=tray)

    assert said(job) == []


def test_another_shop_s_jobs_and_bottles_change_nothing(shop: w.World) -> None:
    wipe = sheeted(w.hollin(shop))
    w.bottle(shop, wipe, 180 * ML)
    job = wiping(shop, wipe, 180)
    other = w.larkmoor("elsewhere")
    wiping(other, w.hollin(other), 500, NOON)

    assert said(job) == []
    assert len(queries.open_needs(shop.shop)) == 1


def many(world: w.World, steps: int) -> Job:
    job = w.job(world)
    for at in range(steps):
        product = w.product(world, f"Polish {job.code} {at}", "polish")
        w.need(w.step(job, f"Step {at}", bay=world.bay_1, person=world.tomas), product, 10 * ML)
        w.bottle(world, product, 5 * ML)
    return Job.objects.select_related("shop", "vehicle").get(pk=job.pk)


def test_a_check_asks_the_database_as_often_for_fifteen_steps_as_for_three(shop: w.World) -> None:
    small, large = many(shop, 3), many(shop, 15)
    with CaptureQueriesContext(connection) as few:
        assert len(shelf_findings(small)) == 6
    with CaptureQueriesContext(connection) as more:
        assert len(shelf_findings(large)) == 30

    assert len(more) == len(few) <= 40


def test_the_verdicts_of_many_jobs_cost_no_more_queries_than_of_one(shop: w.World) -> None:
    one = many(shop, 2)
    with CaptureQueriesContext(connection) as few:
        queries.verdicts(shop.shop, NOON, [one])
    jobs = [one, *(many(shop, 2) for _ in range(5))]
    with CaptureQueriesContext(connection) as more:
        found = queries.verdicts(shop.shop, NOON, jobs)

    assert len(more) == len(few)
    assert set(found) == {job.code for job in jobs}
    assert found[one.code].headline.says == "Five questions to answer before Thursday 12:00."


def test_the_command_prints_one_document_and_nothing_else(shop: w.World) -> None:
    wipe = sheeted(w.hollin(shop))
    w.bottle(shop, wipe, 140 * ML)
    job = wiping(shop, wipe, 180)
    out = StringIO()

    call_command("precheck", job.code.lower(), "--json", at="2026-11-25T12:00", stdout=out)

    document = json.loads(out.getvalue())
    assert set(document) == {"job", "verdict", "findings"}
    assert (document["job"], document["verdict"]) == (job.code, "ask")
    assert list(document["findings"][0]) == ["code", "grade", "says", "because", "do", "source", "about"]
    assert document["findings"][0]["says"] == "Hollin panel wipe: 180 ml needed, 140 ml free."


@pytest.mark.parametrize(
    ("job", "at", "error"),
    [
        ("nonsense", None, "JOB: “nonsense” is no job's code. A code such as JDPX KLNB was expected."),
        (None, "soon", "--at: “soon” is no instant. One such as 2026-11-27T09:00 was expected."),
    ],
)
def test_the_command_refuses_what_it_cannot_read(
    shop: w.World, job: str | None, at: str | None, error: str
) -> None:
    out = StringIO()

    with pytest.raises(CommandError) as refused:
        call_command("precheck", job or w.job(shop).code, "--json", at=at, stdout=out)

    assert refused.value.returncode == 2
    assert json.loads(out.getvalue()) == {"error": error}
