"""Is there examined local exhaust where a step counts on it?"""

from collections.abc import Iterable
from datetime import date

from .asking import Finding, question
from .at_work import series
from .case import Case
from .coverage import lapsed
from .evaporation import NOWHERE, StepAir, steps_in_air, working_day
from .topics.air import AirStep
from .topics.measured import Exhaust

CODE = "air.local_exhaust"
WORDS = {"vapour": "vapour", "dust": "dust and mist"}
SOURCE = "COSHH regulation 9 (from memory: check it): local exhaust is examined at least every 14 months"


@question("steps", "needs", "shelf", "products", "air")
def exhaust_that_steps_count_on(case: Case) -> list[Finding]:
    """Ask where a step is done under local exhaust and its bay has none in date that catches what arises."""
    counting = [step for step in case.facts.air.steps if step.exhaust and not step.signed]
    airs = {of.step.code: of for of in steps_in_air(case, counting)}
    found: dict[str, Finding] = {}
    for step in counting:
        if (one := _lacking(case, step, forms(airs.get(step.code)))) is not None:
            found.setdefault(step.bay or "", one)
    return list(found.values())


def forms(of: StepAir | None) -> list[str]:
    """Return what has to be caught: vapour and fumes, dust and mist; nothing where no product says so."""
    if of is None:
        return []
    vapour = of.release.vapours or of.release.cure or of.release.fumes
    return [*(["vapour"] if vapour else []), *(["dust"] if of.release.mist else [])]


def _lacking(case: Case, step: AirStep, wanted: list[str]) -> Finding | None:
    bay, on = case.facts.air.places.get(step.bay or "", NOWHERE), working_day(case, step)
    live = [one for one in bay.exhausts if one.holds(on)]
    missing = [form for form in wanted if not any(one.takes(form) for one in live)]
    if live and not missing:
        return None
    what = f" that catches {series(WORDS[form] for form in missing)}" if missing else ""
    where = bay.name if bay.code else f"the bay of {step.name}, which is not said,"
    return Finding(
        CODE, "ask",
        f"{step.name} counts on local exhaust, and none in {where}{what} is examined: "
        f"{_standing(bay.exhausts, missing, on)}.",
        "Exhaust that nobody examined may take nothing away; until it is, the step is judged without it.",
        "Have it examined and write it down on the bay's page, or plan the step without it.",
        SOURCE, (*((bay.code,) if bay.code else ()), step.code),
    )  # fmt: skip


def _standing(exhausts: Iterable[Exhaust], missing: list[str], on: date) -> str:
    here = [one for one in exhausts if not (one.ended_on and one.ended_on <= on)]
    fitting = [one for one in here if all(one.takes(form) for form in missing)]
    if fitting:
        return f"{fitting[0].name}, {lapsed(fitting[:1], on)}"
    if here:
        return f"{here[0].name} catches {here[0].words}"
    return "none is written down"
