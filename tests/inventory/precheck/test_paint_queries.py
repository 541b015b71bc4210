"""A car's paint as the database keeps it: readings of all visits, the shop's own figures, used pads."""

from datetime import timedelta

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from inventory.models import Job, Panel, Reading, Shop, Step
from inventory.precheck import queries
from inventory.precheck.queries import paint
from inventory.precheck.queries.loading import Loading
from inventory.stock.rules.acts import Act
from inventory.trade.paint import Floor, Measured
from inventory.trade.small_goods import SmallGood, Use
from tests import world as w
from tests.world import GRAM, NOON

pytestmark = pytest.mark.django_db
TOMORROW = NOON + timedelta(days=1)


def panels(vehicle, *names: str, **facts: object) -> list[Panel]:
    made = {"substrate": "steel", **facts}
    return [
        Panel.objects.create(vehicle=vehicle, position=n, name=name, **made) for n, name in enumerate(names)
    ]


def read(world: w.World, panel: Panel, job: Job, um: int | None, when: str = "before", at=NOON) -> Reading:
    return Reading.objects.create(panel=panel, job=job, when=when, um=um, taken_at=at, by=world.tomas)


def cutting(world: w.World, of: Job, grade: str = "two_step", *products, passes: int = 2, **when) -> Step:
    step = w.step(of, "Correction", stage="correct", **when)
    Step.objects.filter(pk=step.pk).update(cut=grade, passes=passes)
    for product in products:
        w.need(step, product, GRAM if product.kind == "compound" else 1)
    step.refresh_from_db()
    return step


def load(job: Job):
    fresh = Job.objects.select_related("shop", "vehicle").get(pk=job.pk)
    return paint.load(Loading(fresh.shop, [fresh])).get(job.pk)


def said(job: Job) -> list[tuple[str, str]]:
    fresh = Job.objects.select_related("shop", "vehicle").get(pk=job.pk)
    found = queries.check(fresh, NOON).check.findings
    return [(one.grade, one.says) for one in found if one.code.startswith(("paint.", "pad.", "towel."))]


def test_a_job_that_cuts_nothing_asks_the_database_nothing_about_paint(shop: w.World) -> None:
    job = w.job(shop)
    panels(job.vehicle, "bonnet")
    w.need(w.step(job), w.hollin(shop), 1)
    loading = Loading(shop.shop, [job])
    assert loading.step_rows
    assert loading.work_rows
    assert loading.containers == []

    with CaptureQueriesContext(connection) as asked:
        assert paint.load(loading) == {}

    assert len(asked) == 0


def test_a_lamp_that_is_sanded_takes_no_paint(shop: w.World) -> None:
    job = w.job(shop)
    step = cutting(shop, job, "sanding")
    assert said(job) == [("ask", "Paint is to be cut, and no panel of this car is listed.")]

    Step.objects.filter(pk=step.pk).update(touches=["lamps"])

    assert said(job) == []


def test_the_floor_and_the_unit_are_the_shop_s(shop: w.World) -> None:
    Shop.objects.update(film_unit="mil", floor_whole_um=110, floor_clear_um=45)
    job = w.job(shop)
    cutting(shop, job)
    facts = load(job)
    assert facts.floor == Floor(110, 45, finish_only_um=110)
    assert facts.unit == "mil"


def test_a_reading_of_an_earlier_visit_speaks_for_this_one(shop: w.World) -> None:
    vehicle = w.car(shop)
    [bonnet] = panels(vehicle, "bonnet")
    past = w.job(shop, NOON - timedelta(days=100), vehicle=vehicle)
    read(shop, bonnet, past, 92, at=NOON - timedelta(days=100))
    job = w.job(shop, vehicle=vehicle)
    cutting(shop, job)
    assert said(job) == [("ask", "Thin paint: bonnet 92 µm of whole film.")]


def test_another_car_s_bonnet_is_no_bonnet_of_this_one(shop: w.World) -> None:
    other = w.job(shop, vehicle=w.car(shop, "Red van"))
    [theirs] = panels(other.vehicle, "bonnet")
    read(shop, theirs, other, 92)
    job = w.job(shop)
    [mine] = panels(job.vehicle, "bonnet")
    cutting(shop, job)
    assert [one.code for one in load(job).panels] == [mine.code]
    assert said(job) == [("ask", "Bonnet is to be cut, and its paint was not read.")]


def visited(world: w.World, days_ago: int, before: int, after: int, *products, passes: int = 2) -> Job:
    """An earlier visit of another car in which one cut was measured."""
    at = NOON - timedelta(days=days_ago)
    job = w.job(world, at, vehicle=w.car(world, f"Car of {days_ago} days ago"))
    [bonnet] = panels(job.vehicle, "bonnet")
    cutting(world, job, "two_step", *products, passes=passes)
    read(world, bonnet, job, before, at=at)
    read(world, bonnet, job, after, "after", at + timedelta(hours=4))
    return job


