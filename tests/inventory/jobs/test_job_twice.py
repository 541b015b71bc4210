"""Two people with the same page before them: nothing is booked twice, nothing typed is lost."""

import pytest

from inventory.jobs import actions
from inventory.jobs.forms.needs import need_rows
from inventory.models import Job, Movement, StepNeed
from inventory.stock.rules.lines import Refused
from inventory.stock.signing import sign_stage
from tests import world as w
from tests.world import ML, NOON

pytestmark = pytest.mark.django_db


@pytest.fixture
def shop() -> w.World:
    return w.larkmoor()


def test_a_job_that_somebody_else_closed_is_not_closed_again(shop: w.World) -> None:
    wipe = w.hollin(shop)
    w.bottle(shop, wipe, 500 * ML)
    job = w.job(shop, NOON)
    planned = w.need(w.step(job), wipe, 100 * ML)
    mine, theirs = Job.objects.get(pk=job.pk), Job.objects.get(pk=job.pk)
    actions.close(theirs, [actions.Said(planned, 100 * ML, True)], by=shop.tomas, at=NOON)

    with pytest.raises(Refused, match=r"is closed already\. Nothing was booked twice\."):
        actions.close(mine, [actions.Said(planned, 100 * ML, True)], by=shop.ines, at=NOON)

    assert Movement.objects.filter(kind="use").count() == 1


def test_a_stage_signed_twice_takes_its_stock_once(shop: w.World) -> None:
    compound = w.marl(shop)
    w.bottle(shop, compound, 1000 * w.GRAM, opened_at=NOON, place=shop.bay_1)
    job = w.job(shop, NOON)
    w.need(w.step(job, stage="correct", bay=shop.bay_1), compound, 100 * w.GRAM)
    mine, theirs = Job.objects.get(pk=job.pk), Job.objects.get(pk=job.pk)

    assert sign_stage(theirs, "correct", by=shop.tomas, at=NOON) is not None
    assert sign_stage(mine, "correct", by=shop.ines, at=NOON) is None
    assert Movement.objects.filter(kind="use").count() == 1


def test_a_mix_of_two_parts_keeps_both_when_its_step_is_saved_unchanged(shop: w.World) -> None:
    wipe = w.hollin(shop)
    step = w.step(w.job(shop, NOON))
    StepNeed.objects.create(step=step, product=wipe, amount=100 * ML, parts_product=2, parts_water=7)
    shown = need_rows(shop.shop, step.needs.all())
    data = {"needs-TOTAL_FORMS": "1", "needs-INITIAL_FORMS": "1"}
    data |= {f"needs-0-{name}": str(value) for name, value in shown.forms[0].initial.items()}
    sent = need_rows(shop.shop, step.needs.all(), data)
    assert sent.is_valid()

    actions.save_step(step, sent.wanted())

    kept = step.needs.get()
    assert (kept.parts_product, kept.parts_water, kept.amount) == (2, 7, 100 * ML)
