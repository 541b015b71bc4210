"""Is whoever does a step trained for what it holds against them, and was the first day's sheet signed?"""

from collections.abc import Iterable
from datetime import date

from .asking import Finding, question
from .at_work import ENDS, Task, a_mask, dated, series, takes, tasks
from .case import Case
from .topics.people import DangerFacts, PersonFacts

TOPICS = {
    "corrosive": "acids and alkalis",
    "fluoride": "fluorides and the gel",
    "flammable": "flammable liquids and aerosols",
    "respirator": "wearing a respirator",
}
# A course on all that is here covers what every shop has; what burns late, sensitises or is worn has its own.
GENERAL = frozenset({"corrosive", "flammable"})
BURNS = ("Flam. ", "Aerosol 1", "Aerosol 2")
EATS = frozenset({"H314", "H290"})  # burns skin, corrodes metal
NAMED = 2
# Where REACH applies: the EU and the three of the EEA (not Great Britain).
REACH = frozenset(
    "AT BE BG CY CZ DE DK EE ES FI FR GR HR HU IE IT LT LU LV MT NL PL PT RO SE SI SK IS LI NO".split()  # noqa: SIM905
)
ENTRY_74 = "REACH annex XVII entry 74: trained before use, renewed every 5 years (not GB)"
HAZCOM = "training at first assignment and for each new hazard: 29 CFR 1910.1200(h), 98/24/EC article 8"
FIRST_DAY = "this shop's rule: what is here is shown, read and signed before the first such step"
YEARS = 5


@question("steps", "needs", "shelf", "products", "people")
def first_day_signed(case: Case) -> list[Finding]:
    """Stop somebody who never signed the first day's sheet before an acid, a fluoride or a respirator."""
    found: dict[str, Finding] = {}
    for task in tasks(case):
        who, grave = task.person, [one for one in task.dangers if one.fluoride or one.kind == "acid"]
        new = who and not who.owner and who.first_day is None
        if who and new and (grave or task.respirator) and who.code not in found:
            found[who.code] = _unsigned(task, who, grave)
    return list(found.values())


def _unsigned(task: Task, who: PersonFacts, grave: list[DangerFacts]) -> Finding:
    worn = f"{task.step.name} is done in {a_mask(task.respirator)}."
    return Finding(
        "people.first_day",
        "stop",
        f"{who.name} has not signed the sheet of the first day.",
        f"{takes(task, grave) if grave else worn} {who.name} does it alone.",
        f"Go through the sheet with {who.name}, who signs it before {task.starts}; {ENDS}.",
        FIRST_DAY,
        (who.code, task.step.code),
    )


@question("steps", "needs", "shelf", "products", "people")
def trained_for_it(case: Case) -> list[Finding]:
    """Ask once a person for what they were not trained in; isocyanates stop where the law says so."""
    work = tasks(case)
    if not case.facts.people.trainings_kept:
        return [*_nobody_named(work), *_isocyanates(case, work), *_nothing_kept(case, work)]
    found: dict[str, list[tuple[Task, str]]] = {}
    for task in work:
        for topic in _topics(task) if task.person else ():
            if task.person and not _holds(task.person, topic, task.on):
                found.setdefault(task.person.code, []).append((task, topic))
    asked = [_untrained(lacks) for lacks in found.values()]
    return [*_nobody_named(work), *_isocyanates(case, work), *asked]


def _topics(task: Task) -> list[str]:
    return [topic for topic in TOPICS if _with(task, topic) or (topic == "respirator" and task.respirator)]


def _with(task: Task, topic: str) -> list[DangerFacts]:
    """Return the products of a step that a topic is about."""
    return [one for one in task.dangers if _is_about(one, topic)]


def _is_about(danger: DangerFacts, topic: str) -> bool:
    if topic == "corrosive":
        return danger.corrosive
    if topic == "fluoride":
        return danger.fluoride
    return topic == "flammable" and any(text.startswith(BURNS) for text in danger.hazards)


def _holds(who: PersonFacts, topic: str, on: date) -> bool:
    counts = {topic, "hazards"} if topic in GENERAL else {topic}
    return any(one.topic in counts and one.when.holds(on) for one in who.trained)


def _untrained(lacks: list[tuple[Task, str]]) -> Finding:
    task, who = lacks[0][0], lacks[0][0].person
    assert who is not None
    topics = series(f"for {TOPICS[topic]}{_named(lacks, topic)}" for _, topic in lacks)
    because = dict.fromkeys(_reason(one, topic) for one, topic in lacks)
    return Finding(
        "people.training",
        "ask",
        f"{who.name} has no training in date {topics}.",
        " ".join(because),
        f"Train {who.name} and write it down under People, or say who stands beside.",
        HAZCOM,
        (who.code, task.step.code),
        _of(lacks),
    )


def _of(lacks: Iterable[tuple[Task, str]]) -> tuple[str, ...]:
    """Return what somebody is asked about: the products of the topics, the step that is done in a mask."""
    return tuple(dict.fromkeys(
        code
        for task, topic in lacks
        for code in ((task.step.code,) if topic == "respirator" else (one.code for one in _with(task, topic)))
    ))  # fmt: skip


