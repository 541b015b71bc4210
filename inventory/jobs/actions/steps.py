"""The steps of a job and of a service, and what they take."""

from collections.abc import Sequence
from dataclasses import dataclass

from django.db import transaction
from django.db.models import Max

from inventory.models import ServiceStep, Step, StepNeed
from inventory.stock.booking import fit
from inventory.stock.rules.lines import Refused

from .locking import hold


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
    hold(step.job)
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
    hold(step.job)
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
