"""Closing a job: what nobody scanned is said, and taken out of the book."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime

from django.db import transaction

from inventory.jobs import queries
from inventory.models import Job, Person, StepNeed
from inventory.stock import ledger
from inventory.stock import queries as stock
from inventory.stock.rules.acts import Act
from inventory.stock.rules.lines import Refused
from inventory.stock.rules.mixes import gross
from inventory.stock.rules.reserve import Need, pick
from inventory.stock.rules.signing import Given, StageNeed, of_its_lot
from inventory.stock.signing import left_over

from .locking import hold


@dataclass(frozen=True)
class Said:
    """What became of a need at the end: base units used, whether measured, or None where it was not done.

    `left` is what was unsaid of it when that was asked; None stands for all of it.
    """

    need: StepNeed
    amount: int | None
    measured: bool = False
    left: int | None = None


@transaction.atomic
def close(job: Job, said: Iterable[Said], *, by: Person, at: datetime) -> None:
    """Write what became of each need that nobody had spoken for, and close the job; raises Refused."""
    hold(job)
    job.refresh_from_db()
    said = list(said)
    _still_unsaid(job, said)
    left, given = {int(each.need.id): each for each in left_over(job)}, Given()
    for one in said:
        if one.amount:
            ledger.record(job.shop, _uses(job, one, left[one.need.pk], given, at), by=by, recorded_at=at)
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


def _uses(job: Job, said: Said, each: StageNeed, given: Given, at: datetime) -> list[Act]:
    """Take an amount from the bay's bottles first, then by date; refuse what the book does not hold.

    Refuses two lots for a step as well, where it keeps to one.
    """
    need, step, left = _need(said, each, at), said.need.step, said.amount or 0
    shelf = [stock.on_shelf(row) for row in stock.containers(job.shop_id).filter(content__gt=0)]
    queue = pick(replace(need, one_lot=False), shelf, job.shop.zone)
    bay = step.bay.code if step.bay else None
    queue.sort(key=lambda bottle: (bottle.place != bay or bay is None, bottle.sealed))
    facts: dict[str, object] = {"measured": said.measured, "assumed": not said.measured}
    acts = []
    for bottle in of_its_lot(given.before(replace(each, need=need)), queue, job.shop.system, "Give"):
        if not left:
            break
        taken = min(left, bottle.concentrate)
        amount = min(bottle.content, gross(taken, bottle.parts))
        acts.append(
            Act("use", at, source=bottle.code, amount=amount, job=job.code, step=step.code, facts=dict(facts))
        )
        given.note(each, bottle)
        left -= taken
    if left:
        raise Refused(_too_little(job, said, left), code="too_little")
    return acts


def _need(said: Said, each: StageNeed, at: datetime) -> Need:
    need = each.need
    starts_at, ends_at = min(need.starts_at, at), min(need.ends_at, at)
    return replace(need, amount=said.amount or 0, starts_at=starts_at, ends_at=ends_at)


def _too_little(job: Job, said: Said, left: int) -> str:
    taking, wanted = queries.taking(job.shop), said.amount or 0
    return (
        f"{queries.name_of(said.need)}: the book holds {taking.amount(wanted - left, said.need)} of the "
        f"{taking.amount(wanted, said.need)}. Count the bottle it came from, or give what is left."
    )
