"""The one sentence that leads: may this job start, and if not, what must change before when."""

from dataclasses import dataclass
from datetime import datetime

from inventory.precheck.questions import Facts
from inventory.precheck.questions.words import joined, moment, number
from inventory.precheck.rules import Check

SHORTAGE = "too_little"


@dataclass(frozen=True)
class Headline:
    """The verdict in a sentence, and the sentence after it."""

    says: str
    next: str


def headline(check: Check, facts: Facts, at: datetime) -> Headline:
    """Return the verdict of a check in words; `at` is the instant of the check."""
    stops, asks = check.count("stop"), check.count("ask")
    if stops:
        things = "one thing must change" if stops == 1 else f"{number(stops)} things must change"
        then = joined(f"Then {questions(asks)} to answer." if asks else "", _rest(check))
        return Headline(f"Not yet: {things} {_before(check, facts, at, 'stop')}.", then)
    if asks:
        asked = questions(asks)
        return Headline(
            f"{asked[:1].upper()}{asked[1:]} to answer {_before(check, facts, at, 'ask')}.", _rest(check)
        )
    return _ready(check, facts, at)


def questions(count: int) -> str:
    """Return "one question", "two questions"."""
    return f"{number(count)} question{'' if count == 1 else 's'}"


def _before(check: Check, facts: Facts, at: datetime, grade: str) -> str:
    starts = {step.code: step.starts_at for step in facts.steps}
    when = [
        starts[code] for one in check.findings if one.grade == grade for code in one.about if code in starts
    ]
    first = min(when, default=facts.job.starts_at)
    return "now" if first <= at else f"before {moment(first, facts.zone, at)}"


def _rest(check: Check) -> str:
    return "Everything else is ready, as answered." if check.answered else "Everything else is ready."


def _ready(check: Check, facts: Facts, at: datetime) -> Headline:
    to_come = [step for step in facts.steps if not step.signed_at]
    if facts.steps and not to_come:
        return Headline("Every step is signed.", "Close the job when the car is handed over.")
    first = min((step.starts_at for step in to_come), default=facts.job.starts_at)
    when = "to go on" if first <= at else f"for {moment(first, facts.zone, at)}"
    if check.answered:
        # An answer ends a question, never what it asked about: the shelf still holds what it holds.
        return Headline(f"Ready {when}, as answered: it stands on {_answers(check)}.", _words_on(check))
    if not any(need.job == facts.job.key for need in facts.needs):
        return Headline("Ready: nothing more is taken from the shelf.", "")
    return Headline(f"Ready {when}.", "There is enough for every step, and it lasts.")


def _answers(check: Check) -> str:
    count = len(check.answered)
    return f"{number(count)} answer{'' if count == 1 else 's'}"


def _words_on(check: Check) -> str:
    """Return what words stand for: a shortage first, since no word fills a bottle."""
    short = sum(code == SHORTAGE for code, _ in check.answered)
    said = f"There is too little for {_times(short)}: somebody said it will do." if short else ""
    others = len(check.answered) - short
    return joined(said, "Read what was said before you go on." if others else "")


def _times(count: int) -> str:
    return "one thing" if count == 1 else f"{number(count)} things"
