"""May whoever does a step wear what the step is done in: evaluated, fitted, nothing between mask and skin?"""

from .asking import Finding, question
from .at_work import ENDS, RESPIRATORS, TIGHT, Task, a_mask, dated, tasks
from .case import Case
from .topics.people import Fitted, ItemFacts, PersonFacts
from .words import day

OSHA = "29 CFR 1910.134(e)(1) and (f)(2): evaluated before the fit test, fitted every year and for each mask"
SHAVEN = "29 CFR 1910.134(g)(1)(i)(A) (from memory); HSE says the same of tight masks"
# What serves a step that is done in it; the dust masks are one kind of item, told apart by their letters.
KIND = {"ffp3": "ffp2"}


@question("steps", "people")
def fit_for_the_mask(case: Case) -> list[Finding]:
    """Stop a respirator step whose person was not evaluated, not fitted, or has a beard under the seal."""
    found: dict[tuple[str, str], Finding] = {}
    for task in tasks(case):
        if task.person and task.respirator:
            for one in (
                _evaluated(task, task.person),
                _fitted(case, task, task.person),
                _face(task, task.person),
            ):
                if one is not None:
                    found.setdefault((one.code, task.person.code), one)
    return list(found.values())


def serves_as(item: ItemFacts, respirator: str) -> bool:
    """Say whether an item is what a step is done in; an FFP3 mask says so in its letters."""
    good = respirator != "ffp3" or "3" in item.filters
    return good and item.serves == KIND.get(respirator, respirator)


def _is_evaluated(task: Task, who: PersonFacts) -> bool:
    return any(one.holds(task.on) for one in who.evaluated)


def _evaluated(task: Task, who: PersonFacts) -> Finding | None:
    if _is_evaluated(task, who):
        return None
    last = max((one.until for one in who.evaluated if one.until), default=None)
    was = f" The last one was good to {dated(last)}." if last else ""
    fitted = ", then have the mask fitted" if task.respirator in TIGHT else ""
    return Finding(
        "people.evaluation",
        "stop",
        f"{who.name} has no medical evaluation in date for {a_mask(task.respirator)}.",
        f"{task.step.name} is done in it from {task.starts}.{was} A mask makes breathing harder: a physician "
        "says first who may wear one.",
        f"Have {who.name} evaluated and write the day down under People{fitted}; {ENDS}.",
        OSHA,
        (who.code, task.step.code),
    )


def _fitted(case: Case, task: Task, who: PersonFacts) -> Finding | None:
    # Without the evaluation no fit test counts: that is said alone.
    if task.respirator not in TIGHT or not _is_evaluated(task, who):
        return None
    masks = [item for item in case.facts.people.items if serves_as(item, task.respirator)]
    # One that is out of date is worn by nobody; where all are, that is said of the equipment.
    here = {item.product for item in masks if item.lasts(task.until)} or {item.product for item in masks}
    kind = KIND.get(task.respirator, task.respirator)
    fits = [one for one in who.fitted if one.serves == kind and one.evaluated_on <= one.when.on]
    if any(one.when.holds(task.on) and (one.mask in here or not here) for one in fits):
        return None
    return Finding(
        "people.fit_test",
        "stop",
        _unfitted(task, who, fits, here),
        f"{task.step.name} is done in {a_mask(task.respirator)} on {day(task.on)}. A mask that was "
        "not fitted to this face leaks where nobody sees it.",
        f"Have the mask that is here fitted to {who.name} before {task.starts} and write it down under "
        f"People; {ENDS}.",
        OSHA,
        (who.code, task.step.code),
    )


def _unfitted(task: Task, who: PersonFacts, fits: list[Fitted], here: set[str]) -> str:
    of_these = [one for one in fits if one.mask in here or not here]
    last = max(of_these, key=lambda one: one.when.until or one.when.on, default=None)
    if last and last.when.until:
        return f"{who.name}'s fit test of the {last.mask_name} is good to {dated(last.when.until)} only."
    if fits:
        return f"{who.name} was fitted with the {fits[0].mask_name}, which is not on the shelf in date."
    return f"{who.name} has no fit test for {a_mask(task.respirator)}."


def _face(task: Task, who: PersonFacts) -> Finding | None:
    if task.respirator not in TIGHT or who.face == "shaven":
        return None
    worn, beard = RESPIRATORS[task.respirator], who.face == "beard"
    return Finding(
        "people.face",
        "stop" if beard else "ask",
        f"{who.name} has hair where the {worn} seals."
        if beard
        else f"Nobody has said whether {who.name} is clean-shaven where the {worn} seals.",
        f"{task.step.name} is done in it from {task.starts}. Through a beard a tight mask leaks.",
        f"Take a loose powered hood for this step, or let {who.name} shave and say so under People; {ENDS}."
        if beard
        else f"Look at {who.name}, and say it under People.",
        SHAVEN,
        (who.code, task.step.code),
    )
