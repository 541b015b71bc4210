"""A job of which nothing is planned is not ready: nobody judged anything."""

import pytest

from inventory.models import CheckSignature, Job
from inventory.precheck import queries
from inventory.precheck.actions import NotNow, answer, sign
from inventory.precheck.rules import may_answer
from inventory.precheck.rules.catalogue import why_not
from inventory.precheck.views.ways import way_out
from tests import world as w
from tests.inventory.precheck.cases import WIPE, facts, found
from tests.world import NOON

SAYS = "No step is planned."


def test_a_job_without_steps_asks_for_one_and_no_word_ends_it() -> None:
    (one,) = found(facts(steps=()))

    assert (one.code, one.grade, one.says) == ("plan.no_steps", "ask", SAYS)
    assert one.do == (
        "Add a step: what is done, where, when, by whom, and what it takes. That ends this question."
    )
    assert not may_answer(one, by_owner=True)
    assert why_not(one.code, "tell") == (
        "This rule protects people: it is never made a note. It ends by changing the fact."
    )


def test_one_step_ends_it() -> None:
    assert found(facts(steps=(WIPE,))) == ()


@pytest.mark.django_db
def test_it_is_neither_answered_nor_signed_until_there_is_a_step(shop: w.World) -> None:
    job = Job.objects.select_related("vehicle", "shop").get(pk=w.job(shop).pk)
    checked = queries.check(job, NOON)
    (one,) = checked.check.findings

    assert checked.headline.says == "One question to answer before Thursday 12:00."
    way = way_out(one, job.code)
    assert way is not None
    assert (way.label, way.to) == ("Add a step", f"/jobs/{job.code}/steps/new/")
    with pytest.raises(NotNow, match="This question ends by doing what it says"):
        answer(job, one.code, job.code, one.says, "later", by=shop.ines, at=NOON)
    with pytest.raises(NotNow, match="Sign when the check is ready"):
        sign(job, by=shop.ines, at=NOON)
    assert not CheckSignature.objects.exists()

    w.step(job, "Look at it")
    assert sign(job, by=shop.ines, at=NOON).verdict == "ready"
