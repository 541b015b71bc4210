"""What meets on a car and in its bay, from the database: rinses, other cars, bottles that stand there."""

from datetime import timedelta

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from inventory.models import Job, Profile, Step, StepNeed
from inventory.precheck import queries
from inventory.stock.rules.acts import Act
from tests import world as w
from tests.inventory.precheck.cases import NOON

pytestmark = pytest.mark.django_db
ML = 1_000
TOMORROW = NOON + timedelta(days=1)


def product(world: w.World, name: str, kind: str, *groups: str):
    made = w.product(world, name, kind, needs_sheet=False)
    Profile.objects.create(
        product=made, groups=list(groups), groups_confirmed_on=NOON.date(), groups_confirmed_by="Ines"
    )
    return made


def reactions(job: Job, at=NOON) -> list[tuple[str, str]]:
    fresh = Job.objects.select_related("shop", "vehicle").get(pk=job.pk)
    found = queries.check(fresh, at).check.findings
    return [(one.grade, one.code) for one in found if one.code.startswith("reaction.")]


def wheels(world: w.World) -> tuple[Job, Step]:
    job = w.job(world, TOMORROW)
    first = w.step(job, "Wheel acid", bay=world.bay_1)
    w.need(first, product(world, "Brack wheel acid", "acid", "1", "106"), 10 * ML)
    second = w.step(job, "Iron remover", bay=world.bay_1, after_hours=2)
    w.need(second, product(world, "Fenmoor iron remover", "iron", "20", "ammonium", "106"), 10 * ML)
    return job, second


def test_acid_then_iron_remover_stops_until_a_rinse_between_them_is_signed(shop: w.World) -> None:
    job, _ = wheels(shop)
    assert reactions(job) == [("stop", "reaction.car")]

    rinse = w.step(job, "Rinse", bay=shop.bay_1, after_hours=1)
    rinsed = Step.objects.filter(pk=rinse.pk)
    rinsed.update(rinses=True, signed_at=NOON, signed_by=shop.tomas)
    assert reactions(job) == [("stop", "reaction.car")]  # signed before the acid was poured

    job.steps.filter(name="Wheel acid").update(signed_at=TOMORROW, signed_by=shop.tomas)
    rinsed.update(signed_at=TOMORROW + timedelta(hours=1))
    assert reactions(job) == []


def test_what_the_ledger_says_was_used_counts_though_nobody_planned_it(shop: w.World) -> None:
    job, _ = wheels(shop)
    job.steps.filter(name="Wheel acid").delete()
    assert reactions(job) == []

    acid = w.bottle(shop, job.shop.products.get(kind="acid"), 500 * ML, opened_at=NOON - timedelta(days=1))
    lines = w.record(shop, Act("use", NOON, source=acid.code, amount=10 * ML, job=job.code))
    assert reactions(job) == [("stop", "reaction.car")]

    w.record(shop, Act("reverse", NOON, reverses=lines[0].seq))
    assert reactions(job) == []


@pytest.mark.parametrize(
    ("traced", "asked", "because"),
    [
        (False, [("ask", "reaction.rinse")], "a signature says that it went on as planned"),
        (True, [], "only a scan says so, and nobody scanned it"),
    ],
)
def test_a_signature_says_nothing_of_what_only_a_scan_books(
    shop: w.World, traced: bool, asked: list[tuple[str, str]], because: str
) -> None:
    job = w.job(shop, TOMORROW)
    acid = product(shop, "Brack wheel acid", "acid", "1", "106")
    type(acid).objects.filter(pk=acid.pk).update(traced=traced)
    w.need(w.step(job, "Wheel acid", bay=shop.bay_1), acid, 10 * ML)
    job.steps.update(signed_at=NOON, signed_by=shop.tomas)

    assert reactions(job) == asked, because


def test_a_kind_is_judged_by_the_bottle_that_its_step_gets(shop: w.World) -> None:
    job = w.job(shop, TOMORROW)
    StepNeed.objects.create(step=w.step(job, "Wheels", bay=shop.bay_1), kind="wheel", amount=ML)
    iron = product(shop, "Fenmoor iron remover", "iron", "20", "ammonium", "106")
    w.need(w.step(job, "Iron", bay=shop.bay_1, after_hours=1), iron, ML)
    assert reactions(job) == []

    w.bottle(shop, product(shop, "Brack rim acid", "wheel", "1", "106"), 500 * ML)

    assert reactions(job) == [("stop", "reaction.car")]


