"""How each step stands, for the table under the findings."""

from dataclasses import dataclass

from inventory.codes import pair
from inventory.precheck.questions import Case, Finding, StepFacts
from inventory.precheck.questions.words import amount, plural, wanted
from inventory.precheck.rules import Check

CURE = "cure"
# What a step waits for, by the family of the finding.
FAMILIES = {
    "surface": "not on this surface",
    "residue": "something is on the paint",
    "wait": "too early or too late",
    "order": "the order of work",
    "paint": "the paint is thin, or not read",
    "pad": "the pad",
    "towel": "the towel",
    "heat": "the heat of the surface",
    "weather": "the weather in the bay",
    "air": "the air at work",
    "reaction": "what it would meet",
    "people": "who does it, and what protects them",
}


@dataclass(frozen=True)
class Standing:
    """A step and what is ready for it; `finding` is the gravest one open about it."""

    step: StepFacts
    ready: str
    finding: Finding | None = None


def standings(case: Case, check: Check) -> list[Standing]:
    """Return the steps of a job in their order, each with what is ready."""
    return [_standing(case, step, _open(step, check)) for step in case.facts.steps]


def _open(step: StepFacts, check: Check) -> list[Finding]:
    return [one for one in check.findings if one.grade != "tell" and step.code in one.about]


def _standing(case: Case, step: StepFacts, about: list[Finding]) -> Standing:
    if step.signed_at:
        return Standing(step, f"signed by {step.signed_by}" if step.signed_by else "signed")
    if about:
        more = f", and {len(about) - 1} more" if len(about) > 1 else ""
        return Standing(step, f"{_lacks(case, about[0])}{more}", about[0])
    if step.rinses:
        return Standing(step, "RINSE signs it, once the drain runs clear")
    supplies = [supply for supply in case.supplies if supply.step.code == step.code]
    if supplies:
        return Standing(step, f"{plural(len(supplies), 'product')} ready")
    return Standing(step, _held(case, step) if step.stage == CURE and step.bay_name else "")


def _lacks(case: Case, finding: Finding) -> str:
    """Return a finding in a few words."""
    first = finding.about[0]
    product = case.facts.products.get(first)
    short = {
        "out_of_date": f"{pair(first)} is out of date then",
        "past_estimate": f"{pair(first)} is past its date",
        "held": f"{pair(first)} is held",
        "recalled": f"{pair(first)} is recalled",
        "unlabelled": f"{pair(first)} has no label",
        "no_sheet": f"{product.name if product else first} has no sheet",
        "two_lots": "not enough of one lot",
        "surface.unlisted": "what the car is made of",
        "surface.words": "what the car is made of",
        "surface.hot": "the panel is hot",
        "too_little": _amounts(case, finding),
    }
    family = finding.code.partition(".")[0]
    return short.get(finding.code) or FAMILIES.get(family) or finding.says


def _amounts(case: Case, finding: Finding) -> str:
    for supply in case.supplies:
        asked = supply.need.product or supply.need.kind
        product = wanted(case, supply.need)
        if product and supply.missing and asked == finding.about[0] and supply.step.code in finding.about:
            got = supply.need.amount - supply.missing
            said = [amount(each, product, case.facts.system) for each in (got, supply.need.amount)]
            return f"{said[0]} of {said[1]}"
    return "nothing of that kind"


def _held(case: Case, step: StepFacts) -> str:
    return f"{step.bay_name} held until {step.ends_at.astimezone(case.facts.zone):%a %H:%M}"
