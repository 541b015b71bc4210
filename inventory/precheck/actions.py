"""What people say about a check: signing it, answering an ask, an owner's override. All of it is kept."""

from collections.abc import Iterable
from datetime import datetime
from typing import Protocol

from django.db import transaction

from inventory.models import CheckSignature, Job, Override, Person, RuleGrade, Shop, Shown
from inventory.precheck import queries
from inventory.precheck.questions import Finding
from inventory.precheck.rules import may_answer
from inventory.precheck.rules.catalogue import why_not


class NotNow(Exception):
    """What was asked for cannot be done; the sentence says why and what to do."""

    def __init__(self, says: str) -> None:
        super().__init__(says)
        self.says = says


@transaction.atomic
def answer(job: Job, code: str, about: str, says: str, reason: str, *, by: Person, at: datetime) -> Override:
    """Keep someone's word on a finding, as the sentence stood when they read it; raises NotNow."""
    finding = finding_of(job, code, about, at)
    if finding:
        keep_shown(job, [finding], at)
    if finding is None or finding.says != says:
        raise NotNow("The shelf changed since you read this. Read the check again.")
    if not may_answer(finding, by_owner=by.is_owner):
        raise NotNow(refusal(finding))
    return Override.objects.create(
        job=job, code=code, about=about, grade=finding.grade, says=says, reason=reason, by=by, given_at=at
    )


class Showing(Protocol):
    """A finding, whoever says it."""

    @property
    def code(self) -> str: ...
    @property
    def grade(self) -> str: ...
    @property
    def about(self) -> tuple[str, ...]: ...


def keep_shown(job: Job, findings: Iterable[Showing], at: datetime) -> None:
    """Keep what a check showed to somebody who acted on it; each thing counts once a job."""
    Shown.objects.bulk_create(
        (
            Shown(job=job, code=one.code, about=" ".join(one.about), grade=one.grade, first_at=at)
            for one in findings
        ),
        ignore_conflicts=True,
    )


def finding_of(job: Job, code: str, about: str, at: datetime) -> Finding | None:
    """Return an open finding of a job by its code and what it is about."""
    found = queries.check(job, at).check
    for finding in found.findings:
        if finding.code == code and " ".join(finding.about) == about and not found.is_answered(finding):
            return finding
    return None


def refusal(finding: Finding) -> str:
    """Return why a word does not end a finding."""
    if finding.grade == "stop":
        return f"This stop ends by changing the fact, not by a word. {finding.do}"
    return f"This question ends by doing what it says. {finding.do}"


def sign(job: Job, *, by: Person, at: datetime) -> CheckSignature:
    """Keep that someone read a check that is ready; raises NotNow while something stands open."""
    found = queries.check(job, at)
    keep_shown(job, found.check.findings, at)
    if found.check.verdict != "ready":
        raise NotNow(f"{found.headline.says} Sign when the check is ready.")
    shown = [
        {"code": one.code, "grade": one.grade, "says": one.says, "do": one.do, "about": list(one.about)}
        for one in found.check.findings
    ]
    return CheckSignature.objects.create(
        job=job, by=by, signed_at=at, verdict=found.check.verdict, findings=shown
    )


def regrade(shop: Shop, code: str, grade: str, reason: str, *, by: Person, at: datetime) -> RuleGrade:
    """Keep the grade that an owner gives a rule; earlier ones stay to be read. Raises NotNow."""
    if refused := why_not(code, grade):
        raise NotNow(refused)
    return RuleGrade.objects.create(shop=shop, code=code, grade=grade, reason=reason, by=by, given_at=at)
