"""Does what a step is done with suit what it takes: jets on acid, blown air, heat by chlorinated solvent?"""

from collections.abc import Iterable
from dataclasses import replace

from inventory.trade.tools import sorts, source, tools
from safety.air.saying import row
from safety.reactions.groups import traits

from .air import to_come
from .asking import Finding, question
from .case import Case
from .evaporation import day_of, makeups_of
from .topics.air import AirStep, Makeup, Spark

TOPICS = ("steps", "needs", "shelf", "products", "air", "reactions", "people")
ACID, FLUORIDE, CHLORINATED = frozenset({"1", "2", "3"}), frozenset({"15"}), frozenset({"17"})
DICHLOROMETHANE = "75-09-2"
AIR_FED = "air_fed"
JET, BLOWN = "pressure_washer", "compressed_air"
ENDED = "In the US most commercial use of it has ended."


@question(*TOPICS)
def no_jet_on_an_acid(case: Case) -> list[Finding]:
    """Stop a pressure washer at a step that puts an acid or a fluoride on the car.

    What nobody planned may be put on by hand while the washer stands by: that is told.
    """
    found = []
    for step in to_come(case):
        if JET not in step.tools:
            continue
        planned = replace(step, uses=tuple(use for use in step.uses if use.planned))
        by_plan = [one for one in _named(case, planned) if _eats(case, one)]
        named = by_plan or [one for one in _named(case, step) if _eats(case, one)]
        if named:
            names, grade = row(_name(case, one) for one in named), "stop" if by_plan else "tell"
            found.append(
                Finding(
                    "tools.washer", grade, f"{step.name}: a pressure washer never meets {names}.",
                    "The jet makes a mist that is breathed, and drives it into eyes and under gloves.",
                    "Put it on from a bottle or by hand and rinse without pressure; untick the pressure "
                    "washer in this step, and wash under pressure in a step after the rinse.",
                    source("tools.washer"), (*(one for one in named if one), step.code),
                )
            )  # fmt: skip
    return found


@question("steps", "air")
def air_below_its_pressure(case: Case) -> list[Finding]:
    """Tell once how compressed air is blown."""
    blown = [step for step in to_come(case) if BLOWN in step.tools]
    if not blown:
        return []
    most = "30 psi" if case.facts.air.regime == "US" else "2 bar (30 psi)"
    return [
        Finding(
            "tools.compressed_air", "tell", f"{blown[0].name}: blow below {most}, with a chip guard, and "
            "never at skin or clothes that somebody wears.",
            "Air under the skin can kill, and what it blows off hits eyes.",
            "Set the regulator before the step, and wear goggles.",
            source("tools.compressed_air"), (blown[0].code,),
        )
    ]  # fmt: skip


@question(*TOPICS)
def no_heat_on_chlorinated_solvent(case: Case) -> list[Finding]:
    """Stop what glows beside chlorinated solvent; on the day ask where it may be on, before that tell."""
    return [
        found
        for step in to_come(case)
        if (named := [one for one in makeups_of(case, step) if _traits(case, one.code) & CHLORINATED])
        and (found := _beside_heat(case, step, row(one.name for one in named)))
    ]


def _beside_heat(case: Case, step: AirStep, names: str) -> Finding:
    place = case.facts.air.places.get(step.bay or "")
    hot = [one for one in (place.sparks if place else ()) if sorts()[one.sort].breaks_down]
    planned = [
        f"the {tools()[tool].name} of {at.name}"
        for at in step.at_one_time((*case.facts.air.steps, *case.facts.air.others))
        for tool in at.tools
        if tools()[tool].breaks_down
    ]
    grade, live = _standing(case, step, hot)
    says, do = (
        f"{names} is used at {step.name}: no heater, no welding, no lamp.",
        "Keep them off until it is aired.",
    )
    if planned:
        grade, says = "stop", f"{names} must not meet {row(planned)}."
        do = "Plan it as a step of its own, after the place has been aired."
    elif grade != "tell":
        is_on = "is on" if grade == "stop" else "is not confirmed off"
        says = f"{names} is used at {step.name}, and {row(one.name for one in live)} {is_on}."
        do = f"Switch {row(one.name for one in live)} off, then say so on the bay’s page."
    because = (
        "A flame, hot metal or UV light turns chlorinated solvent into phosgene, which kills hours later."
    )
    about = (*((step.bay,) if step.bay and not planned and grade != "tell" else ()), step.code)
    return Finding("tools.chlorinated", grade, says, because, do, source("tools.chlorinated"), about)


def _standing(case: Case, step: AirStep, hot: Iterable[Spark]) -> tuple[str, list[Spark]]:
    """Return how grave what a bay lists is at a step, and what of it is on or not confirmed off."""
    moment = max(step.starts_at, case.at)
    live = [one for one in hot if not one.confirmed_off(moment, case.facts.zone)]
    if not live or day_of(case, case.at) != day_of(case, moment):
        return "tell", []
    on = [one for one in live if one.state == "on"]
    return ("stop", on) if on else ("ask", live)


@question("steps", "needs", "shelf", "products", "air", "people")
def supplied_air_for_dichloromethane(case: Case) -> list[Finding]:
    """Stop dichloromethane without an air-fed mask; in the US tell what became of its use."""
    by_us = case.facts.people.country == "US"
    found = []
    for step in to_come(case):
        named = [one for one in makeups_of(case, step) if _holds(one, DICHLOROMETHANE)]
        if named and step.respirator != AIR_FED:
            found.append(_without_air(step, named, by_us=by_us))
        elif named and by_us:
            found.append(_in_the_us(step, named))
    return found


def _without_air(step: AirStep, named: list[Makeup], *, by_us: bool) -> Finding:
    word, ended = source("tools.dichloromethane"), f" {ENDED}" if by_us else ""
    return Finding(
        "tools.dichloromethane", "stop", f"{step.name}: {row(one.name for one in named)} holds "
        "dichloromethane, and no filter holds it back.",
        f"It goes through a cartridge within minutes and harms heart and liver.{ended}",
        "Take a product without it; or plan an air-fed mask for this step.",
        f"{word}; {source('tools.dichloromethane_us')}" if by_us else word,
        (*(one.code for one in named), step.code),
    )  # fmt: skip


def _in_the_us(step: AirStep, named: list[Makeup]) -> Finding:
    return Finding(
        "tools.dichloromethane_us", "tell", f"{row(one.name for one in named)} holds dichloromethane.",
        f"{ENDED} What is still allowed needs a workplace protection plan of its own.",
        "Ask the maker whether this use is still allowed, and take a product without it.",
        source("tools.dichloromethane_us"), (*(one.code for one in named), step.code),
    )  # fmt: skip


def _named(case: Case, step: AirStep) -> list[str]:
    """Return what a step puts on by code; a kind that nothing serves by the kind itself."""
    known = [one.code for one in makeups_of(case, step)]
    return [*known, *(use.kind for use in step.uses if not use.product and use.kind == "acid" and not known)]


def _eats(case: Case, code: str) -> bool:
    danger = case.facts.people.dangers.get(code)
    told = danger is not None and (danger.fluoride or danger.kind == "acid")
    return told or code == "acid" or bool(_traits(case, code) & (ACID | FLUORIDE))


def _name(case: Case, code: str) -> str:
    makeup = case.facts.air.makeups.get(code)
    return makeup.name if makeup else f"an {code}"


def _traits(case: Case, code: str) -> frozenset[str]:
    known = case.facts.reactions.substances.get(code)
    return traits(known) if known else frozenset()


def _holds(makeup: Makeup, cas: str) -> bool:
    return any(one.cas == cas for one in makeup.ingredients)
