"""Closing and signing keep a step to one lot of a coating, as the station does."""

import pytest

from inventory.jobs import actions, queries
from inventory.models import Container, Job, Movement, Override
from inventory.stock.rules.acts import Act
from inventory.stock.rules.lines import Refused
from inventory.stock.signing import sign_stage
from tests import world as w
from tests.world import ML, NOON

pytestmark = pytest.mark.django_db


def coating_job(world: w.World, ml: int, *bottles: tuple[int, str], **facts: object):
    """A step that takes so much of a coating, and open bottles of it in its bay."""
    coat = w.tidewall(world, needs_sheet=False, **facts)
    pots = [
        w.bottle(world, coat, each * ML, lot=lot, opened_at=NOON, place=world.bay_2) for each, lot in bottles
    ]
    job = w.job(world)
    return job, w.need(w.step(job, "Coating", bay=world.bay_2), coat, ml * ML), pots


def use(world: w.World, job: Job, bottle: Container, ml: int) -> None:
    act = Act("use", NOON, source=bottle.code, amount=ml * ML, job=job.code, step=job.steps.get().code)
    w.record(world, act)


def close(world: w.World, job: Job, amount: int) -> list[tuple[str, int]]:
    """Close a job with so much used, and return what that wrote, in ml."""
    before = Movement.objects.filter(kind="use").count()
    [one] = queries.unsaid(job)
    actions.close(job, [actions.Said(one.need, amount * ML, left=one.left)], by=world.tomas, at=NOON)
    rows = Movement.objects.filter(kind="use").order_by("seq")[before:]
    return [(row.source.code, row.amount // ML) for row in rows if row.source]


def override(world: w.World, job: Job, by=None) -> None:
    need = job.steps.get().needs.get()
    Override.objects.create(
        job=job, code="two_lots", about=f"{need.product.code} {need.step.code}", grade="stop",
        says="40 ml needed from one lot.", reason="The boot lid only.", by=by or world.ines, given_at=NOON,
    )  # fmt: skip


def test_closing_refuses_two_lots_with_its_numbers_and_the_way_out_and_writes_nothing() -> None:
    world = w.larkmoor()
    job, _, _ = coating_job(world, 40, (30, "A"), (25, "B"))
    with pytest.raises(Refused) as refused:
        close(world, job, 40)
    assert refused.value.code == "two_lots"
    assert refused.value.says == (
        "Tidewall coating: 40 ml needed from one lot, 30 ml in the fullest. Give what came of one lot, or an "
        "owner says why two lots are right, on the check page. What a second lot put on the car already is "
        "scanned at a station and said with ALREADY: it is written down and flagged."
    )
    job.refresh_from_db()
    assert (job.state, Movement.objects.filter(kind="use").count()) == ("open", 0)


def test_a_signed_step_is_not_sent_to_the_check_which_no_longer_asks_about_it() -> None:
    world = w.larkmoor()
    job, _, _ = coating_job(world, 40, (30, "A"), (25, "B"))
    job.steps.update(signed_at=NOON, signed_by=world.tomas)
    with pytest.raises(Refused) as refused:
        close(world, job, 40)
    assert "check page" not in refused.value.says
    assert "said with ALREADY" in refused.value.says


def test_closing_refuses_another_lot_than_the_step_has() -> None:
    world = w.larkmoor()
    job, _, (first, _) = coating_job(world, 40, (33, "A"), (25, "B"))
    use(world, job, first, 30)
    with pytest.raises(Refused, match="10 ml more needed from the lot that the step has, 3 ml of it left"):
        close(world, job, 10)


def test_closing_takes_the_lot_that_the_step_has_though_another_would_do() -> None:
    world = w.larkmoor()
    job, _, (_, first) = coating_job(world, 40, (30, "B"), (40, "A"))
    use(world, job, first, 30)
    assert close(world, job, 10) == [(first.code, 10)]


@pytest.mark.parametrize(
    ("facts", "word", "because"),
    [
        ({"mixes_lots": True}, False, "the product allows more"),
        ({}, True, "an owner said why"),
    ],
)
def test_two_lots_are_booked_where_that_is_allowed(
    facts: dict[str, object], word: bool, because: str
) -> None:
    world = w.larkmoor()
    job, _, _ = coating_job(world, 40, (30, "A"), (25, "B"), **facts)
    if word:
        override(world, job)
    assert sum(ml for _, ml in close(world, job, 40)) == 40, because
    assert Movement.objects.filter(kind="use").count() == 2


def test_a_technicians_word_for_two_lots_counts_for_nothing() -> None:
    world = w.larkmoor()
    job, _, _ = coating_job(world, 40, (30, "A"), (25, "B"))
    override(world, job, world.tomas)
    with pytest.raises(Refused, match="30 ml in the fullest"):
        close(world, job, 40)


def test_too_little_of_all_lots_is_still_said_as_that() -> None:
    world = w.larkmoor()
    job, _, _ = coating_job(world, 40, (30, "A"), (5, "B"))
    with pytest.raises(Refused) as refused:
        close(world, job, 40)
    assert refused.value.code == "too_little"


def test_two_needs_of_one_step_are_closed_from_one_lot() -> None:
    world = w.larkmoor()
    job, need, _ = coating_job(world, 10, (10, "A"), (5, "B"))
    second = w.need(need.step, need.product, 5 * ML)
    said = [actions.Said(each, each.amount) for each in (need, second)]
    with pytest.raises(Refused, match="5 ml more needed from the lot that the step has, 0 ml of it left"):
        actions.close(job, said, by=world.tomas, at=NOON)
    assert not Movement.objects.filter(kind="use").exists()


def test_signing_a_stage_refuses_two_lots_and_signs_nothing() -> None:
    world = w.larkmoor()
    job, _, _ = coating_job(world, 40, (30, "A"), (25, "B"))
    type(job.steps.get().needs.get().product).objects.update(traced=False)
    with pytest.raises(Refused, match="40 ml needed from one lot, 30 ml in the fullest"):
        sign_stage(job, "coat", by=world.tomas, at=NOON)
    assert job.steps.get().signed_at is None
    override(world, job)
    sign_stage(job, "coat", by=world.tomas, at=NOON)
    assert job.steps.get().signed_at == NOON
