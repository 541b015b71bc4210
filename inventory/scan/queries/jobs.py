"""The car in hand, what every open job still needs, and the pre-job check over it, in few queries.

The bottles are handed in, since the scan has loaded them; the check's own code judges them.
"""

from collections import defaultdict
from collections.abc import Iterable, Sequence, Set
from dataclasses import dataclass, replace
from datetime import datetime

from django.db.models import Q

from inventory.models import Container, Job, Override, Product, Shop, Step, StepNeed
from inventory.precheck import queries as precheck
from inventory.precheck.questions import Answer, Finding, LabelFacts
from inventory.precheck.questions import Facts as CheckFacts
from inventory.precheck.questions import JobFacts as CheckJob
from inventory.precheck.questions import StepFacts as CheckStep
from inventory.precheck.rules import Check, find, settle
from inventory.stock import queries as stock
from inventory.stock.conversation import Said, State
from inventory.stock.conversation.facts import Facts, Found, JobFacts, StepFacts
from inventory.stock.conversation.guards import JUDGED_HERE
from inventory.stock.rules.one_lot import NOTHING, Had, binds, joins
from inventory.stock.rules.remaining import remaining
from inventory.stock.rules.reserve import Need
from inventory.stock.used import two_lots_allowed, used
from safety.models import SheetVersion

from .attaching import with_who_attaches
from .needs import NEED_COLUMNS, NeedRow


@dataclass(frozen=True)
class Booked:
    """What open jobs still need, net of what was used; whose each is; what each step has had."""

    needs: tuple[Need, ...]
    step_of: dict[str, str]
    jobs: dict[str, CheckJob]
    cars: dict[str, tuple[str, str]]
    had: Had

    def of(self, products: Set[str], kinds: Set[str]) -> "Booked":
        """Return what bears on some products, and on all makes of some kinds."""
        mine = (need for need in self.needs if need.product in products or need.kind in kinds)
        return replace(self, needs=tuple(mine))


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
    steps = list(rows.select_related("job__vehicle", "bay"))
    if steps:
        steps[0].job.shop = shop
        return steps[0].job, [step for step in steps if step.job_id == steps[0].job_id]
    return Job.objects.filter(shop=shop, **named).select_related("vehicle", "shop").order_by(
        "starts_at"
    ).first(), []


def wanted_kinds(job: Job) -> set[str]:
    """Return the kinds of everything that a job is planned to take."""
    rows = StepNeed.objects.filter(step__job=job).values_list("kind", "product__kind")
    return {kind or its or "" for kind, its in rows.order_by().distinct()}


def booked(shop: Shop, kinds: Set[str], in_hand: Job | None) -> Booked:
    """Return what the open jobs of a shop still need of some kinds, in two queries."""
    open_needs = StepNeed.objects.filter(
        Q(kind__in=kinds) | Q(product__kind__in=kinds),
        step__job__shop=shop, step__job__state="open", step__signed_at=None, outcome="",
    )  # fmt: skip
    measured = open_needs.annotate(kind_dimension=stock.kind_dimension())
    rows = [NeedRow(*row) for row in measured.values_list(*NEED_COLUMNS).order_by()]
    jobs = {row.job_id for row in rows} | ({in_hand.pk} if in_hand else set())
    spent = used(jobs, precheck.key, kinds, {(row.step, row.product) for row in rows if row.product})
    step_of = {str(row.id): row.step for row in rows}
    return Booked(
        needs=tuple(
            remaining((row.need(spent.had) for row in rows), step_of, spent.amounts, spent.kinds, spent.worn)
        ),
        step_of=step_of,
        jobs={row.job_key: row.job for row in rows},
        cars={row.job_key: (row.job_code, row.car) for row in rows},
        had=spent.had,
    )


def with_bookings(facts: Facts, found: Booked) -> Facts:
    """Add what open jobs still need, by the jobs' codes."""
    needs = tuple(replace(need, job=found.cars[need.job][0]) for need in found.needs)
    return replace(
        facts, needs=needs, step_of=found.step_of, booked=dict(found.cars.values()), step_had=found.had
    )


