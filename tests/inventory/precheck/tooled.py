"""Steps on paper in Bay 2, 100 m³, with what they are done with; Friday 27 November 2026, checked before."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime, timedelta

from inventory.precheck.questions import Facts, Finding
from inventory.precheck.questions.tools import (
    air_below_its_pressure,
    no_heat_on_chlorinated_solvent,
    no_jet_on_an_acid,
    supplied_air_for_dichloromethane,
)
from inventory.precheck.questions.tools_air import dry_ice_in_its_place, no_engine_in_the_bay, nobody_in_ozone
from inventory.precheck.questions.topics.air import AirFacts, AirPlace, AirStep, AirUse, Makeup, Spark
from inventory.precheck.questions.topics.people import DangerFacts, PeopleFacts
from inventory.precheck.questions.topics.reactions import ReactionFacts
from inventory.precheck.rules import check_job
from safety.air.evaporating import Ingredient
from safety.air.values import Place
from safety.hazards.mixtures.reading import read_hazards
from safety.reactions.values import Substance
from tests.inventory.precheck.cases import FRIDAY, JOB, ML, NOON, WIPE

QUESTIONS = [
    no_jet_on_an_acid,
    air_below_its_pressure,
    no_heat_on_chlorinated_solvent,
    supplied_air_for_dichloromethane,
    nobody_in_ozone,
    dry_ice_in_its_place,
    no_engine_in_the_bay,
]
HOUR = timedelta(hours=1)
MORNING = FRIDAY - timedelta(minutes=30)
BAY = AirPlace("PBAYTWOX", "Bay 2", Place(100.0, 960.0, 3.0))
DCM = Ingredient("Dichloromethane", "75-09-2", 0.8, read_hazards(["Carc. 2 H351"], "")[0])
PER = Ingredient("Tetrachloroethylene", "127-18-4", 0.9, read_hazards(["Carc. 2 H351"], "")[0])
IPA = Ingredient("Propan-2-ol", "67-63-0", 0.7, read_hazards(["Flam. Liq. 2 H225"], "")[0])


def made(code: str, name: str, kind: str, *of: Ingredient, **facts: object) -> Makeup:
    """Return a product whose composition somebody typed in."""
    return Makeup(code, name, kind, "volume", of, composed=bool(of), density_kg_l=1.0, **facts)  # type: ignore[arg-type]


MADE = {
    one.code: one
    for one in (
        made("XACD", "Brack wheel acid", "acid"),
        made("XLME", "Brack lime remover", "cleaner"),
        made("XFLU", "Sallow rim bright", "cleaner"),
        made("XSAP", "Fenmoor soap", "shampoo"),
        made("XDCM", "Quell paint stripper", "solvent", DCM),
        made("XPER", "Quell tar lifter", "tar", PER),
        made("XIPA", "Hollin panel wipe", "solvent", IPA, flash_point_c=12.0),
    )
}
GROUPS = {
    "XACD": "1", "XLME": "3", "XFLU": "15", "XSAP": "106", "XDCM": "17", "XPER": "17", "XIPA": "4",
}  # fmt: skip
SUBSTANCES = {code: Substance(MADE[code].name, frozenset({group})) for code, group in GROUPS.items()}


def step(name: str, *products: str, hour: float = 0, lasts: float = 1, **facts: object) -> AirStep:
    """Return a step in Bay 2 on Friday, so many hours after half past eight."""
    starts = FRIDAY + hour * HOUR
    uses = tuple(AirUse(f"{name}-{each}", 50 * ML, each) for each in products)
    known: dict[str, object] = {"bay": BAY.code, "uses": uses, **facts}
    code = f"S{name[:7].upper().replace(' ', 'X')}"
    return AirStep(code, name, JOB.key, starts, starts + lasts * HOUR, **known)  # type: ignore[arg-type]


def another_car(one: AirStep, **facts: object) -> AirStep:
    """Return the step as another car's."""
    return replace(one, job="000000000003", **facts)  # type: ignore[arg-type]


def job(
    *steps: AirStep,
    others: Iterable[AirStep] = (),
    place: AirPlace = BAY,
    regime: str = "UK",
    country: str = "GB",
) -> Facts:
    """Return the facts of a job of these steps in Bay 2."""
    air = AirFacts(regime, places={place.code: place}, makeups=MADE, steps=steps, others=tuple(others))
    people = PeopleFacts(
        country=country, dangers={"XFLU": DangerFacts("XFLU", "Sallow rim bright", fluoride=True)}
    )
    return Facts(JOB, steps=(WIPE,), air=air, reactions=ReactionFacts(substances=SUBSTANCES), people=people)


def found(*steps: AirStep, at: datetime = NOON, **facts: object) -> tuple[Finding, ...]:
    """Return what the questions about tools find."""
    return check_job(job(*steps, **facts), at, questions=QUESTIONS).findings  # type: ignore[arg-type]


def said(*steps: AirStep, at: datetime = NOON, **facts: object) -> list[tuple[str, str]]:
    """Return code and grade of each finding."""
    return [(one.code, one.grade) for one in found(*steps, at=at, **facts)]


def sparking(*sparks: tuple[str, str, str]) -> AirPlace:
    """Return Bay 2 with sources: name, sort, state said this Friday morning."""
    listed = tuple(Spark(name, state, MORNING, sort) for name, sort, state in sparks)
    return replace(BAY, sparks=listed)
