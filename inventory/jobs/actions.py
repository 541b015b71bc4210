"""What the job pages write: moving, cancelling, signing a stage, closing."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime

from django.db import transaction
from django.db.models import Max

from inventory.jobs import queries
from inventory.jobs.rules.gains import changed
from inventory.models import Head, Job, Person, ServiceStep, Step, StepNeed, Vehicle
from inventory.stock import ledger
from inventory.stock import queries as stock
from inventory.stock.booking import fit, shift
from inventory.stock.rules.acts import Act
from inventory.stock.rules.lines import Refused
from inventory.stock.rules.mixes import gross
from inventory.stock.rules.reserve import Need, pick


@dataclass(frozen=True)
class Said:
    """What became of a need at the end: base units used, whether measured, or None where it was not done.

    `left` is what was unsaid of it when that was asked; None stands for all of it.
    """

    need: StepNeed
    amount: int | None
    measured: bool = False
    left: int | None = None


def _hold(job: Job, state: str = Job.State.OPEN) -> None:
    """Wait for other writers, then refuse what was decided meanwhile: two people may have one page open."""
    Head.objects.select_for_update().get(shop=job.shop_id)
    now = Job.objects.get(pk=job.pk)
    if now.state != state:
        raise Refused(f"{job.vehicle} is {now.get_state_display()} already. Nothing was changed.")


@transaction.atomic
def move(job: Job, starts_at: datetime, *, at: datetime) -> list[str]:
    """Shift a job and every step that is not signed; return who gains and who gives way; raises Refused."""
    _hold(job)
    job.refresh_from_db()
    before = queries.standings(job.shop, at)
    shift(job, starts_at)
    return changed(before, queries.standings(job.shop, at))


@transaction.atomic
def cancel(job: Job, *, at: datetime) -> list[str]:
    """Cancel a job: it wants nothing any more, at once; return who gains; raises Refused."""
    _hold(job)
    return _state(job, Job.State.CANCELLED, at)


@transaction.atomic
def book_again(job: Job, *, at: datetime) -> list[str]:
    """Open a cancelled job again; return who gives way; raises Refused."""
    _hold(job, Job.State.CANCELLED)
    return _state(job, Job.State.OPEN, at)


def _state(job: Job, state: str, at: datetime) -> list[str]:
    before = queries.standings(job.shop, at)
    job.state = state
    job.save(update_fields=["state"])
    after = queries.standings(job.shop, at)
    after.pop(job.code, None)
    return changed(before, after)


@transaction.atomic
def close(job: Job, said: Iterable[Said], *, by: Person, at: datetime) -> None:
    """Write what became of each need that nobody had spoken for, and close the job; raises Refused."""
    _hold(job)
    job.refresh_from_db()
    said = list(said)
    _still_unsaid(job, said)
    for one in said:
        if one.amount:
            ledger.record(job.shop, _uses(job, one, at), by=by, recorded_at=at)
        one.need.outcome = StepNeed.Outcome.DONE if one.amount else StepNeed.Outcome.NOT_DONE
        one.need.save(update_fields=["outcome"])
    job.state, job.closed_at = Job.State.CLOSED, at
    job.save(update_fields=["state", "closed_at"])


def _still_unsaid(job: Job, said: Iterable[Said]) -> None:
    """Refuse answers to what was scanned, signed or planned anew since it was asked."""
    asked = {one.need.pk: one.need.amount if one.left is None else one.left for one in said}
    if asked != {one.need.pk: one.left for one in queries.unsaid(job)}:
        raise Refused(
            f"Something was scanned, signed or changed on {job.vehicle} while you wrote. "
            "Read this page again, then close."
        )


def _uses(job: Job, said: Said, at: datetime) -> list[Act]:
    """Take an amount from the bay's bottles first, then by date; refuse what the book does not hold."""
    need, step, left = _need(job, said, at), said.need.step, said.amount or 0
    shelf = [stock.on_shelf(row) for row in stock.containers(job.shop_id).filter(content__gt=0)]
    queue = pick(need, shelf, job.shop.zone)
    bay = step.bay.code if step.bay else None
    queue.sort(key=lambda bottle: (bottle.place != bay or bay is None, bottle.sealed))
    facts: dict[str, object] = {"measured": said.measured, "assumed": not said.measured}
    acts = []
    for bottle in queue:
        if not left:
            break
        taken = min(left, bottle.concentrate)
        amount = min(bottle.content, gross(taken, bottle.parts))
        acts.append(
            Act("use", at, source=bottle.code, amount=amount, job=job.code, step=step.code, facts=dict(facts))
        )
        left -= taken
    if left:
        raise Refused(_too_little(job, said, left), code="too_little")
    return acts


