"""The facts of a check from the database: one loader a topic, as many queries for 3 steps as for 15."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from functools import cached_property
from typing import Any

from django.db.models import Q

from inventory.models import Container, Job, Override, Place, Product, Shop, Step, StepNeed
from inventory.precheck.questions import (
    QUESTIONS,
    Answer,
    Case,
    Facts,
    LabelFacts,
    StepFacts,
    plan,
)
from inventory.precheck.rules import Check, check_job
from inventory.precheck.rules.headline import Headline, headline
from inventory.precheck.rules.standing import Standing, standings
from inventory.stock import queries as stock
from inventory.stock.rules.remaining import remaining
from inventory.stock.rules.reserve import Need
from inventory.stock.used import used
from safety.models import SheetVersion

from .values import (
    bay_or_place,
    job_facts,
    key,
    need_of,
    on_shelf,
    product_facts,
    sheet_facts,
    step_facts,
)

__all__ = [
    "Checked",
    "Verdict",
    "check",
    "facts_of",
    "job_facts",
    "key",
    "need_of",
    "on_shelf",
    "open_needs",
    "product_facts",
    "sheet_facts",
    "step_facts",
    "verdicts",
]

TOPICS = frozenset().union(*(question.topics for question in QUESTIONS))


@dataclass(frozen=True)
class Verdict:
    """How a job stands: ready, ask or stop, and the sentence that says so."""

    verdict: str
    headline: Headline
    check: Check


@dataclass(frozen=True)
class Checked:
    """A check with what its page shows beside it."""

    facts: Facts
    check: Check
    headline: Headline
    standings: list[Standing]


def check(job: Job, at: datetime) -> Checked:
    """Return the whole check of a job (its shop and vehicle loaded) at an aware instant."""
    facts = facts_of(job.shop, [job], TOPICS)[job.id]
    shared = plan(facts.needs, facts.shelf, facts.zone, at)
    found = check_job(facts, at, shared=shared)
    return Checked(facts, found, headline(found, facts, at), standings(Case(facts, at, shared), found))


def verdicts(shop: Shop, at: datetime, jobs: Iterable[Job]) -> dict[str, Verdict]:
    """Return the verdict of each open job by its code, in as many queries for one as for twenty.

    The jobs come with their vehicle loaded.
    """
    asked = [job for job in jobs if job.state == Job.State.OPEN]
    if not asked:
        return {}
    facts = facts_of(shop, asked, TOPICS)
    shared = None
    found = {}
    for job in asked:
        mine = facts[job.id]
        shared = shared or plan(mine.needs, mine.shelf, mine.zone, at)
        checked = check_job(mine, at, shared=shared)
        found[job.code] = Verdict(checked.verdict, headline(checked, mine, at), checked)
    return found


def open_needs(shop: Shop) -> list[Need]:
    """Return what the open jobs of a shop still need, in concentrate; nothing of signed steps."""
    return list(_Loading(shop, []).needs)


def facts_of(shop: Shop, jobs: Sequence[Job], topics: Iterable[str]) -> dict[int, Facts]:
    """Return the facts of each job by its id, with the topics asked for."""
    loading = _Loading(shop, jobs)
    shared: dict[str, Any] = {}
    for topic in topics:
        shared |= _LOADERS[topic](loading)
    steps = loading.steps if "steps" in topics else {}
    return {
        job.id: Facts(
            job=job_facts(job), zone=shop.zone, system=shop.system, steps=tuple(steps.get(job.id, ())),
            answers=tuple(loading.answers.get(job.id, ())), **shared,
        )
        for job in jobs
    }  # fmt: skip


class _Loading:
    """Rows asked for once, whichever topics want them."""

    def __init__(self, shop: Shop, jobs: Sequence[Job]) -> None:
        self.shop, self.jobs = shop, jobs

    @cached_property
    def steps(self) -> dict[int, list[StepFacts]]:
        found: dict[int, list[StepFacts]] = defaultdict(list)
        rows = Step.objects.filter(job__in=self.jobs).select_related("bay", "person", "signed_by")
        for row in rows.order_by("starts_at", "position"):
            found[row.job_id].append(step_facts(row))
        return found

    @cached_property
    def answers(self) -> dict[int, list[Answer]]:
        found: dict[int, list[Answer]] = defaultdict(list)
        for row in Override.objects.filter(job__in=self.jobs).select_related("by").order_by("given_at"):
            said = Answer(
                row.code,
                tuple(row.about.split()),
                row.says,
                row.reason,
                row.by.name,
                row.given_at,
                row.by.is_owner,
            )
            found[row.job_id].append(said)
        return found

    @cached_property
    def need_rows(self) -> list[StepNeed]:
        rows = StepNeed.objects.filter(
            step__job__shop=self.shop,
            step__job__state=Job.State.OPEN,
            step__signed_at__isnull=True,
            outcome="",
        )
        if self.jobs:
            # What other jobs want of other kinds cannot touch these jobs.
            asked = StepNeed.objects.filter(step__job__in=self.jobs).order_by()
            kinds = {mine or its for mine, its in asked.values_list("kind", "product__kind").distinct()}
            rows = rows.filter(Q(kind__in=kinds) | Q(product__kind__in=kinds))
        measured = rows.annotate(kind_dimension=stock.kind_dimension())
        return list(measured.select_related("product__supplier", "step__job__vehicle"))

    @cached_property
    def needs(self) -> tuple[Need, ...]:
        named = {(row.step.code, row.product.code) for row in self.need_rows if row.product}
        found = used({row.step.job_id for row in self.need_rows}, key, named=named)
        needs = [need_of(row, found.had) for row in self.need_rows]
        return tuple(remaining(needs, self.step_of, found.amounts, found.kinds, found.worn))

    @cached_property
    def step_of(self) -> dict[str, str]:
        return {str(row.id): row.step.code for row in self.need_rows}

    @cached_property
    def product_rows(self) -> list[Product]:
        named = [row.product for row in self.need_rows if row.product]
        kinds = {row.kind for row in self.need_rows if row.kind} | {product.kind for product in named}
        rows = Product.objects.filter(shop=self.shop, kind__in=kinds, archived=False).select_related(
            "supplier"
        )
        return list({product.id: product for product in [*named, *rows]}.values())

    @cached_property
    def containers(self) -> list[Container]:
        rows = stock.containers(self.shop.id).select_related("place__within")
        # What stands at the waste point is on its way out: it serves nobody.
        here = rows.filter(product__in=self.product_rows, content__gt=0)
        return list(here.exclude(place__kind=Place.Kind.WASTE))


def _steps_topic(loading: _Loading) -> dict[str, Any]:
    return {}


def _needs_topic(loading: _Loading) -> dict[str, Any]:
    jobs = {key(row.step.job_id): job_facts(row.step.job) for row in loading.need_rows}
    return {"needs": loading.needs, "step_of": loading.step_of, "jobs": jobs}


def _shelf_topic(loading: _Loading) -> dict[str, Any]:
    rows = loading.containers
    recalled = frozenset(row.code for row in rows if any(lot.recalled for lot in row.lots.all()))
    places = {place.code: place.name for row in rows if (place := bay_or_place(row.place))}
    return {"shelf": tuple(on_shelf(row) for row in rows), "recalled": recalled, "places": places}


def _products_topic(loading: _Loading) -> dict[str, Any]:
    return {"products": {row.code: product_facts(row) for row in loading.product_rows}}


def _sheets_topic(loading: _Loading) -> dict[str, Any]:
    versions: dict[int, list[SheetVersion]] = defaultdict(list)
    sheets = {row.sheet_id for row in loading.product_rows if row.sheet_id}
    for version in SheetVersion.objects.filter(sheet__in=sheets).order_by("-revision_on", "-id"):
        versions[version.sheet_id].append(version)
    return {
        "sheets": {
            row.code: sheet_facts(row, versions.get(row.sheet_id or 0, [])) for row in loading.product_rows
        }
    }


def _labels_topic(loading: _Loading) -> dict[str, Any]:
    return {"labels": {row.code: LabelFacts(row.labelled_at, row.mixed_at) for row in loading.containers}}


_LOADERS = {
    "steps": _steps_topic,
    "needs": _needs_topic,
    "shelf": _shelf_topic,
    "products": _products_topic,
    "sheets": _sheets_topic,
    "labels": _labels_topic,
}
