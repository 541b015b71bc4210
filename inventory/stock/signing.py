"""Signing a stage of a job: what it takes is loaded, planned by `rules.signing`, and written.

The station and the jobs pages share this: the one hears SIGN, the other has a button.
"""

from collections.abc import Iterable, Set
from dataclasses import replace
from datetime import datetime

from django.db import transaction
from django.db.models import Q

from inventory.models import Head, Job, Person, Request, Step, StepNeed
from inventory.models.product import TRACED_KINDS, Kind
from inventory.stock import ledger
from inventory.stock import queries as stock
from inventory.stock.rules.one_lot import NOTHING, Had, binds, stands
from inventory.stock.rules.remaining import remaining
from inventory.stock.rules.reserve import Need, OnShelf
from inventory.stock.rules.signing import Signed, StageNeed, StagePlan, plan_stage
from inventory.stock.used import two_lots_allowed, used


def load_stage(job: Job, stage: str = "") -> StagePlan | None:
    """Return a stage that can be signed, the first unsigned one unless named; None where all are signed."""
    # A rinse is signed by itself: who signs a stage did not look at the drain.
    rows = Step.objects.filter(job=job, signed_at=None, rinses=False)
    steps = list(rows.order_by("starts_at", "position"))
    stage = stage or (steps[0].stage if steps else "")
    mine = [step for step in steps if step.stage == stage]
    if not mine:
        return None
    codes, needs = tuple(step.code for step in mine), tuple(_needs(job, mine))
    return StagePlan(stage, codes, needs, _open_in(job, mine), job.shop.system)


def _needs(job: Job, steps: Iterable[Step]) -> Iterable[StageNeed]:
    """Yield what is left of the open needs of some steps; what settled needs were given counts for them.

    A need of which somebody typed what its step used is settled: the ledger marks such an entry as measured,
    and what a signature or "as planned" put there as assumed. To book the rest after a correction would write
    again what the correction took off.
    """
    rows = _planned(job)
    named = {(row.step.code, row.product.code) for row in rows if row.product}
    spent = used([job.id], lambda _: job.code, named=named)
    asked = [_need(job, row, spent.had) for row in rows]
    step_of = {str(row.id): row.step.code for row in rows}
    unspoken = remaining(asked, step_of, spent.amounts, spent.kinds, spent.worn, spent.typed)
    left = {need.id: need for need in unspoken}
    mine = {step.id for step in steps}
    open_rows = [row for row in rows if row.step_id in mine and not row.outcome and str(row.id) in left]
    bound = any(left[str(row.id)].one_lot for row in open_rows)
    allowed = two_lots_allowed(job) if bound else frozenset()
    for row in open_rows:
        yield _stage_need(row, left[str(row.id)], allowed)


def _planned(job: Job) -> list[StepNeed]:
    """Return a job's needs, settled ones too, since uses count for them; named products before kinds."""
    rows = StepNeed.objects.filter(step__job=job).exclude(outcome=StepNeed.Outcome.NOT_DONE)
    measured = rows.annotate(kind_dimension=stock.kind_dimension())
    in_time = measured.select_related("product", "step").order_by("step__starts_at", "step__position", "id")
    return sorted(in_time, key=lambda row: row.product_id is None)


def _need(job: Job, row: StepNeed, had: Had) -> Need:
    product, kind = row.product, row.kind
    return Need(
        id=str(row.id),
        job=job.code,
        starts_at=row.step.starts_at,
        ends_at=row.step.ends_at,
        job_starts_at=job.starts_at,
        booked_at=job.booked_at,
        amount=row.amount,
        product=product.code if product else None,
        kind=kind,
        parts=(row.parts_product, row.parts_water),
        one_lot=binds(product.kind, product.mixes_lots) if product else binds(kind, mixes_lots=False),
        had=had.get((row.step.code, product.code if product else kind), NOTHING),
        dimension="" if product else stock.measured_in(row),
    )


def _stage_need(row: StepNeed, need: Need, allowed: Set[tuple[str, str]]) -> StageNeed:
    if need.one_lot and stands(allowed, row.step.code, need.product or need.kind):
        need = replace(need, one_lot=False)
    if row.product:
        named, traced, measured = row.product.name, row.product.traced, row.product.dimension
    else:
        named, traced = str(Kind(row.kind).label), row.kind in TRACED_KINDS
        measured = stock.measured_in(row)
    return StageNeed(need, row.step.code, named, traced, measured, signed=row.step.signed_at is not None)


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