def _named(lacks: list[tuple[Task, str]], topic: str) -> str:
    """Return the products of a topic in brackets: an answer for one of them is no answer for the next."""
    names = _few(one.name for task, its in lacks if its == topic for one in _with(task, topic))
    return f" ({names})" if names else ""


def _few(names: Iterable[str]) -> str:
    """Return the first two names, each once, and how many more there are."""
    each = list(dict.fromkeys(names))
    more = [f"{len(each) - NAMED} more"] if len(each) > NAMED else []
    return series([*each[:NAMED], *more])


def _reason(task: Task, topic: str) -> str:
    if topic == "respirator":
        return f"{task.step.name} is done in {a_mask(task.respirator)}."
    return takes(task, _with(task, topic))


def _nothing_kept(case: Case, work: Iterable[Task]) -> list[Finding]:
    meant = [task for task in work if task.person and _topics(task)]
    if not meant:
        return []
    grave = any("fluoride" in _topics(task) or task.respirator for task in meant)
    because = dict.fromkeys(_reason(task, _topics(task)[0]) for task in meant)
    names = _few(one.name for task in meant for topic in _topics(task) for one in _with(task, topic))
    return [
        Finding(
            "people.training",
            "ask" if grave else "tell",
            f"Nobody's training is written down here{f' for {names}' if names else ''}.",
            " ".join(because),
            "Write down under People who was trained for what, and when.",
            HAZCOM,
            (case.facts.job.code, meant[0].step.code),
            _of((task, topic) for task in meant for topic in _topics(task)),
        )
    ]


def _nobody_named(work: Iterable[Task]) -> list[Finding]:
    """Ask once a job who does what hurts late or needs a mask, and then acids and what corrodes."""
    open_to_all = [task for task in work if task.person is None]
    late = [task for task in open_to_all if _late(task) or task.respirator]
    meant = late + [task for task in open_to_all if _grave(task) and task not in late]
    if not meant:
        return []
    first, grave = meant[0], _late(meant[0]) or _grave(meant[0])
    worn = f"{first.step.name} is done in {a_mask(first.respirator)}."
    return [
        Finding(
            "people.training",
            "ask",
            f"Nobody is named for {_few(task.step.name for task in meant)}.",
            f"{takes(first, grave) if grave else worn} All of this hangs on who does it.",
            "Name who does it on the job's page.",
            HAZCOM,
            ("nobody", first.step.code),
        )
    ]


def _late(task: Task) -> list[DangerFacts]:
    """Return what harms long after it was used."""
    return [one for one in task.dangers if one.fluoride or one.isocyanate]


def _grave(task: Task) -> list[DangerFacts]:
    """Return acids, and what corrodes skin or metal."""
    return [
        one
        for one in task.dangers
        if one.kind == "acid"
        or any(EATS & set(text.split()) or "Skin Corr. 1" in text for text in one.hazards)
    ]


def _isocyanates(case: Case, work: Iterable[Task]) -> list[Finding]:
    by_law = case.facts.people.country in REACH
    found: dict[str, list[tuple[Task, DangerFacts]]] = {}
    for task in work:
        who = task.person
        if who and not _for_isocyanates(who, task.on):
            for one in task.dangers:
                if one.isocyanate:
                    found.setdefault(who.code, []).append((task, one))
    return [_isocyanate(lacks, by_law=by_law) for lacks in found.values()]


def _for_isocyanates(who: PersonFacts, on: date) -> bool:
    return any(
        one.topic == "isocyanate" and one.when.holds(on) and on <= _renewed(one.when.on)
        for one in who.trained
    )


def _renewed(trained_on: date) -> date:
    """Return the last day of a training that lasts five years; 29 February ends on the 28th."""
    try:
        return trained_on.replace(year=trained_on.year + YEARS)
    except ValueError:
        return trained_on.replace(year=trained_on.year + YEARS, day=28)


def _isocyanate(lacks: list[tuple[Task, DangerFacts]], *, by_law: bool) -> Finding:
    task, who = lacks[0][0], lacks[0][0].person
    assert who is not None
    holds = [one for of, one in lacks if of is task]
    last = max((one.when.on for one in who.trained if one.topic == "isocyanate"), default=None)
    was = f" The last training was on {dated(last)}." if last else ""
    rule = (
        "Where REACH applies only trained people use them from 0.1 % on; nothing here says that it is less."
        if by_law
        else "No law of this country that we know asks for it; one breath too many sensitises for life."
    )
    return Finding(
        "people.training",
        "stop" if by_law else "ask",
        f"{who.name} has no training in date for diisocyanates ({_few(one.name for _, one in lacks)}).",
        f"{task.step.name} takes {series(one.name for one in holds)}, which {_verb(holds)}.{was} {rule}",
        f"Train {who.name} and write it down under People, or give the step to somebody trained"
        + (f"; {ENDS}." if by_law else ", or say who stands beside."),
        ENTRY_74 if by_law else "this shop's rule, after REACH annex XVII entry 74, which does not hold here",
        (who.code, "isocyanate", task.step.code),
        tuple(dict.fromkeys(one.code for _, one in lacks)),
    )


def _verb(holds: list[DangerFacts]) -> str:
    """Return the verb for one product or several."""
    return "holds isocyanates" if len(holds) == 1 else "hold isocyanates"
