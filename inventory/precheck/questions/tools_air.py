"""What tools leave in the air of their place: ozone, the carbon dioxide of dry ice, carbon monoxide."""

from inventory.trade.tools import OZONE_MINUTES, sorts, source
from safety.air.dry_ice import dry_ice
from safety.air.limits import judging
from safety.air.saying import published, row
from safety.air.values import EIGHT_HOURS, Emission
from safety.findings import Finding as Found
from safety.findings import gravest_first

from .air import to_come
from .asking import Finding, question
from .case import Case
from .evaporation import day_of, place_of
from .topics.air import AirStep, Spark

OZONE, DRY_ICE = "ozone", "dry_ice"
GRAMS = 1000
CARBON_MONOXIDE = Emission("carbon monoxide", "630-08-0", None)


@question("steps", "air")
def nobody_in_ozone(case: Case) -> list[Finding]:
    """Stop an ozone machine while anybody works in its place; ask for air before the next step there."""
    found: list[Finding] = []
    told: list[Finding] = []
    for step in (*case.facts.air.steps, *case.facts.air.others):
        if OZONE in step.tools:
            beside = [_beside(case, step, other) for other in _near(case, step)]
            found += [one for one in beside if one]
            told += [_alone(case, step)] if step in to_come(case) else []
    return found or told[:1]


def _near(case: Case, machine: AirStep) -> list[AirStep]:
    """Return the steps in the same place of which one at least is this job's: in a cabin its car's alone."""
    mine = to_come(case)
    rest = mine if machine not in mine else [*mine, *(one for one in case.facts.air.others if not one.signed)]
    return [
        each
        for each in rest
        if each.code != machine.code
        and (each.job == machine.job if machine.inside else bool(each.bay) and each.bay == machine.bay)
    ]


def _beside(case: Case, machine: AirStep, other: AirStep) -> Finding | None:
    where = place_of(case, machine).name
    if not machine.signed and machine.starts_at < other.ends_at and other.starts_at < machine.ends_at:
        return Finding(
            "tools.ozone", "stop", f"{other.name} is planned in {where} while the ozone machine of "
            f"{machine.name} runs.",
            "Nobody is inside while it runs: 5 ppm are immediately dangerous, and a machine makes more.",
            f"Move one of them to another hour or another bay; {where} is aired before anybody goes in.",
            source("tools.ozone"), _about(case, machine, other),
        )  # fmt: skip
    after = (other.starts_at - machine.ends_at).total_seconds() / 60
    return _first_air(case, machine, other, round(after)) if 0 <= after < OZONE_MINUTES else None


def _about(case: Case, machine: AirStep, other: AirStep) -> tuple[str, ...]:
    """Return both steps, one of this job last: it is the one that can be changed here."""
    return (machine.code, other.code) if other in to_come(case) else (other.code, machine.code)


def _first_air(case: Case, machine: AirStep, other: AirStep, minutes: int) -> Finding:
    where = place_of(case, machine).name
    when = f"{minutes} minutes after" if minutes else "right after"
    return Finding(
        "tools.ozone_air", "ask", f"{other.name} begins {when} the ozone machine of {machine.name}: is "
        f"{where} aired by then?",
        f"Ozone stays where it was made; after {OZONE_MINUTES} minutes with all open nobody is asked.",
        f"Open {where} from outside and go in only where a meter reads below 0.1 ppm; or begin "
        f"{other.name} {OZONE_MINUTES} minutes after it.",
        source("tools.ozone_air"), _about(case, machine, other),
    )  # fmt: skip


def _alone(case: Case, machine: AirStep) -> Finding:
    where = place_of(case, machine).name
    return Finding(
        "tools.ozone", "tell", f"Nobody stays in {where} while the ozone machine of {machine.name} runs.",
        "5 ppm of ozone are immediately dangerous, and a machine makes more.",
        "Start it from outside, close up, and hang a sign on the door.",
        source("tools.ozone"), (machine.code,),
    )  # fmt: skip


@question("steps", "air")
def dry_ice_in_its_place(case: Case) -> list[Finding]:
    """Judge the gas of each step's dry ice in its room; unknown is treated as immediately dangerous."""
    found = []
    for step in to_come(case):
        if DRY_ICE not in step.tools:
            continue
        place = place_of(case, step)
        volume = place.place.volume_m3
        if volume is None or not step.dry_ice_g:
            found.append(_unknown(step, place.name, volume))
            continue
        on = max(step.starts_at, case.at).astimezone(case.facts.zone).date()
        judged = gravest_first(dry_ice(step.dry_ice_g / GRAMS, volume, case.facts.air.regime, on))
        found += [_gas(step, place.name, one) for one in judged[:1]]
    return found


def _gas(step: AirStep, where: str, one: Found) -> Finding:
    says = f"{step.name}, {where}: {one.says}"
    because = f"{one.because} It is heavier than air; no fan is counted."
    return Finding("tools.dry_ice", one.grade, says, because, one.do, one.source, (step.code,))


def _unknown(step: AirStep, where: str, volume: float | None) -> Finding:
    missing = [] if step.dry_ice_g else ["its weight"]
    missing += [f"the size of {where}"] if volume is None else []
    return Finding(
        "tools.dry_ice_unknown", "ask", f"What the dry ice of {step.name} leaves in the air is not known: "
        f"{row(missing)} {'are' if len(missing) > 1 else 'is'} missing.",
        "Dry ice becomes carbon dioxide, 0.556 m³ a kilogram. What nobody can estimate is treated as "
        "immediately dangerous.",
        "Type in how much is blasted in the step, and measure the room on the bay’s page.",
        source("tools.dry_ice_unknown"), (step.code,),
    )  # fmt: skip


@question("steps", "air")
def no_engine_in_the_bay(case: Case) -> list[Finding]:
    """Stop work in a bay where an engine or a fuel heater is on; ask on the day until it is confirmed off."""
    found: dict[str, Finding] = {}
    for step in to_come(case):
        moment = max(step.starts_at, case.at)
        place = case.facts.air.places.get(step.bay or "")
        if place is None or place.code in found or day_of(case, moment) != day_of(case, case.at):
            continue
        burning = [one for one in place.sparks if sorts()[one.sort].carbon_monoxide]
        live = [one for one in burning if not one.confirmed_off(moment, case.facts.zone)]
        if live:
            found[place.code] = _monoxide(case, step, place.name, live)
    return list(found.values())


def _monoxide(case: Case, step: AirStep, where: str, live: list[Spark]) -> Finding:
    on = [one.name for one in live if one.state == "on"]
    names = row(on or [one.name for one in live])
    says = (
        f"{names} is on in {where}: it burns fuel."
        if on
        else f"Nobody said today that {names} is off in {where}."
    )
    facts = case.facts
    listed = judging(CARBON_MONOXIDE, facts.air.regime, case.at.astimezone(facts.zone).date())
    limit = next((published(one) for one in listed if one.kind == EIGHT_HOURS), "")
    bounded = f"its limit here is {limit}" if limit else f"no limit found in the {facts.air.regime} lists"
    return Finding(
        "tools.carbon_monoxide", "stop" if on else "ask", says[:1].upper() + says[1:],
        f"It gives off carbon monoxide, which nobody smells; {bounded}.",
        f"Switch {names} off, air {where}, then say so on its page.",
        source("tools.carbon_monoxide"), (step.bay or "", step.code),
    )  # fmt: skip
