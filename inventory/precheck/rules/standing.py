"""How each step stands, for the table under the findings."""

from dataclasses import dataclass

from inventory.codes import pair
from inventory.precheck.questions import Case, StepFacts, Supply
from inventory.precheck.questions.words import amount, number, plural, wanted

CURE = "cure"


@dataclass(frozen=True)
class Standing:
    """A step and what is ready for it; `fine` is False where a finding is about it."""

    step: StepFacts
    ready: str
    fine: bool


def standings(case: Case) -> list[Standing]:
    """Return the steps of a job in their order, each with what is ready."""
    return [_standing(case, step) for step in case.facts.steps]


def _standing(case: Case, step: StepFacts) -> Standing:
    if step.signed_at:
        return Standing(step, f"signed by {step.signed_by}" if step.signed_by else "signed", True)
    supplies = [supply for supply in case.supplies if supply.step.code == step.code]
    lacking = [said for supply in supplies if (said := _lacks(case, supply))]
    if lacking:
        more = f", and {number(len(lacking) - 1)} more" if len(lacking) > 1 else ""
        return Standing(step, lacking[0] + more, False)
    if supplies:
        return Standing(step, f"{plural(len(supplies), 'product')} ready", True)
    return Standing(step, _held(case, step) if step.stage == CURE and step.bay_name else "", True)


def _lacks(case: Case, supply: Supply) -> str:
    if not supply.missing:
        return ""
    if supply.held:
        return f"{pair(supply.held[0].code)} is held"
    if supply.dead:
        return f"{pair(supply.dead[0][0].code)} is out of date then"
    product = wanted(case, supply.need)
    if product is None:
        return "nothing of that kind"
    got = supply.need.amount - supply.missing
    said = [amount(each, product, case.facts.system) for each in (got, supply.need.amount)]
    return f"{said[0]} of {said[1]}"


def _held(case: Case, step: StepFacts) -> str:
    return f"{step.bay_name} held until {step.ends_at.astimezone(case.facts.zone):%a %H:%M}"
