"""Signing a stage of a job: what it takes is loaded, planned by `rules.signing`, and written.

The station and the jobs pages share this: the one hears SIGN, the other has a button.
"""

from collections.abc import Iterable
from datetime import datetime

from django.db import transaction
from django.db.models import Q, Sum

from inventory.models import Head, Job, Movement, Person, Request, Step, StepNeed
from inventory.models.product import TRACED_KINDS, Kind
from inventory.stock import ledger
from inventory.stock import queries as stock
from inventory.stock.rules.reserve import Need, OnShelf
from inventory.stock.rules.signing import Signed, StageNeed, StagePlan, plan_stage


def load_stage(job: Job, stage: str = "") -> StagePlan | None:
    """Return a stage that can be signed, the first unsigned one unless named; None where all are signed."""
    steps = list(Step.objects.filter(job=job, signed_at=None).order_by("starts_at", "position"))
    stage = stage or (steps[0].stage if steps else "")
    mine = [step for step in steps if step.stage == stage]
    if not mine:
        return None
    return StagePlan(stage, tuple(step.code for step in mine), tuple(_needs(job, mine)), _open_in(job, mine))


def _needs(job: Job, steps: list[Step]) -> Iterable[StageNeed]:
    rows = (
        StepNeed.objects.filter(step__in=steps, outcome="").select_related("product", "step").order_by("id")
    )
    used = Movement.objects.filter(step__in=steps, kind="use", reversed_by=None)
    left = {
        (step, product, kind): amount or 0
        for step, product, kind, amount in used.values_list("step_id", "product__code", "product__kind")
        .annotate(Sum("concentrate"))
        .order_by()
    }
    # Named products are counted off before kinds.
    for row in sorted(rows, key=lambda row: row.product_id is None):
        missing = row.amount
        for key in left:
            if key[0] == row.step_id and (key[1] == row.product.code if row.product else key[2] == row.kind):
                counted = min(missing, left[key])
                left[key] -= counted
                missing -= counted
        if missing:
            yield _stage_need(job, row, missing)


def _stage_need(job: Job, row: StepNeed, amount: int) -> StageNeed:
    need = Need(
        id=str(row.id),
        job=job.code,
        starts_at=row.step.starts_at,
        ends_at=row.step.ends_at,
        job_starts_at=job.starts_at,
        booked_at=job.booked_at,
        amount=amount,
        product=row.product.code if row.product else None,
        kind=row.kind,
        parts=(row.parts_product, row.parts_water),
    )
    if row.product:
        return StageNeed(need, row.step.code, row.product.name, row.product.traced)
    return StageNeed(need, row.step.code, str(Kind(row.kind).label), row.kind in TRACED_KINDS)


def _open_in(job: Job, steps: list[Step]) -> tuple[OnShelf, ...]:
    bays = {step.bay_id for step in steps if step.bay_id}
    here = Q(place__in=bays) | Q(place__within__in=bays)
    rows = stock.containers(job.shop_id).filter(here, state="open", content__gt=0)
    return tuple(stock.on_shelf(row) for row in rows)


@transaction.atomic
def sign_stage(
    job: Job,
    stage: str,
    *,
    by: Person,
    at: datetime,
    recorded_at: datetime | None = None,
    request: Request | None = None,
) -> Signed | None:
    """Sign a stage: post what was not scanned as planned, marked assumed; None with nothing to sign.

    Raises Refused, and then writes nothing.
    """
    # Two people may sign at once: the second must see what the first has posted.
    Head.objects.select_for_update().get(shop=job.shop_id)
    if (plan := load_stage(job, stage)) is None:
        return None
    signed = plan_stage(plan, job.code, at, job.shop.zone)
    if signed.acts:
        ledger.record(job.shop, signed.acts, by=by, recorded_at=recorded_at or at, request=request)
    mark_signed(job, plan.steps, signed.settled, by=by, at=at)
    return signed


def mark_signed(
    job: Job, steps: Iterable[str], needs: Iterable[str], *, by: Person | None, at: datetime | None
) -> None:
    """Put a signature under steps and settle needs, or take both away again (`at` None)."""
    Step.objects.filter(job=job, code__in=list(steps)).update(signed_at=at, signed_by=by if at else None)
    outcome = StepNeed.Outcome.DONE if at else StepNeed.Outcome.OPEN
    StepNeed.objects.filter(step__job=job, id__in=list(needs)).update(outcome=outcome)


def left_over(job: Job) -> list[StageNeed]:
    """Return what closing a job must ask about: needs neither scanned nor settled by a signature."""
    return list(_needs(job, list(job.steps.all())))
