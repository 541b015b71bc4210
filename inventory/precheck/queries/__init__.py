"""The facts of a check from the database: one loader a topic, as many queries for 3 steps as for 15."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from inventory.models import Job, Person, Shop
from inventory.precheck.questions import QUESTIONS, Case, Facts, Finding, plan
from inventory.precheck.rules import Check, check_job, find
from inventory.precheck.rules.headline import Headline, headline
from inventory.precheck.rules.standing import Standing, standings
from inventory.stock.rules.reserve import Need

from .burning import burns_as, packs_too_large
from .cans import Can, cans, tipped_into, tipping
from .grades import grade_of, never_shown, rates, regrades
from .loaders import PER_JOB, SHARED
from .loading import Loading
from .poured import Pouring
from .profiles import does
from .put_away import putting_away
from .rags import rag_cans
from .reactions import WETS, uses_on
from .substances import sheets_of, substances
from .values import (
    job_facts,
    key,
    need_of,
    on_shelf,
    product_facts,
    sheet_facts,
    step_facts,
)

__all__ = [
    "OF_THE_SHELF",
    "WETS",
    "Can",
    "Checked",
    "Pouring",
    "Verdict",
    "beyond_the_shelf",
    "burns_as",
    "cans",
    "check",
    "does",
    "facts_of",
    "grade_of",
    "job_facts",
    "key",
    "need_of",
    "never_shown",
    "on_shelf",
    "open_needs",
    "packs_too_large",
    "product_facts",
    "putting_away",
    "rag_cans",
    "rates",
    "regrades",
    "sheet_facts",
    "sheets_of",
    "step_facts",
    "substances",
    "tipped_into",
    "tipping",
    "uses_on",
    "verdicts",
]

OF_THE_SHELF = tuple(each for each in QUESTIONS if not each.topics & set(PER_JOB))
BEYOND_THE_SHELF = tuple(each for each in QUESTIONS if each.topics & set(PER_JOB))
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
    facts = facts_of(job.shop, [job], TOPICS, at=at)[job.id]
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
    facts = facts_of(shop, asked, TOPICS, at=at)
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
    return list(Loading(shop, []).needs)


@dataclass(frozen=True)
class BeyondTheShelf:
    """Findings, and the codes of the products whose amount can change them: what is breathed is weighed."""

    findings: tuple[Finding, ...]
    weighed: tuple[str, ...]


def beyond_the_shelf(
    job: Job, at: datetime, by: Person | None = None, pouring: Pouring | None = None
) -> BeyondTheShelf:
    """Return what a job's check finds beyond the shelf: people, air, surfaces, reactions, paint, weather.

    No answer is heard yet. `by` has the bottle in hand, whoever was planned; `pouring` is what is in it.
    """
    in_hand = {job.pk: pouring} if pouring else {}
    facts = facts_of(job.shop, [job], TOPICS, by, at=at, pouring=in_hand)[job.id]
    weighed = sorted(code for code, made in facts.air.makeups.items() if made.ingredients)
    return BeyondTheShelf(find(facts, at, questions=BEYOND_THE_SHELF), tuple(weighed))


def facts_of(
    shop: Shop,
    jobs: Sequence[Job],
    topics: Iterable[str],
    doing: Person | None = None,
    *,
    at: datetime | None = None,
    pouring: Mapping[int, Pouring] | None = None,
) -> dict[int, Facts]:
    """Return the facts of each job by its id, with the topics asked for."""
    loading = Loading(shop, jobs, doing, at=at, pouring=pouring)
    shared: dict[str, Any] = {}
    own: dict[str, dict[int, Any]] = {}
    for topic in topics:
        if topic in PER_JOB:
            own[topic] = PER_JOB[topic](loading)
        elif topic in SHARED:
            shared |= SHARED[topic](loading)
    steps = loading.steps if "steps" in topics else {}
    return {
        job.id: Facts(
            job=job_facts(job), zone=shop.zone, system=shop.system, steps=tuple(steps.get(job.id, ())),
            answers=tuple(loading.answers.get(job.id, ())), grades=loading.grades, **shared,
            **{topic: found[job.id] for topic, found in own.items() if job.id in found},
        )
        for job in jobs
    }  # fmt: skip