def test_a_kind_without_a_product_is_judged_by_what_its_kind_says(shop: w.World) -> None:
    job = w.job(shop, TOMORROW)
    w.need(w.step(job, "Bleach", bay=shop.bay_1), product(shop, "Brack bleach", "cleaner", "104",
                                                           "hypochlorite", "106"), ML)  # fmt: skip
    later = w.step(job, "Acid", bay=shop.bay_1, after_hours=1)
    StepNeed.objects.create(step=later, kind="acid", amount=ML)

    assert reactions(job) == [("stop", "reaction.car")]


def test_bleach_on_another_open_car_in_the_same_bay_and_hour_stops(shop: w.World) -> None:
    job = w.job(shop, TOMORROW)
    acid = product(shop, "Brack wheel acid", "acid", "1", "106")
    w.need(w.step(job, "Wheel acid", bay=shop.bay_1), acid, 10 * ML)
    other = w.job(shop, TOMORROW)
    bleach = product(shop, "Brack bleach", "cleaner", "104", "hypochlorite", "106")
    elsewhere = w.step(other, "Mould", bay=shop.bay_2)
    w.need(elsewhere, bleach, ML)
    assert reactions(job) == []

    Step.objects.filter(pk=elsewhere.pk).update(bay=shop.bay_1)

    assert reactions(job) == [("stop", "reaction.bay")]


@pytest.mark.parametrize(
    ("kind", "outcome", "expected", "because"),
    [
        ("acid", "", [("stop", "reaction.bay")], "any acid is an acid"),
        ("acid", "not_done", [], "it was left out"),
        ("shampoo", "", [], "any shampoo is none"),
    ],
)
def test_another_car_s_need_of_a_kind_counts_in_the_bay_as_well(
    shop: w.World, kind: str, outcome: str, expected: list[tuple[str, str]], because: str
) -> None:
    job = w.job(shop, TOMORROW)
    bleach = product(shop, "Brack bleach", "cleaner", "104", "hypochlorite", "106")
    w.need(w.step(job, "Mould", bay=shop.bay_1), bleach, 10 * ML)
    theirs = w.need(w.step(w.job(shop, TOMORROW), "Wheels", bay=shop.bay_1), kind, 10 * ML)
    StepNeed.objects.filter(pk=theirs.pk).update(outcome=outcome)

    assert reactions(job) == expected, because


def test_a_closed_bottle_of_bleach_in_the_bay_is_a_note(shop: w.World) -> None:
    job = w.job(shop, TOMORROW)
    acid = product(shop, "Brack wheel acid", "acid", "1", "106")
    w.need(w.step(job, "Wheel acid", bay=shop.bay_1), acid, 10 * ML)
    bleach = product(shop, "Brack bleach", "cleaner", "104", "hypochlorite", "106")
    w.bottle(shop, bleach, 500 * ML, place=shop.bay_1)

    assert reactions(job) == [("tell", "reaction.bay_closed")]


def test_another_shop_s_bleach_harms_nobody_here(shop: w.World) -> None:
    job = w.job(shop, TOMORROW)
    acid = product(shop, "Brack wheel acid", "acid", "1", "106")
    w.need(w.step(job, "Wheel acid", bay=shop.bay_1), acid, 10 * ML)
    other = w.larkmoor("elsewhere")
    w.bottle(
        other, product(other, "Brack bleach", "cleaner", "104", "hypochlorite", "106"), ML, place=other.bay_1
    )

    assert reactions(job) == []


def test_fifteen_steps_and_ten_other_cars_cost_as_many_queries_as_one_of_each(shop: w.World) -> None:
    acid = product(shop, "Brack wheel acid", "acid", "1", "106")

    def cars(count: int, steps: int) -> list[Job]:
        made = []
        for _ in range(count):
            job = w.job(shop, TOMORROW)
            for hour in range(steps):
                w.need(w.step(job, f"Step {hour}", bay=shop.bay_1, after_hours=hour), acid, ML)
            made.append(job)
        return made

    def asked(jobs: list[Job]) -> int:
        with CaptureQueriesContext(connection) as seen:
            queries.facts_of(shop.shop, jobs, ["reactions"])
        return len(seen)

    few = asked(cars(1, 1))

    assert asked(cars(10, 15)) == few <= 11
