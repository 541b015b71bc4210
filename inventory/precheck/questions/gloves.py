"""How long do the gloves on hand stand what a step takes, as their maker gives it?"""

from .asking import Finding, question
from .at_work import Task, series, tasks
from .case import Case
from .topics.people import DangerFacts, GloveFacts
from .words import plural

# EN ISO 374-1, level 1 of breakthrough is more than 10 minutes: what is below stands splashes only.
SPLASH = 10


@question("steps", "needs", "shelf", "products", "people")
def glove_minutes(case: Case) -> list[Finding]:
    """Say when to change gloves that do not stand the whole step; ask where they stand only a splash."""
    here = {item.product for item in case.facts.people.items if item.serves == "gloves"}
    short: list[tuple[int, Task, DangerFacts, GloveFacts]] = []
    for task in tasks(case):
        for danger in task.dangers:
            known = [
                one for one in case.facts.people.gloves if one.against == danger.code and one.glove in here
            ]
            best = max(known, key=lambda one: (one.minutes, one.glove), default=None)
            if best and best.minutes < task.minutes:
                short.append((best.minutes, task, danger, best))
    if not short:
        return []
    return [_change(sorted(short, key=lambda one: (one[0], one[1].step.starts_at, one[2].code)))]


def _change(short: list[tuple[int, Task, DangerFacts, GloveFacts]]) -> Finding:
    minutes, task, _, _ = short[0]
    splash = minutes <= SPLASH
    because = " ".join(
        f"{glove.glove_name} stand {danger.name} for {plural(least, 'minute')}; "
        f"{one.step.name} runs {one.minutes}."
        for least, one, danger, glove in short
    )
    return Finding(
        "people.gloves",
        "ask" if splash else "tell",
        f"The gloves on hand stand only a splash in {task.step.name}."
        if splash
        else f"Gloves are changed after {plural(minutes, 'minute')} in {task.step.name}.",
        because,
        "Take other gloves, or say how the hands stay out of it."
        if splash
        else "Put enough pairs beside the work and change by the clock.",
        f"the glove maker's minutes: {series(one[3].source for one in short)}",
        ("gloves", task.step.code),
        tuple(dict.fromkeys(danger.code for _, _, danger, _ in short)),
    )
