"""Does every open bottle that a step takes carry our label?"""

from .asking import Finding, question
from .case import Case, Supply
from .facts import LabelFacts
from .words import moment, named


@question("steps", "needs", "shelf", "products", "labels")
def open_and_unlabelled(case: Case) -> list[Finding]:
    """Ask where an open bottle has no label of ours, or one that is older than what is in it."""
    opened = {bottle.code: bottle for bottle in case.facts.shelf if not bottle.sealed}
    found: dict[str, Finding] = {}
    for supply in case.supplies:
        for bottle, _ in supply.taken:
            if bottle.code in opened and bottle.code not in found:
                label = case.facts.labels.get(bottle.code, LabelFacts())
                if lacks := _lacks(label):
                    found[bottle.code] = _finding(case, supply, named(case, bottle), lacks, bottle.code)
    return list(found.values())


def _lacks(label: LabelFacts) -> str:
    if label.labelled_at is None:
        return "is open and has no label of ours"
    if label.mixed_at and label.labelled_at < label.mixed_at:
        return "was filled after its label was printed"
    return ""


def _finding(case: Case, supply: Supply, name: str, lacks: str, code: str) -> Finding:
    starts = moment(supply.need.starts_at, case.facts.zone, case.at)
    return Finding(
        "unlabelled",
        "ask",
        f"{name} {lacks}.",
        f"{supply.step.name} takes it from {starts}. A bottle without its name, use-by and "
        "hazards is a guess in the next hand.",
        "Print its label and stick it on; printing ends this question.",
        "29 CFR 1910.1200(f)(6), CLP article 17",
        (code, supply.step.code),
    )
