"""Do rags that burn or heat by themselves go into a covered metal can, emptied at the end of each day?"""

from inventory.trade.tools import on_a_rag, source
from safety.reactions.groups import traits

from .air import to_come
from .asking import Finding, question
from .case import Case
from .evaporation import day_of, makeups_of
from .topics.air import AirStep, Makeup
from .topics.rags import RagCan
from .words import day


@question("steps", "needs", "shelf", "products", "air", "reactions", "rags")
def rags_in_their_can(case: Case) -> list[Finding]:
    """Ask once a bay: where no can is named, and on the day where it was not emptied after the last use."""
    found: dict[str, Finding] = {}
    for step in to_come(case):
        bay = case.facts.rags.bays.get(step.bay or "")
        why = _why(case, step) if bay and bay.code not in found else ""
        if bay and why and (one := _asked(case, step, bay, why)):
            found[bay.code] = one
    return list(found.values())


def _why(case: Case, step: AirStep) -> str:
    """Return what of a step makes a rag dangerous, its first product alone: one is enough."""
    for one in makeups_of(case, step):
        if says := on_a_rag(_traits(case, one), frozenset(each.cas for each in one.ingredients)):
            return f"{step.name} takes {one.name}, which {says}."
    return ""


def _asked(case: Case, step: AirStep, bay: RagCan, why: str) -> Finding | None:
    if not bay.can_at:
        return Finding(
            "rags.can", "ask", f"{bay.name} names no covered metal can for rags.", why,
            f"Put a covered metal can there, empty it each evening, and say on the page of {bay.name} where "
            "it is.",
            source("rags.can"), (bay.code, step.code),
        )  # fmt: skip
    today = day_of(case, case.at) == day_of(case, max(step.starts_at, case.at))
    return _not_emptied(case, step, bay, why) if today and bay.full(case.at, case.facts.zone) else None


def _not_emptied(case: Case, step: AirStep, bay: RagCan, why: str) -> Finding:
    assert bay.used_at is not None
    since = day(bay.used_at.astimezone(case.facts.zone).date())
    return Finding(
        "rags.emptied", "ask", f"The rag can of {bay.name} was not emptied after {since}.", why,
        f"Empty it ({bay.can_at}) and press “It is emptied” under Rag and waste cans; that ends this "
        "question.",
        source("rags.emptied"), (bay.code, step.code),
    )  # fmt: skip


def _traits(case: Case, one: Makeup) -> frozenset[str]:
    known = case.facts.reactions.substances.get(one.code)
    return traits(known) if known else frozenset()
