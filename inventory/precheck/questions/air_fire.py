"""What may spark beside what may catch fire: told with its sources, stopped on the day until all are off."""

from inventory.trade.tools import tools
from safety.air.answer import Air
from safety.air.explosive import may_ignite
from safety.air.fire import warmest
from safety.air.saying import row
from safety.findings import Finding as Found

from .case import Case
from .evaporation import StepAir, day_of
from .topics.air import AirStep

CODE, TOOL = "air.ignition", "air.ignition_tool"


def sparks(case: Case, of: StepAir, burning: Air) -> list[Found]:
    """Tell which ignition sources must be off; stop on the step's day while one is not confirmed off."""
    base = next((one for one in burning.findings if one.code == CODE), None)
    if base is None or not lights(of):
        return []
    found = _listed(case, of, base)
    planned = planned_sparks(case, of.step)
    if not planned:
        return found
    # What is planned to spark is one cause; what else may is worth a word of its own only where it stops.
    return [_tool(base, of, planned), *(one for one in found if one.grade == "stop")]


def planned_sparks(case: Case, step: AirStep) -> list[str]:
    """Return what the step itself, or another one in its bay at its time, is done with that lights vapour."""
    return [
        f"the {tools()[tool].name} of {each.name}"
        for each in step.at_one_time((*case.facts.air.steps, *case.facts.air.others))
        for tool in each.tools
        if tools()[tool].lights
    ]


def _tool(base: Found, of: StepAir, planned: list[str]) -> Found:
    names, what = row(base.about), row(planned)
    says = f"{what} {'is' if len(planned) == 1 else 'are'} planned while {names} can catch fire."
    do = f"Do it in a step of its own, after the air has cleared, or leave it out of {of.step.name}."
    return Found(TOOL, "stop", says[:1].upper() + says[1:], base.because, do, base.source, base.about)


def _listed(case: Case, of: StepAir, base: Found) -> list[Found]:
    listed = of.place.sparks
    if not listed:
        return [_with(base, "tell", base.says, f"{base.because} {_none(of)}".rstrip(), base.do)]
    moment = max(of.step.starts_at, case.at)
    live = [one.name for one in listed if not one.confirmed_off(moment, case.facts.zone)]
    today = day_of(case, case.at) == day_of(case, moment)
    names = row(base.about)
    if live and today:
        says = (
            f"{row(live)} {'is' if len(live) == 1 else 'are'} not confirmed off, and {names} can catch fire."
        )
        do = f"Switch off {row(live)}, then say so on the bay's page."
        return [_with(base, "stop", says, base.because, do)]
    every = row(one.name for one in listed)
    says = f"No ignition source while {names} is in the air: {every}."
    do = f"On the day, switch off {every} and say so." if live else f"Leave {every} off."
    return [_with(base, "tell", says, base.because, do)]


def lights(of: StepAir) -> bool:
    """Return whether a product of the step can be lit: by its sheet's flash point; one unknown may be."""
    warm = warmest(of.task(()))
    flashes = [one.makeup.flash_point_c for one in of.taken if one.makeup.ingredients]
    return any(flash is None or may_ignite(flash, warm, mixture=True) for flash in flashes)


def _none(of: StepAir) -> str:
    if not of.place.code:
        return ""
    return f"{of.place.name[:1].upper()}{of.place.name[1:]} lists none of its own."


def _with(base: Found, grade: str, says: str, because: str, do: str) -> Found:
    return Found(CODE, grade, says, because, do, base.source, base.about)
