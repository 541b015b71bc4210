"""Signing a stage of a job: what it takes is loaded, planned by `rules.signing`, and written.

The station and the jobs pages share this: the one hears SIGN, the other has a button.
"""

from collections.abc import Iterable
from dataclasses import dataclass
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


def _needs(job: Job, steps: Iterable[Step]) -> Iterable[StageNeed]:
    rows = _planned(job)
    used, left = _used(job), {row.id: row.amount for row in rows}
    # What its own step used first; what names no step counts once, for the first need that lacks it.
    for named in (True, False):
        for row in rows:
            left[row.id] -= _counted_off(row, row.step_id if named else None, left[row.id], used)
    mine = {step.id for step in steps}
    for row in rows:
        if row.step_id in mine and not row.outcome and left[row.id]:
            yield _stage_need(job, row, left[row.id])


def _planned(job: Job) -> list[StepNeed]:
    """Return a job's needs, settled ones too, since uses count for them; named products before kinds."""
    rows = StepNeed.objects.filter(step__job=job).exclude(outcome=StepNeed.Outcome.NOT_DONE)
    in_time = rows.select_related("product", "step").order_by("step__starts_at", "step__position", "id")
    return sorted(in_time, key=lambda row: row.product_id is None)


@dataclass
class _Use:
    """Concentrate that a job's entries used on a step, or on none; `worn`: of what is not used up."""

    step: int | None
    product: str | None
    kind: str | None
    amount: int
    worn: bool


def _used(job: Job) -> list[_Use]:
    rows = Movement.objects.filter(job=job, kind=Movement.Kind.USE, reversed_by=None)
    columns = ("step_id", "product__code", "product__kind", "product__wear_uses", "product__wear_minutes")
    sums = rows.values_list(*columns).annotate(Sum("concentrate")).order_by("step_id", "product__code")
    return [
        _Use(step, product, kind, amount or 0, bool(uses or minutes))
        for step, product, kind, uses, minutes, amount in sums
    ]


def _counted_off(row: StepNeed, step: int | None, missing: int, used: list[_Use]) -> int:
    counted = 0
    for use in used:
        alike = use.product == row.product.code if row.product else use.kind == row.kind
        if use.step == step and alike and missing > counted:
            taken = missing - counted if use.worn else min(missing - counted, use.amount)
            counted += taken
            use.amount, use.worn = max(0, use.amount - taken), False
    return counted


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
    """Return what closing a job must ask about: what of its needs was neither scanned nor settled."""
    return list(_needs(job, job.steps.all()))