def test_what_the_shop_measured_with_the_same_abrasive_pad_and_passes_is_its_history(shop: w.World) -> None:
    marl, pad = w.marl(shop), w.product(shop, "Dunnock pad", "pad", dimension="pieces")
    other = w.product(shop, "Rask compound", "compound", dimension="mass")
    visited(shop, 30, 130, 128, marl, pad)
    visited(shop, 20, 140, 139, marl, pad)
    visited(shop, 10, 120, 113, other, pad)
    visited(shop, 400, 120, 110, marl, pad)
    job = w.job(shop)
    cutting(shop, job, "two_step", marl, pad)
    assert sorted(load(job).history, key=lambda one: one.um) == [
        Measured(marl.code, pad.code, 2, 1),
        Measured(marl.code, pad.code, 2, 2),
    ]


def test_cuts_that_named_no_abrasive_teach_nothing(shop: w.World) -> None:
    visited(shop, 30, 130, 120)
    job = w.job(shop)
    cutting(shop, job)
    assert load(job).history == ()


def padded(world: w.World):
    """A set of pads that is used again, of the bay."""
    pad = w.product(world, "Dunnock pad", "pad", dimension="pieces", wear_uses=30, needs_sheet=False)
    return pad, w.bottle(world, pad, 1, opened_at=NOON - timedelta(days=20), place=world.bay_1)


def test_a_pad_that_carried_compound_asks_before_a_polish(shop: w.World) -> None:
    marl, (pad, set_) = w.marl(shop, needs_sheet=False), padded(shop)
    earlier = w.job(shop, NOON - timedelta(days=2), vehicle=w.car(shop, "Red van"))
    step = w.step(earlier, "Cut")
    w.need(step, marl, GRAM)
    w.record(shop, Act("use", NOON - timedelta(days=2), source=set_.code, amount=0, job=earlier.code,
                       step=step.code))  # fmt: skip
    job = w.job(shop)
    polish = w.step(job, "Polish")
    w.need(polish, "polish", GRAM)
    w.need(polish, pad, 1)
    assert load(job).goods == {set_.code: SmallGood(set_.code, "Dunnock pad", "pad", "compound")}
    assert load(job).uses == {polish.code: Use("polish")}
    assert said(job) == [
        ("ask", "Dunnock pad carried compound, coarser than this step, and was not washed."),
        ("ask", "Paint is to be cut, and no panel of this car is listed."),
    ]


def test_a_pad_fresh_from_a_box_has_no_past(shop: w.World) -> None:
    pad = w.product(shop, "Dunnock pad", "pad", dimension="pieces", needs_sheet=False)
    box = w.bottle(shop, pad, 5, opened_at=NOON - timedelta(days=20))
    w.record(shop, Act("use", NOON - timedelta(days=2), source=box.code, amount=1))
    job = w.job(shop)
    w.need(w.step(job, "Polish"), pad, 1)
    assert load(job) is None
    assert said(job) == []


def test_a_pad_used_on_nobody_knows_what_is_told(shop: w.World) -> None:
    pad, set_ = padded(shop)
    w.record(shop, Act("use", NOON - timedelta(days=2), source=set_.code, amount=0))
    job = w.job(shop)
    w.need(w.step(job, "Polish"), pad, 1)
    assert said(job) == [("tell", "Nobody has recorded what Dunnock pad carried before.")]


def test_a_check_asks_as_many_queries_about_paint_for_fifteen_steps_as_for_three(shop: w.World) -> None:
    marl, (pad, _) = w.marl(shop), padded(shop)
    visited(shop, 30, 130, 128, marl, pad)

    def planned(name: str, steps: int) -> Job:
        job = w.job(shop, vehicle=w.car(shop, name))
        for panel in panels(job.vehicle, *[f"panel {n}" for n in range(steps)]):
            read(shop, panel, job, 140)
        for n in range(steps):
            step = cutting(shop, job, "finish", marl, pad, after_hours=n)
            step.panels.set(job.vehicle.panels.all()[n : n + 1])
        return job

    counted = []
    for jobs in ([planned("Small", 3)], [planned("Large", 15)], [planned("A", 3), planned("B", 3)]):
        loading = Loading(shop.shop, jobs)
        assert all([loading.step_rows, loading.work_rows, loading.containers])
        with CaptureQueriesContext(connection) as asked:
            found = paint.load(loading)
        assert {len(found[job.pk].cuts) for job in jobs} == {len(jobs[0].steps.all())}
        counted.append(len(asked))
    # pads: uses and cars' surfaces; panels; readings; panels of the cuts; earlier cuts and their readings
    assert counted == [6, 6, 6]
