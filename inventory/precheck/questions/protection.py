"""Is what each hazard and step needs to be worn on hand, in date, and long enough?"""

from collections.abc import Iterable
from dataclasses import dataclass

from safety.hazards.equipment import SOURCE as WORN
from safety.hazards.equipment import grave, worn_against

from .asking import Finding, question
from .at_work import ENDS, RESPIRATORS, Task, a_mask, capital, ended, series, takes, tasks
from .case import Case
from .respirators import serves_as
from .topics.people import DangerFacts, ItemFacts

WORDS = {
    "gloves": "gloves",
    "goggles": "goggles",
    "face_shield": "a face shield",
    "apron": "an apron",
    **{kind: a_mask(kind) for kind in RESPIRATORS},
}
# A mask over the whole face guards the eyes and the face too.
WHOLE_FACE = {"full", "powered_full", "air_fed"}
ALSO = {"goggles": WHOLE_FACE, "face_shield": WHOLE_FACE}
MASK = "29 CFR 1910.134; HSE on isocyanate paints: filtering masks are not acceptable, the mask is air-fed"


@dataclass(frozen=True)
class Wanted:
    """One item that a step wants, for which products, and whether the step stops without it."""

    item: str
    task: Task
    dangers: tuple[DangerFacts, ...]
    stops: bool


@question("steps", "needs", "shelf", "products", "people", "air")
def equipment_on_hand(case: Case) -> list[Finding]:
    """Stop or ask where what is to be worn is not on hand in date; ask once where nobody says what serves."""
    work = tasks(case)
    if not case.facts.people.kept:
        return [*_sprayed(case, work), *_not_kept(case, work)]
    lacks = [want for task in work for want in _wanted(task) if not _served(case, want)]
    found = []
    for stops in (True, False):
        if some := [want for want in lacks if want.stops is stops]:
            found.append(_missing(case, some, stops=stops))
    return [*_sprayed(case, work), *found]


def _wanted(task: Task) -> list[Wanted]:
    items: dict[str, list[DangerFacts]] = {}
    for danger in task.dangers:
        for item in worn_against(danger.all, danger.worn):
            items.setdefault(item, []).append(danger)
    worn = [
        Wanted(item, task, tuple(some), any(grave(one.all) for one in some)) for item, some in items.items()
    ]
    return [*worn, *([Wanted(task.respirator, task, (), stops=True)] if task.respirator else [])]


def _serves(item: ItemFacts, wanted: str) -> bool:
    if wanted in RESPIRATORS:
        return serves_as(item, wanted)
    return item.serves == wanted or item.serves in ALSO.get(wanted, set())


def _served(case: Case, want: Wanted) -> bool:
    here = (item for item in case.facts.people.items if _serves(item, want.item))
    return any(item.lasts(want.task.until) for item in here)


def _missing(case: Case, lacks: list[Wanted], *, stops: bool) -> Finding:
    items = list(dict.fromkeys(want.item for want in lacks))
    words = capital(series(WORDS[item] for item in items))
    verb = "is" if len(items) == 1 and items[0] not in ("gloves", "goggles") else "are"
    dead = [item for item in case.facts.people.items if any(_serves(item, want) for want in items)]
    first = lacks[0].task
    return Finding(
        "people.equipment",
        "stop" if stops else "ask",
        f"{words} {verb} not on hand in date.",
        " ".join(part for part in (*_reasons(lacks), ended(dead)) if part),
        f"Get what is missing before {first.starts} and scan it in; under People, “What protects people "
        f"here” says what each serves{f'; {ENDS}' if stops else ''}.",
        WORN if any(want.dangers for want in lacks) else MASK,
        (*items, first.step.code),
        tuple(dict.fromkeys(code for want in lacks for code in _raised_by(want))),
    )


def _raised_by(want: Wanted) -> tuple[str, ...]:
    """A mask is of the step that is done in it, what else is worn of the products it guards from."""
    return tuple(one.code for one in want.dangers) or (want.task.step.code,)


def _reasons(lacks: Iterable[Wanted]) -> list[str]:
    said: dict[str, None] = {}
    for want in lacks:
        if not want.dangers:
            said[f"{want.task.step.name} is done in {WORDS[want.item]}."] = None
            continue
        said[takes(want.task, want.dangers)] = None
        for danger in want.dangers:
            if worn := [f"{part}: {text}" for part, text in danger.worn.items() if text]:
                said[f"The sheet of {danger.name} wants {', '.join(worn)}."] = None
    return list(said)


def _not_kept(case: Case, work: Iterable[Task]) -> list[Finding]:
    for task in work:
        own = [one for one in task.dangers if one.fluoride or one.isocyanate]
        if own or task.respirator:
            worn = f"{task.step.name} is done in {WORDS.get(task.respirator, '')}."
            return [
                Finding(
                    "people.equipment",
                    "ask",
                    "Nobody has said here which products protect people.",
                    f"{takes(task, own) if own else worn} Gloves, goggles and masks have dates, too.",
                    "Say under People, “What protects people here”, what each item serves; until then look "
                    "for yourself before the first bottle is opened.",
                    WORN,
                    (case.facts.job.code, task.step.code),
                )
            ]
    return []


def _sprayed(case: Case, work: Iterable[Task]) -> list[Finding]:
    """Stop where isocyanates are sprayed in anything but an air-fed mask.

    Where the sheet's composition is typed in, the air's own question judges it by substance and says it.
    """
    composed = {code for code, one in case.facts.air.makeups.items() if one.composed}
    for task in work:
        holds = [one for one in task.dangers if one.isocyanate and one.code not in composed]
        if holds and task.work.sprayed and task.respirator != "air_fed":
            has = a_mask(task.respirator) or "no mask"
            return [
                Finding(
                    "people.equipment",
                    "stop",
                    f"{task.step.name} sprays isocyanates with {has} planned.",
                    f"{takes(task, holds)} No filter warns of them: the air comes by a hose.",
                    f"Plan an air-fed mask for {task.step.name}, or do not spray it; {ENDS}.",
                    MASK,
                    ("air_fed", "sprayed", task.step.code),
                )
            ]
    return []
