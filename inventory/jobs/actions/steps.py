"""The steps of a job and of a service, and what they take."""

from collections.abc import Sequence
from dataclasses import astuple, dataclass
from datetime import datetime

from django.db import transaction
from django.db.models import Max

from inventory.models import Panel, Request, ServiceStep, Step, StepNeed
from inventory.stock.booking import WORK, fit
from inventory.stock.requests import Answer, answer_once
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
def save_step(step: Step, wanted: Sequence[Wanted], panels: Sequence[Panel] = ()) -> None:
    """Save a step of a job and replace what it takes; the job follows in time; raises Refused.

    `panels` are those that its cut is limited to; none of them is all.
    """
    hold(step.job)
    _unsigned(step)
    if step.pk is None:
        last = step.job.steps.aggregate(last=Max("position"))["last"] or 0
        step.position = last + 1
    step.save()
    step.panels.set(panels)
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


def add_step(
    step: Step, wanted: Sequence[Wanted], panels: Sequence[Panel] = (), *, key: str, at: datetime
) -> None:
    """Add a step to a job once for a key, however often the button is pressed; raises Refused, KeyReused."""
    instants = [step.starts_at.isoformat(), step.ends_at.isoformat()]
    body = [
        step.job.code,
        step.name,
        step.stage,
        *instants,
        step.bay_id,
        step.person_id,
        *_work(step),
        *map(astuple, wanted),
        *(panel.code for panel in panels),
    ]

    def write(request: Request) -> Answer:
        save_step(step, wanted, panels)
        return {"step": step.code}

    answer_once(step.job.shop, key, body, at, write)


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


def add_service_step(step: ServiceStep, wanted: Sequence[Wanted], *, key: str, at: datetime) -> None:
    """Add a step to a service once for a key; raises KeyReused where it came with another step."""
    named = [step.service_id, step.name, step.stage, step.starts_after, step.minutes]
    body = [*named, *_work(step), *map(astuple, wanted)]

    def write(request: Request) -> Answer:
        save_service_step(step, wanted)
        return {"service_step": step.pk}

    answer_once(step.service.shop, key, body, at, write)


def _work(step: Step | ServiceStep) -> list[object]:
    return [getattr(step, name) for name in WORK]
