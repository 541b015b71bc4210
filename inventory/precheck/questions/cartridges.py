"""Does a mask's cartridge still work, and to the end of the work?"""

from collections.abc import Iterable

from inventory.codes import pair

from .asking import Finding, question
from .at_work import ENDS, RESPIRATORS, Task, a_mask, ended, tasks
from .case import Case
from .topics.people import ItemFacts
from .words import plural

FILTERED = frozenset({"half", "full", "powered_half", "powered_full", "hood"})
HOURS = (
    "the minutes worn, as recorded, against those that the cartridge's maker or this shop gives it; smell is "
    "no schedule (OSHA on change-out)"
)


@question("steps", "people")
def cartridge_hours(case: Case) -> list[Finding]:
    """Stop without a cartridge that is in date and not worn out; ask where it ends during the work."""
    masked = [task for task in tasks(case) if task.respirator in FILTERED]
    if not masked or not case.facts.people.kept:
        return []
    here = [item for item in case.facts.people.items if item.serves == "cartridge"]
    lasting = [item for item in here if item.lasts(masked[-1].until)]
    wants = sum(task.minutes for task in masked)
    left = {item.code: item.wear_minutes - item.minutes for item in lasting if item.wear_minutes is not None}
    if any(left.get(item.code, wants) >= wants for item in lasting):
        return []
    best = max((item for item in lasting if left[item.code] > 0), key=lambda i: left[i.code], default=None)
    return [
        _no_cartridge(masked[0], here) if best is None else _runs_out(masked[0], best, left[best.code], wants)
    ]


def _no_cartridge(task: Task, here: Iterable[ItemFacts]) -> Finding:
    worn = " ".join(
        f"{item.name} {pair(item.code)} was worn {item.minutes} of {item.wear_minutes} minutes."
        for item in here
        if item.wear_minutes is not None and item.minutes >= item.wear_minutes
    )
    said = (f"{task.step.name} is done in {a_mask(task.respirator)}.", worn, ended(here))
    return Finding(
        "people.cartridge",
        "stop",
        f"No cartridge that still works is on hand for the {RESPIRATORS[task.respirator]}.",
        " ".join(part for part in said if part),
        f"Bring a fresh set before {task.starts} and scan it in; {ENDS}.",
        HOURS,
        ("cartridge", task.step.code),
    )


def _runs_out(task: Task, best: ItemFacts, left: int, wants: int) -> Finding:
    return Finding(
        "people.cartridge",
        "ask",
        f"{best.name} {pair(best.code)} has {plural(left, 'minute')} left.",
        f"The masked steps of this job, from {task.step.name} on, run {wants} minutes; it was worn "
        f"{best.minutes} of {best.wear_minutes}.",
        "Put a fresh set beside the work, change when its minutes are over, and say so here.",
        HOURS,
        (best.code, task.step.code),
    )
