"""Is what saves an eye or a hand within reach of each bay, run and in date?"""

from collections.abc import Iterable
from datetime import timedelta

from inventory.codes import pair

from .asking import Finding, question
from .at_work import ENDS, Task, ended, series, takes, tasks
from .case import Case
from .topics.people import BayFacts, ItemFacts
from .words import day, plural

WEEK = timedelta(days=7)
EYEWASH = "29 CFR 1910.151(c) and ANSI Z358.1 (weekly); outside the US sealed bottles in date (from memory)"
GEL = "CDC MMWR 64(32), 2015: burns in car washing; rinse 5 minutes, then 2.5 % calcium gluconate gel"
STOCK = {
    "absorbent": "absorbent",
    "neutraliser": "a neutraliser",
    "extinguisher": "an extinguisher",
    "first_aid_kit": "a first-aid kit",
}


@question("steps", "needs", "shelf", "products", "people")
def eyewash_in_reach(case: Case) -> list[Finding]:
    """Stop corrosives in a bay without an eyewash; ask where it was not run within the week."""
    found: dict[str, Finding] = {}
    for task in tasks(case):
        bay = case.facts.people.bays.get(task.step.bay or "")
        burns = bay and bay.code not in found and any(one.corrosive for one in task.dangers)
        if bay and burns and (one := _eyewash(case, task, bay)) is not None:
            found[bay.code] = one
    return list(found.values())


def _eyewash(case: Case, task: Task, bay: BayFacts) -> Finding | None:
    by_us = case.facts.people.country == "US"
    bottles = [item for item in case.facts.people.items if item.serves == "eyewash" and _in_reach(item, bay)]
    if not by_us and any(item.sealed and item.lasts(task.until) for item in bottles):
        return None
    if not bay.eyewash_at:
        return _no_eyewash(task, bay, bottles, by_us=by_us)
    recent = bay.run_at is not None and case.at - bay.run_at <= WEEK
    # A run today would be a week old again before a later step.
    return None if recent or task.step.starts_at - case.at > WEEK else _not_run(case, task, bay)


def _no_eyewash(task: Task, bay: BayFacts, bottles: list[ItemFacts], *, by_us: bool) -> Finding:
    opened = [item for item in bottles if not item.sealed]
    dead = [item for item in bottles if item.sealed]
    said = (
        takes(task, [one for one in task.dangers if one.corrosive]),
        "" if by_us else ended(dead),
        f"{series(f'{i.name} {pair(i.code)}' for i in opened)} has been opened." if opened else "",
        "In the US a bottle does not take the place of an eyewash." if by_us and bottles else "",
    )
    more = "" if by_us else "Put a sealed eyewash bottle that is in date into it, or s"
    return Finding(
        "people.eyewash",
        "stop",
        f"{bay.name} has no eyewash for what burns eyes.",
        " ".join(part for part in said if part),
        f"{more or 'S'}ay on the page of {bay.name} where the eyewash is, within ten seconds' walk; {ENDS}.",
        EYEWASH,
        (bay.code, task.step.code),
    )


def _not_run(case: Case, task: Task, bay: BayFacts) -> Finding:
    last = "Nobody has written down a run of it."
    if bay.run_at:
        local = bay.run_at.astimezone(case.facts.zone).date()
        last = f"It was last run on {day(local)}, {plural((case.at - bay.run_at).days, 'day')} ago."
    return Finding(
        "people.eyewash_run",
        "ask",
        f"The eyewash of {bay.name} was not run this week.",
        f"{takes(task, [one for one in task.dangers if one.corrosive])} {last}",
        f"Run it until it is clear ({bay.eyewash_at}) and press “Ran it today” under People; that ends this "
        "question.",
        EYEWASH,
        (bay.code, task.step.code),
    )


@question("steps", "needs", "shelf", "products", "people")
def gel_in_reach(case: Case) -> list[Finding]:
    """Stop where a fluoride is used or stands and no gluconate gel in date is in reach."""
    found: dict[str, Finding] = {}
    for task in tasks(case):
        bay = case.facts.people.bays.get(task.step.bay or "")
        used = [one for one in task.dangers if one.fluoride]
        where = bay.code if bay else "gel"
        if where not in found and (used or (bay and bay.fluorides)):
            tubes = [item for item in case.facts.people.items if item.serves == "gluconate"]
            near = [item for item in tubes if bay is None or _in_reach(item, bay)]
            if not any(item.lasts(task.until) for item in near):
                found[where] = _no_gel(case, task, bay, near)
    return list(found.values())


def _no_gel(case: Case, task: Task, bay: BayFacts | None, near: list[ItemFacts]) -> Finding:
    used = [one for one in task.dangers if one.fluoride]
    stands = f"{series(bay.fluorides)} stands in {bay.name}." if bay and bay.fluorides else ""
    where = f" in reach of {bay.name}" if bay else " on the shelf"
    rest = [item for item in case.facts.people.items if item.serves == "gluconate" and item not in near]
    other = next((item for item in rest if item.lasts(task.until)), None)
    act = "Bring a tube that is in date"
    if other:
        act = f"Bring {other.name} {pair(other.code)} from {other.place_name or 'where it lies'}"
    return Finding(
        "people.gluconate",
        "stop",
        f"No calcium gluconate gel in date is{where}.",
        f"{takes(task, used) if used else stands} A fluoride burn hurts late and goes deep; the gel is "
        f"rubbed in at once. {ended(near)}".rstrip(),
        f"{act}{f' to {bay.name}' if bay else ''} before {task.starts}; {ENDS}.",
        GEL,
        (bay.code if bay else "gel", task.step.code),
    )


@question("steps", "people")
def rescue_in_date(case: Case) -> list[Finding]:
    """Ask once where what fights a spill, a fire or a cut in the job's bays is out of date."""
    dead: dict[str, ItemFacts] = {}
    first: Task | None = None
    for task in tasks(case):
        bay = case.facts.people.bays.get(task.step.bay or "")
        for item in _dead(case.facts.people.items, bay, task) if bay else ():
            dead.setdefault(item.code, item)
            first = first or task
    if first is None:
        return []
    items = sorted(dead.values(), key=lambda item: (item.ends_on is None, item.ends_on, item.code))
    one, many = items[0], len(items) > 1
    more = f" and {len(items) - 1} more are" if many else " is"
    return [
        Finding(
            "people.rescue",
            "ask",
            f"{one.name} {pair(one.code)}{more} out of date in {first.step.bay_name}.",
            ended(items),
            f"Put {series(STOCK[item.serves] for item in items)} that is in date there; take the old away.",
            "the dates printed on them",
            (one.code, first.step.code),
        )
    ]


def _dead(items: Iterable[ItemFacts], bay: BayFacts, task: Task) -> list[ItemFacts]:
    near = [item for item in items if item.serves in STOCK and _in_reach(item, bay)]
    good = {item.serves for item in near if item.lasts(task.until)}
    return [item for item in near if item.serves not in good]


def _in_reach(item: ItemFacts, bay: BayFacts) -> bool:
    """Say whether an item is in the bay, in something that stands in it, or where its first aid is."""
    said = bay.first_aid_at.casefold()
    return bay.code in item.reach or bool(item.place_name and item.place_name.casefold() in said)
