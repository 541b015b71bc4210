"""The air topic: what the jobs' steps let go, where, and who else works beside them."""

from collections import defaultdict
from collections.abc import Iterable
from datetime import datetime, timedelta

from django.db.models import Q, QuerySet

from inventory.models import Job, Kind, Place, Product, Step, StepNeed
from inventory.precheck.questions.topics.air import AirFacts, AirStep, AirUse

from .air_places import air_places
from .loading import Loading
from .makeups import limits, makeups
from .values import key

INSIDE = frozenset({"interior"})  # the area of the car that closes round who works
SHIFT = timedelta(hours=16)  # no shift reaches further from a step than this


def load(loading: Loading) -> dict[int, AirFacts]:
    """Return by job what is breathed around it, in eight queries beside the shared rows."""
    steps = [row for row in loading.step_rows if row.signed_at is None]
    if not steps or not (loading.at_work or any(row.tools or row.local_exhaust for row in steps)):
        return {}
    beside = near_steps(loading, steps)
    near = list(beside.select_related("bay", "person").order_by("starts_at", "id"))
    uses: dict[int, list[StepNeed]] = defaultdict(list)
    for row in [*loading.at_work, *needs_of(beside)]:
        uses[row.step_id].append(row)
    rows = {row.pk: row for row in loading.step_rows} | {row.pk: row for row in near}
    found = {pk: air_step(row, uses[pk]) for pk, row in rows.items()}
    products = {row.pk: row for row in loading.product_rows}
    products |= {row.product.pk: row.product for each in uses.values() for row in each if row.product}
    shared = AirFacts(
        regime=loading.shop.air_regime, limits=limits(loading.shop),
        places=air_places(_bays(rows.values())), makeups=makeups(products.values()),
        readings=loading.readings,
    )  # fmt: skip
    return {job.id: _of_job(job.id, shared, rows, found) for job in loading.jobs}


def _of_job(job: int, shared: AirFacts, rows: dict[int, Step], found: dict[int, AirStep]) -> AirFacts:
    mine = tuple(found[pk] for pk, row in rows.items() if row.job_id == job)
    rest = tuple(found[pk] for pk, row in rows.items() if row.job_id != job)
    return AirFacts(shared.regime, shared.limits, shared.places, shared.makeups, mine, rest, shared.readings)


def _bays(steps: Iterable[Step]) -> list[Place]:
    return list({row.bay.pk: row.bay for row in steps if row.bay}.values())


def near_steps(loading: Loading, steps: list[Step]) -> "QuerySet[Step]":
    """Return the steps of other open jobs in these bays, or of these people, within a shift of the steps."""
    bays = {row.bay_id for row in steps if row.bay_id}
    people = {row.person_id for row in steps if row.person_id}
    first, last = span(steps)
    rows = Step.objects.filter(
        Q(bay__in=bays) | Q(person__in=people), job__shop=loading.shop, job__state=Job.State.OPEN,
        starts_at__lt=last, ends_at__gt=first,
    )  # fmt: skip
    return rows.exclude(job__in=loading.jobs)


def span(steps: list[Step]) -> tuple[datetime, datetime]:
    """Return from when until when another step may matter."""
    return min(row.starts_at for row in steps) - SHIFT, max(row.ends_at for row in steps) + SHIFT


def needs_of(steps: "QuerySet[Step]") -> list[StepNeed]:
    """Return what these steps take."""
    rows = StepNeed.objects.filter(step__in=steps.order_by().values("pk")).exclude(
        outcome=StepNeed.Outcome.NOT_DONE
    )
    return list(rows.select_related("product").order_by("id"))


def air_step(row: Step, needs: list[StepNeed]) -> AirStep:
    """Return a step with what it takes."""
    return AirStep(
        row.code, row.name, key(row.job_id), row.starts_at, row.ends_at,
        bay=row.bay.code if row.bay else None, person=row.person.code if row.person else "",
        sprayed=row.sprayed, respirator=row.respirator, inside=inside(row, needs), exhaust=row.local_exhaust,
        tools=tuple(map(str, row.tools)), dry_ice_g=row.dry_ice_g,
        signed=row.signed_at is not None,
        uses=tuple(
            AirUse(str(need.pk), need.amount, need.product.code if need.product else None, need.kind)
            for need in needs
        ),
    )  # fmt: skip


def inside(row: Step, needs: list[StepNeed]) -> bool:
    """Say whether a step is done in the car's cabin: it touches the interior, or all its products are for it.

    What it touches besides (glass, trim) counts there as well: nobody says how much went where, and the
    cabin's few cubic metres hold the least.
    """
    if row.touches is not None:
        return bool(INSIDE & frozenset(row.touches))
    kinds = {_kind(need.product) or need.kind for need in needs}
    return kinds == {Kind.INTERIOR}


def _kind(product: Product | None) -> str:
    return product.kind if product else ""
