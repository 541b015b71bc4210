"""The car in hand, what every open job still needs, and the pre-job check over it, in few queries.

The bottles are handed in, since the scan has loaded them; the check's own code judges them.
"""

from collections import defaultdict
from collections.abc import Iterable, Sequence, Set
from dataclasses import dataclass, replace
from datetime import datetime

from inventory.models import Container, Job, Movement, Override, Shop, Step, StepNeed
from inventory.precheck import queries as precheck
from inventory.precheck.questions import Answer, LabelFacts
from inventory.precheck.questions import Facts as CheckFacts
from inventory.precheck.rules import Check, check_job
from inventory.precheck.rules.remaining import remaining
from inventory.stock import queries as stock
from inventory.stock.conversation import Said, State
from inventory.stock.conversation.facts import Facts, Found, JobFacts, StepFacts
from inventory.stock.conversation.guards import JUDGED_HERE
from inventory.stock.rules.reserve import Need
from safety.models import SheetVersion

COATING = "coating"


@dataclass(frozen=True)
class Booked:
    """What open jobs still need, net of what was used; whose each is; which lots each step has had."""

    needs: tuple[Need, ...]
    step_of: dict[str, str]
    cars: dict[str, tuple[str, str]]
    rows: list[StepNeed]
    lots: dict[str, frozenset[str]]


def job_for(shop: Shop, state: State, said: Said) -> tuple[Job | None, list[Step]]:
    """Return the car's job and its steps in order, in one query; a job without steps takes a second."""
    named = {"job": {"code": said.code}, "vehicle": {"vehicle__code": said.code, "state": "open"}}.get(
        said.kind
    )
    if named is None and not state.job:
        return None, []
    named = named or {"code": state.job, "state": "open"}
    within = {f"job__{name}": value for name, value in named.items()}
    rows = Step.objects.filter(job__shop=shop, **within).order_by(
        "job__starts_at", "job_id", "starts_at", "position"
    )
    steps = list(rows.select_related("job__vehicle", "job__shop", "bay", "person", "signed_by"))
    if steps:
        return steps[0].job, [step for step in steps if step.job_id == steps[0].job_id]
    return Job.objects.filter(shop=shop, **named).select_related("vehicle", "shop").order_by(
        "starts_at"
    ).first(), []


def booked(shop: Shop) -> Booked:
    """Return what the open jobs of a shop still need, in two queries."""
    open_needs = StepNeed.objects.filter(
        step__job__shop=shop, step__job__state="open", step__signed_at=None, outcome=""
    )
    rows = list(open_needs.select_related("product__supplier", "step__job__vehicle"))
    used = Movement.objects.filter(job__shop=shop, job__state="open", kind="use", reversed_by=None)
    columns = (
        "seq",
        "job_id",
        "step__code",
        "product__code",
        "product__kind",
        "concentrate",
        "source__lots__code",
    )
    uses: dict[tuple[str, str, str], int] = defaultdict(int)
    kinds: dict[str, str] = {}
    lots: dict[str, set[str]] = defaultdict(set)
    counted: set[int] = set()
    for seq, job, step, product, kind, amount, lot in used.values_list(*columns).order_by():
        if lot and step and kind == COATING:
            lots[step].add(lot)
        if seq not in counted:
            uses[precheck.key(job), step or "", product] += amount or 0
            kinds[product] = kind
            counted.add(seq)
    step_of = {str(row.id): row.step.code for row in rows}
    return Booked(
        needs=tuple(remaining(map(precheck.need_of, rows), step_of, uses, kinds)),
        step_of=step_of,
        cars={precheck.key(row.step.job_id): (row.step.job.code, row.step.job.vehicle.name) for row in rows},
        rows=rows,
        lots={step: frozenset(each) for step, each in lots.items()},
    )


def with_bookings(facts: Facts, found: Booked) -> Facts:
    """Add what open jobs still need, by the jobs' codes."""
    needs = tuple(replace(need, job=found.cars[need.job][0]) for need in found.needs)
    return replace(
        facts, needs=needs, step_of=found.step_of, booked=dict(found.cars.values()), step_lots=found.lots
    )


def with_job(
    facts: Facts,
    job: Job,
    steps: Sequence[Step],
    found: Booked,
    bottles: Iterable[Container],
    *,
    about: Set[str] | None,
) -> Facts:
    """Add the car and what the pre-job check finds; `about`: codes whose answers count, None for all."""
    check = _check(job, steps, found, list(bottles), facts.at, about)
    seen = tuple(Found(one.code, one.grade, one.says, one.do, one.about) for one in check.findings)
    car = _car(job, steps)
    return replace(facts, jobs={**facts.jobs, job.code: car, job.vehicle.code: car}, findings=seen)


def _check(
    job: Job,
    steps: Sequence[Step],
    found: Booked,
    bottles: list[Container],
    at: datetime,
    about: Set[str] | None,
) -> Check:
    facts = _check_facts(
        job, steps, found, [row for row in bottles if row.content and row.state in {"sealed", "open"}]
    )
    check = check_job(facts, at)
    open_asks = [one for one in check.findings if one.grade in {"stop", "ask"}]
    if about is not None:
        # What the station judges of the very bottle, it asks by itself.
        open_asks = [one for one in open_asks if one.code not in JUDGED_HERE and about & set(one.about)]
    return check_job(replace(facts, answers=_answers(job)), at) if open_asks else check


def _check_facts(job: Job, steps: Sequence[Step], found: Booked, bottles: list[Container]) -> CheckFacts:
    products = {row.product.code: row.product for row in found.rows if row.product}
    products |= {row.product.code: row.product for row in bottles if row.product}
    sheets = {product.sheet_id for product in products.values() if product.sheet_id}
    versions: dict[int, list[SheetVersion]] = defaultdict(list)
    for version in (
        SheetVersion.objects.filter(sheet__in=sheets).order_by("-revision_on", "-id") if sheets else ()
    ):
        versions[version.sheet_id].append(version)
    return CheckFacts(
        job=precheck.job_facts(job),
        zone=job.shop.zone,
        system=job.shop.system,
        steps=tuple(map(precheck.step_facts, steps)),
        needs=found.needs,
        step_of=found.step_of,
        jobs={precheck.key(row.step.job_id): precheck.job_facts(row.step.job) for row in found.rows},
        shelf=tuple(map(stock.on_shelf, bottles)),
        recalled=frozenset(row.code for row in bottles if any(lot.recalled for lot in row.lots.all())),
        places={row.place.code: row.place.name for row in bottles if row.place},
        products={code: precheck.product_facts(row) for code, row in products.items()},
        sheets={
            code: precheck.sheet_facts(row, versions[row.sheet_id or 0]) for code, row in products.items()
        },
        labels={row.code: LabelFacts(row.labelled_at, row.mixed_at) for row in bottles},
    )


def _answers(job: Job) -> tuple[Answer, ...]:
    rows = Override.objects.filter(job=job).select_related("by").order_by("given_at")
    return tuple(
        Answer(
            row.code,
            tuple(row.about.split()),
            row.says,
            row.reason,
            row.by.name,
            row.given_at,
            row.by.is_owner,
        )
        for row in rows
    )


def _car(job: Job, steps: Iterable[Step]) -> JobFacts:
    seen = tuple(
        StepFacts(
            step.code,
            step.stage,
            step.name,
            step.bay.code if step.bay else None,
            step.bay.name if step.bay else "",
            step.starts_at,
            step.signed_at is not None,
        )
        for step in steps
    )
    return JobFacts(job.code, job.vehicle.name, job.title, job.state, job.starts_at, job.booked_at, seen)
