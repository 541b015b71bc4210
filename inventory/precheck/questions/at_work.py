"""A job's steps as people meet them: who does each, what it holds against them, until when it lasts."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime

from inventory.codes import pair

from .case import Case
from .facts import StepFacts
from .topics.people import DangerFacts, ItemFacts, PersonFacts, WorkFacts
from .words import day, moment

RESPIRATORS = {
    "ffp2": "dust mask FFP2",
    "ffp3": "dust mask FFP3",
    "half": "half mask",
    "full": "full-face mask",
    "powered_half": "powered half mask",
    "powered_full": "powered full-face mask",
    "hood": "loose powered hood",
    "air_fed": "air-fed mask",
}
TIGHT = frozenset(RESPIRATORS) - {"hood"}
ENDS = "nothing else ends this stop"


def a_mask(respirator: str) -> str:
    """Return what is worn with its article, "an air-fed mask"; the names here sound as they are spelt."""
    words = RESPIRATORS.get(respirator, "")
    article = "an" if words[:1] in {*"aeiou"} else "a"
    return f"{article} {words}" if words else ""


@dataclass(frozen=True)
class Task:
    """A step that is still to be done; one that is late is done now."""

    step: StepFacts
    work: WorkFacts
    person: PersonFacts | None
    dangers: tuple[DangerFacts, ...]
    on: date
    starts: str
    until: datetime

    @property
    def minutes(self) -> int:
        """How long it runs."""
        return round((self.step.ends_at - self.step.starts_at).total_seconds() / 60)

    @property
    def respirator(self) -> str:
        """What is worn, "half", or "" where nothing is."""
        return self.work.respirator if self.work.respirator in RESPIRATORS else ""


def tasks(case: Case) -> list[Task]:
    """Return the steps that nobody has signed, in their order."""
    return [_task(case, step) for step in case.facts.steps if not step.signed_at]


def _task(case: Case, step: StepFacts) -> Task:
    people = case.facts.people
    work = people.work.get(step.code, WorkFacts())
    poured = (
        bottle.product
        for supply in case.supplies
        if supply.step.code == step.code
        for bottle, _ in supply.taken
    )
    codes = dict.fromkeys((*work.products, *poured))
    return Task(
        step=step,
        work=work,
        person=people.persons.get(work.person),
        dangers=tuple(people.dangers[code] for code in codes if code in people.dangers),
        on=max(step.starts_at, case.at).astimezone(case.facts.zone).date(),
        starts=moment(step.starts_at, case.facts.zone, case.at),
        until=max(step.ends_at, case.at),
    )


def series(words: Iterable[str]) -> str:
    """Return "gloves", "gloves and goggles", "gloves, goggles and apron"; each once."""
    each = list(dict.fromkeys(words))
    return " and ".join(part for part in (", ".join(each[:-1]), *each[-1:]) if part)


def dated(on: date) -> str:
    """Return a day with its year: what protects people lasts for years."""
    return f"{day(on)} {on.year}"


def capital(text: str) -> str:
    """Return a sentence's beginning with its capital."""
    return text[:1].upper() + text[1:]


def takes(task: Task, dangers: Iterable[DangerFacts]) -> str:
    """Return "Wheel acid takes Brack wheel acid (Skin Corr. 1B H314, holds a fluoride)."."""
    return f"{task.step.name} takes {series(f'{one.name} ({why(one)})' for one in dangers)}."


def why(danger: DangerFacts) -> str:
    """Return the classes of a product and what has rules of its own."""
    own = (("holds a fluoride", danger.fluoride), ("holds isocyanates", danger.isocyanate))
    said = [*danger.hazards, *(words for words, holds in own if holds)]
    return ", ".join(said) or "an acid"


def ended(items: Iterable[ItemFacts]) -> str:
    """Return "Ossen gel BKTR VNXH in Bay 1 is good to Friday 20 November 2026." of each with a date."""
    return " ".join(
        f"{item.name} {pair(item.code)}{f' in {item.place_name}' if item.place_name else ''} is good to "
        f"{dated(item.ends_on)}."
        for item in items
        if item.ends_on
    )