def with_car(facts: Facts, job: Job, steps: Iterable[Step]) -> Facts:
    """Add the car in hand."""
    car = _car(job, steps)
    return replace(facts, jobs={**facts.jobs, job.code: car, job.vehicle.code: car})


def with_word_on_lots(facts: Facts, job: Job, meant: Iterable[Container], steps: Iterable[Step]) -> Facts:
    """Add an owner's word for two lots, which is asked for only where a coating is of another one."""
    bound = [
        bottle.shelf
        for row in meant
        if (bottle := facts.bottles.get(row.code)) and binds(bottle.shelf.kind, bottle.shelf.mixes_lots)
    ]
    had = [
        (each.batch, facts.step_had.get((step.code, thing), NOTHING))
        for step in steps
        for each in bound
        for thing in (each.product, each.kind)
    ]
    if all(joins(batch, lots) for batch, lots in had):
        return facts
    return replace(facts, two_lots_allowed=two_lots_allowed(job))


def with_check(
    facts: Facts,
    job: Job,
    steps: Sequence[Step],
    found: Booked,
    bottles: Iterable[Container],
    *,
    about: Set[str] | None,
    beyond: Sequence[Finding],
) -> Facts:
    """Add what the pre-job check finds; `about`: codes whose answers count, None for all.

    `beyond` is what it finds beyond the shelf.
    """
    check = _check(job, steps, found, list(bottles), facts.at, about, beyond)
    seen = with_who_attaches(job.shop, check.findings, about)
    return replace(
        facts, findings=tuple(Found(one.code, one.grade, one.says, one.do, one.about, one.of) for one in seen)
    )


def _check(
    job: Job,
    steps: Sequence[Step],
    found: Booked,
    bottles: list[Container],
    at: datetime,
    about: Set[str] | None,
    beyond: Sequence[Finding],
) -> Check:
    facts = _check_facts(
        job, steps, found, [row for row in bottles if row.content and row.state in {"sealed", "open"}]
    )
    findings = (*find(facts, at, questions=precheck.OF_THE_SHELF), *beyond)
    open_asks = [one for one in findings if one.grade in {"stop", "ask"}]
    if about is not None:
        # What the station judges of the very bottle, it asks by itself.
        open_asks = [one for one in open_asks if one.code not in JUDGED_HERE and about & set(one.about)]
    return settle(findings, replace(facts, answers=_answers(job)) if open_asks else facts)


def _check_facts(job: Job, steps: Sequence[Step], found: Booked, bottles: list[Container]) -> CheckFacts:
    products = {row.product.code: row.product for row in bottles if row.product}
    if missing := {need.product for need in found.needs if need.product} - set(products):
        rows = Product.objects.filter(shop=job.shop, code__in=missing).select_related("supplier")
        products |= {row.code: row for row in rows}
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
        steps=tuple(map(_checked_step, steps)),
        needs=found.needs,
        step_of=found.step_of,
        jobs=found.jobs,
        shelf=tuple(map(stock.on_shelf, bottles)),
        recalled=frozenset(row.code for row in bottles if any(lot.recalled for lot in row.lots.all())),
        places={row.place.code: row.place.name for row in bottles if row.place},
        products={code: precheck.product_facts(row) for code, row in products.items()},
        sheets={
            code: precheck.sheet_facts(row, versions[row.sheet_id or 0]) for code, row in products.items()
        },
        labels={row.code: LabelFacts(row.labelled_at, row.mixed_at) for row in bottles},
    )


def _checked_step(step: Step) -> CheckStep:
    """Return a step without its people: no finding names them."""
    bay = step.bay
    return CheckStep(
        step.code, step.stage, step.name, step.starts_at, step.ends_at, bay.code if bay else None,
        bay.name if bay else "", signed_at=step.signed_at,
    )  # fmt: skip


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
            step.rinses,
            step.ends_at,
        )
        for step in steps
    )
    return JobFacts(job.code, job.vehicle.name, job.title, job.state, job.starts_at, job.booked_at, seen)