def _need(job: Job, said: Said, at: datetime) -> Need:
    row = said.need
    return Need(
        id=str(row.id),
        job=job.code,
        starts_at=min(row.step.starts_at, at),
        ends_at=min(row.step.ends_at, at),
        job_starts_at=job.starts_at,
        booked_at=job.booked_at,
        amount=said.amount or 0,
        product=row.product.code if row.product else None,
        kind=row.kind,
        parts=(row.parts_product, row.parts_water),
    )


def _too_little(job: Job, said: Said, left: int) -> str:
    taking, wanted = queries.taking(job.shop), said.amount or 0
    return (
        f"{queries.name_of(said.need)}: the book holds {taking.amount(wanted - left, said.need)} of the "
        f"{taking.amount(wanted, said.need)}. Count the bottle it came from, or give what is left."
    )


@dataclass(frozen=True)
class Wanted:
    """A row of needs as it was typed: a product or a kind, base units, parts."""

    product_id: int | None
    kind: str
    amount: int
    parts_water: int = 0
    parts_product: int = 1


@transaction.atomic
def save_step(step: Step, wanted: Sequence[Wanted]) -> None:
    """Save a step of a job and replace what it takes; the job follows in time; raises Refused."""
    _hold(step.job)
    _unsigned(step)
    if step.pk is None:
        last = step.job.steps.aggregate(last=Max("position"))["last"] or 0
        step.position = last + 1
    step.save()
    step.needs.filter(outcome="").delete()
    for row in wanted:
        StepNeed.objects.create(
            step=step,
            product_id=row.product_id,
            kind=row.kind,
            amount=row.amount,
            parts_product=row.parts_product,
            parts_water=row.parts_water,
        )
    fit(step.job)


@transaction.atomic
def remove_step(step: Step) -> None:
    """Take a step out of a job; one that entries name stays, and so does a signed one."""
    _hold(step.job)
    _unsigned(step)
    if step.movements.exists():
        raise Refused("Something was recorded on this step, so it stays. Take those entries back first.")
    step.delete()
    fit(step.job)


def _unsigned(step: Step) -> None:
    """Refuse a step that was signed while its page was open: saving the old row would take the name away."""
    if step.pk and Step.objects.filter(pk=step.pk, signed_at__isnull=False).exists():
        raise Refused(f"{step.name} is signed already. Nothing was changed.")


@transaction.atomic
def keep(job: Job, car: Vehicle) -> None:
    """Save what a job is called, its notes, and its car, and nothing that others decide; raises Refused."""
    _hold(job)
    job.save(update_fields=["title", "notes"])
    car.save()


@transaction.atomic
def save_service_step(step: ServiceStep, wanted: Sequence[Wanted]) -> None:
    """Save a step of a service and replace what it takes on a mid-size car."""
    if step.pk is None:
        last = step.service.steps.aggregate(last=Max("position"))["last"] or 0
        step.position = last + 1
    step.save()
    step.needs.all().delete()
    for row in wanted:
        step.needs.create(
            product_id=row.product_id,
            kind=row.kind,
            amount=row.amount,
            parts_water=row.parts_water,
            parts_product=row.parts_product,
        )
