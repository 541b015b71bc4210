"""Facts in, findings out: every question is asked, each cause is said once, the gravest first."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import datetime

from inventory.precheck.questions import QUESTIONS, Answer, Case, Facts, Finding, Plan, Question, plan
from inventory.precheck.questions.asking import GRADES
from inventory.precheck.questions.words import day
from inventory.stock.rules.one_lot import TWO_LOTS

from .catalogue import may_regrade, protects_paint

# An owner's word on these holds for its step: their figures move with every scan.
MOVING = frozenset({TWO_LOTS})
# A word on these holds for the product in the whole job: the bottle that is asked about is the same one.
OF_THE_PRODUCT = frozenset({"no_sheet"})
# Asked at a station alone, where a coating comes to a car; a word on it holds for the whole job.
NOT_SIGNED = "order.not_signed"
# Asks that end by doing what they name; a word does not end them.
ENDED_BY_DOING = frozenset(
    {"plan.no_steps", "air.no_bay", "unlabelled", "people.eyewash_run", "rags.emptied"}
)


@dataclass(frozen=True)
class Check:
    """A verdict and what led to it; what was answered stays in the list as a note that says by whom."""

    verdict: str
    findings: tuple[Finding, ...]
    answered: frozenset[tuple[str, tuple[str, ...]]] = frozenset()

    def is_answered(self, finding: Finding) -> bool:
        """Say whether someone answered or overrode this."""
        return (finding.code, finding.about) in self.answered

    def count(self, grade: str) -> int:
        """Return how many findings of a grade stand open."""
        return sum(finding.grade == grade for finding in self.findings)


def check_job(
    facts: Facts, at: datetime, *, shared: Plan | None = None, questions: Iterable[Question] = QUESTIONS
) -> Check:
    """Return the check of a job at an aware instant; `shared` is the plan of all open jobs."""
    return settle(find(facts, at, shared=shared, questions=questions), facts)


def find(
    facts: Facts, at: datetime, *, shared: Plan | None = None, questions: Iterable[Question] = QUESTIONS
) -> tuple[Finding, ...]:
    """Return what the questions find, each cause once, with the grades that the owner gave."""
    case = Case(facts, at, shared or plan(facts.needs, facts.shelf, facts.zone, at))
    found: dict[tuple[str, tuple[str, ...]], Finding] = {}
    for question in questions:
        for finding in question.ask(case):
            found.setdefault((finding.code, finding.about), regraded(finding, facts.grades))
    return tuple(found.values())


def settle(found: Iterable[Finding], facts: Facts) -> Check:
    """Return the check that findings come to once the job's answers are heard, the gravest first."""
    by_cause = {(one.code, one.about): one for one in found}
    answers = {key: answer for key, one in by_cause.items() if (answer := answer_to(one, facts.answers))}
    shown = [_noted(one, answers[key], facts) if key in answers else one for key, one in by_cause.items()]
    findings = tuple(sorted(shown, key=lambda one: _order(one, facts)))
    return Check(_verdict(findings), findings, frozenset(answers))


def regraded(finding: Finding, grades: Mapping[str, str]) -> Finding:
    """Return a finding with the grade that the shop's owner gave its rule, where that may be given.

    A grade stands under a finding's own code, or under its family's ("wait.").
    """
    family = finding.code.partition(".")[0] + "."
    grade = grades.get(finding.code) or grades.get(family)
    return replace(finding, grade=grade) if grade and may_regrade(finding, grade) else finding


def answer_to(finding: Finding, answers: Iterable[Answer]) -> Answer | None:
    """Return the last word on a finding that holds, by someone who may say it.

    A word holds for its sentence; an owner's on two lots for its step, whose figures move with every scan;
    on a missing data sheet for its product, whichever step takes it next.
    """
    held = [
        answer
        for answer in answers
        if answer.code == finding.code
        and _alike(answer.about, finding)
        and (answer.says == finding.says or finding.code in MOVING | {NOT_SIGNED})
        and may_answer(finding, by_owner=answer.by_owner)
    ]
    return max(held, key=lambda answer: answer.given_at, default=None)


def _alike(about: tuple[str, ...], finding: Finding) -> bool:
    if finding.code == NOT_SIGNED:
        return True
    if finding.code in OF_THE_PRODUCT:
        return about[:1] == finding.about[:1]
    return about == finding.about


def may_answer(finding: Finding, *, by_owner: bool) -> bool:
    """Say whether a word can end a finding: asks by whoever works here, stops for the paint by an owner."""
    if finding.grade == "stop":
        return by_owner and protects_paint(finding.code)
    return finding.grade == "ask" and finding.code not in ENDED_BY_DOING


def _noted(finding: Finding, answer: Answer, facts: Facts) -> Finding:
    on = day(answer.given_at.astimezone(facts.zone).date())
    did = "answered" if finding.grade == "ask" else "overrode this stop"
    return replace(finding, grade="tell", do=f"{answer.by} {did} on {on}: “{answer.reason}”")


def _order(finding: Finding, facts: Facts) -> tuple[object, ...]:
    starts = {step.code: step.starts_at for step in facts.steps}
    when = min((starts[code] for code in finding.about if code in starts), default=facts.job.starts_at)
    return GRADES.index(finding.grade), when, finding.code, finding.about


def _verdict(findings: tuple[Finding, ...]) -> str:
    grades = {finding.grade for finding in findings}
    return next((grade for grade in ("stop", "ask") if grade in grades), "ready")
