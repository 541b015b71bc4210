"""Two people with the same page before them: nothing is booked twice, nothing typed is lost."""

from datetime import timedelta

import pytest

from inventory.jobs import actions
from inventory.jobs.forms.needs import need_rows
from inventory.models import Job, Movement, Step, StepNeed
from inventory.stock.rules.lines import Refused
from inventory.stock.signing import sign_stage
from tests import world as w
from tests.world import ML, NOON

pytestmark = pytest.mark.django_db


def test_a_job_that_somebody_else_closed_is_not_closed_again(shop: w.World) -> None:
    wipe = w.hollin(shop)
    w.bottle(shop, wipe, 500 * ML)
    job = w.job(shop, NOON)
    planned = w.need(w.step(job), wipe, 100 * ML)
    mine, theirs = Job.objects.get(pk=job.pk), Job.objects.get(pk=job.pk)
    actions.close(theirs, [actions.Said(planned, 100 * ML, True)], by=shop.tomas, at=NOON)

    with pytest.raises(Refused, match=r"is closed already\. Nothing was changed\."):
        actions.close(mine, [actions.Said(planned, 100 * ML, True)], by=shop.ines, at=NOON)

    assert Movement.objects.filter(kind="use").count() == 1


def test_what_was_signed_while_the_closing_page_was_open_is_not_booked_again(shop: w.World) -> None:
    soap = w.product(shop, "Brindle shampoo", "shampoo", needs_sheet=False)
    w.bottle(shop, soap, 500 * ML, opened_at=NOON, place=shop.bay_2)
    job = w.job(shop, NOON)
    planned = w.need(w.step(job, bay=shop.bay_2), soap, 30 * ML)
    stale = Job.objects.get(pk=job.pk)
    sign_stage(job, "coat", by=shop.tomas, at=NOON)

    with pytest.raises(Refused, match="Read this page again, then close"):
        actions.close(stale, [actions.Said(planned, 30 * ML)], by=shop.ines, at=NOON)

    assert Movement.objects.filter(kind="use").count() == 1


LATER = NOON + timedelta(days=3)


@pytest.mark.parametrize(
    ("press", "because"),
    [
        (lambda job, step: actions.cancel(job, at=NOON), "a closed job would be cancelled"),
        (lambda job, step: actions.move(job, LATER, at=NOON), "its entries would lie before its start"),
        (lambda job, step: actions.save_step(step, []), "a step would change after its job"),
        (lambda job, step: actions.remove_step(step), "a step would go after its job"),
        (lambda job, step: actions.keep(job, job.vehicle), "a stale row would open the job again"),
        (lambda job, step: actions.book_again(job, at=NOON), "only what was cancelled is booked again"),
    ],
)
def test_who_still_has_an_open_job_s_page_before_them_changes_nothing_of_the_closed_one(
    shop: w.World, press, because: str
) -> None:
    job = w.job(shop, NOON)
    step = w.step(job)
    stale, its_step = Job.objects.get(pk=job.pk), Step.objects.get(pk=step.pk)
    its_step.job = stale
    actions.close(job, [], by=shop.tomas, at=NOON)

    with pytest.raises(Refused, match=r"Grey estate is closed already\. Nothing was changed\."):
        press(stale, its_step)

    now = Job.objects.get(pk=job.pk)
    assert (now.state, now.starts_at, now.steps.count()) == ("closed", NOON, 1), because


def test_a_step_signed_meanwhile_keeps_its_signature(shop: w.World) -> None:
    job = w.job(shop, NOON)
    stale = w.step(job)
    Step.objects.filter(pk=stale.pk).update(signed_at=NOON, signed_by=shop.tomas)

    with pytest.raises(Refused, match=r"Panel wipe is signed already\. Nothing was changed\."):
        actions.save_step(stale, [])

    assert job.steps.get().signed_by == shop.tomas


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
    row = need_rows(shop.shop, step.needs.all()).forms[0]
    data = {"needs-TOTAL_FORMS": "1", "needs-INITIAL_FORMS": "1"}
    data |= {field.html_name: field.value() for field in row}
    assert data["needs-0-mix"] == "2:7"
    sent = need_rows(shop.shop, step.needs.all(), data)
    assert sent.is_valid()

    actions.save_step(step, sent.wanted())

    kept = step.needs.get()
    assert (kept.parts_product, kept.parts_water, kept.amount) == (2, 7, 100 * ML)
