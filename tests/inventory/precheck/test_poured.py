"""What was used and what is in hand, beside what the steps plan; no row of it is ever written."""

from datetime import datetime, timedelta

import pytest

from inventory.models import Job, Movement, Product, Step, StepNeed
from inventory.precheck import queries
from inventory.precheck.queries.loading import Loading
from inventory.precheck.queries.poured import Pouring
from inventory.stock.rules.acts import Act
from tests import world as w
from tests.world import LITRE, ML, NOON

pytestmark = pytest.mark.django_db
IN_AN_HOUR = NOON + timedelta(hours=1)


@pytest.fixture
def shop() -> w.World:
    return w.larkmoor()


def used(
    shop: w.World, of: Product, ml: int, on: Job, step: Step | None = None, at: datetime = NOON
) -> Movement:
    """Use so much of a fresh bottle on a job."""
    full = w.bottle(shop, of, LITRE, opened_at=NOON - timedelta(days=1))
    act = Act(
        "use", at, source=full.code, amount=ml * ML, job=on.code, step=step.code if step else None,
        facts={"measured": True},
    )  # fmt: skip
    return w.record(shop, act)[0]


def rows(job: Job, at: datetime | None = NOON, **more: object) -> list[tuple[str, str, int]]:
    """Return step, product or kind, and millilitres of each row that topics read."""
    loading = Loading(job.shop, [job], at=at, **more)  # type: ignore[arg-type]
    return [
        (row.step.name, row.product.name if row.product else row.kind, row.amount // ML)
        for row in loading.work_rows
    ]


def two_steps(shop: w.World) -> tuple[Job, Step, Step]:
    job = w.job(shop, NOON)
    return job, w.step(job, "Wash", stage="wash"), w.step(job, "Wipe", after_hours=1)


def test_what_nobody_planned_is_a_row_of_the_step_it_was_used_in(shop: w.World) -> None:
    job, _, wiping = two_steps(shop)
    used(shop, w.hollin(shop), 30, job, wiping)

    assert rows(job) == [("Wipe", "Hollin panel wipe", 30)]
    assert not StepNeed.objects.exists()


@pytest.mark.parametrize(
    ("at", "signed", "step", "because"),
    [
        (NOON, 0, "Wash", "its time is now"),
        (IN_AN_HOUR, 0, "Wipe", "its time is now, though the wash was never signed"),
        (NOON - timedelta(days=1), 0, "Wash", "nothing is due: the first that nobody signed"),
        (NOON, 1, "Wipe", "the wash is signed"),
        (NOON, 2, "Wipe", "all is signed: the last one"),
        (None, 0, "Wash", "nobody said when: the first that nobody signed"),
    ],
)
def test_a_use_that_names_no_step_belongs_to_the_step_at_hand(
    shop: w.World, at: datetime | None, signed: int, step: str, because: str
) -> None:
    job, *steps = two_steps(shop)
    Step.objects.filter(pk__in=[row.pk for row in steps[:signed]]).update(
        signed_at=NOON, signed_by=shop.tomas
    )
    used(shop, w.hollin(shop), 30, job)

    assert rows(job, at) == [(step, "Hollin panel wipe", 30)], because


def test_a_use_that_names_no_step_belongs_first_to_the_step_that_plans_it(shop: w.World) -> None:
    job, _, wiping = two_steps(shop)
    wipe = w.hollin(shop)
    w.need(wiping, wipe, 20 * ML)
    used(shop, wipe, 30, job)

    assert rows(job) == [("Wipe", "Hollin panel wipe", 30)]


@pytest.mark.parametrize(("ml", "counts"), [(10, 20), (20, 20), (50, 50)])
def test_of_planned_and_used_the_larger_counts_and_both_never_add_up(
    shop: w.World, ml: int, counts: int
) -> None:
    job, _, wiping = two_steps(shop)
    wipe = w.hollin(shop)
    planned = w.need(wiping, wipe, 20 * ML)
    used(shop, wipe, ml, job, wiping)

    assert rows(job) == [("Wipe", "Hollin panel wipe", counts)]
    planned.refresh_from_db()
    assert planned.amount == 20 * ML


def test_of_two_layers_of_one_product_only_what_goes_beyond_both_is_more(shop: w.World) -> None:
    job, _, coat = two_steps(shop)
    tidewall = w.tidewall(shop)
    for _ in range(2):
        w.need(coat, tidewall, 20 * ML)
    used(shop, tidewall, 45, job, coat)

    assert rows(job) == [("Wipe", "Tidewall coating", 20), ("Wipe", "Tidewall coating", 25)]


def test_a_need_of_a_kind_is_of_the_makes_that_were_used_for_it(shop: w.World) -> None:
    job, _, wiping = two_steps(shop)
    one, other = w.hollin(shop), w.product(shop, "Sallow wipe", "solvent")
    w.need(wiping, "solvent", 60 * ML)
    used(shop, one, 40, job, wiping)
    assert rows(job) == [("Wipe", "Hollin panel wipe", 60)]

    used(shop, other, 30, job, wiping)

    assert rows(job) == [("Wipe", "Hollin panel wipe", 40), ("Wipe", "Sallow wipe", 30)]


def test_what_was_taken_back_was_not_used(shop: w.World) -> None:
    job, _, wiping = two_steps(shop)
    line = used(shop, w.hollin(shop), 30, job, wiping)
    w.record(shop, Act("reverse", NOON, reverses=line.seq))

    assert rows(job) == []


@pytest.mark.parametrize(
    ("amount", "counts", "because"),
    [
        (None, 30, "not said yet: what was used"),
        (10 * ML, 40, "on top of what was used"),
    ],
)
def test_what_is_in_hand_comes_on_top_of_what_was_used(
    shop: w.World, amount: int | None, counts: int, because: str
) -> None:
    job, _, wiping = two_steps(shop)
    wipe = w.hollin(shop)
    used(shop, wipe, 30, job, wiping)

    pouring = {job.pk: Pouring(wipe, amount, wiping.code)}

    assert rows(job, pouring=pouring) == [("Wipe", "Hollin panel wipe", counts)], because


def test_who_pours_does_the_step_that_plans_it_and_the_stage_at_hand(shop: w.World) -> None:
    job = w.job(shop, NOON)
    w.step(job, "Wash", stage="wash", person=shop.tomas)
    later = w.step(job, "Wipe", stage="coat", person=shop.tomas, after_hours=1)
    w.step(job, "Coat", stage="coat", person=shop.tomas, after_hours=2)
    wipe = w.hollin(shop)
    w.need(later, wipe, 20 * ML)

    loading = Loading(shop.shop, [job], shop.ines, at=NOON, pouring={job.pk: Pouring(wipe)})

    assert [(row.name, row.person) for row in loading.step_rows] == [
        ("Wash", shop.ines), ("Wipe", shop.ines), ("Coat", shop.tomas),
    ]  # fmt: skip


def test_a_job_without_steps_has_nothing_that_it_could_be_used_in(shop: w.World) -> None:
    job = w.job(shop, NOON)
    used(shop, w.hollin(shop), 30, job)

    assert rows(job) == []


def test_an_acid_that_was_used_and_rinsed_off_meets_nothing_that_comes(shop: w.World) -> None:
    """Its row stays with the open step it was used in; chemistry counts it where the ledger has it."""
    job, first, _ = two_steps(shop)
    sour, white = w.lime_remover(shop), w.bleach(shop)
    used(shop, sour, 10, job, first, NOON - timedelta(hours=2))
    rinse = w.step(job, "Rinse", after_hours=3)
    Step.objects.filter(pk=rinse.pk).update(
        rinses=True, signed_at=NOON - timedelta(hours=1), signed_by=shop.tomas
    )
    used(shop, white, 10, job, first)

    found = queries.check(Job.objects.select_related("shop", "vehicle").get(pk=job.pk), NOON).check.findings

    assert [one.code for one in found if one.code.startswith("reaction.")] == ["reaction.rinse"]
