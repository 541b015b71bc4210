"""A wipe and a coating in Bay 2, 160 m³ with 960 m³/h and K 3, judged by the UK's limits at 20 °C.

By hand (exposure.md, N2): 234 ml of wipe hold 234 · 0.88 · 0.7 = 144 g of isopropanol, 9610 mg a minute for
15 minutes; G/Q 600.6 · (1 − (1 − e^−1.5)/1.5) + G/β 1194.9 · (1 − 1/112.5) = 1474 mg/m³, 118 % of 1250.
"""

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime, timedelta

from inventory.precheck.questions import Case, Facts, Finding, plan
from inventory.precheck.questions.air import what_a_product_is_made_of, what_is_breathed
from inventory.precheck.questions.local_exhaust import exhaust_that_steps_count_on
from inventory.precheck.questions.topics.air import AirFacts, AirPlace, AirStep, AirUse, Makeup, Spark
from inventory.precheck.questions.topics.weather import Reading
from inventory.precheck.rules import check_job
from safety.air.evaporating import Ingredient
from safety.air.values import Place
from safety.hazards.mixtures.reading import read_hazards
from tests.inventory.precheck.cases import COAT, FRIDAY, JOB, ML, NOON, WIPE

QUESTIONS = [what_is_breathed, what_a_product_is_made_of, exhaust_that_steps_count_on]
BEFORE = FRIDAY - timedelta(minutes=30)
BAY_2 = AirPlace("PBAYTWOX", "Bay 2", Place(160.0, 960.0, 3.0))
READING = Reading(BEFORE, 20.0, 20.0, 50.0)
ISOPROPANOL = Ingredient("Propan-2-ol", "67-63-0", 0.7, read_hazards(["Flam. Liq. 2 H225"], "")[0])
ACETATE = Ingredient("n-Butyl acetate", "123-86-4", 0.6, read_hazards(["Flam. Liq. 3 H226"], "")[0])
SILAZANE = Ingredient("Polysilazane resin", "", 0.35, read_hazards(["Skin Sens. 1 H317"], "")[0])
FLUORIDE = Ingredient("Hydrogen fluoride", "7664-39-3", 0.02, read_hazards(["Acute Tox. 2 H330"], "")[0])
SOAP = Ingredient("Alcohol ethoxylate C9-11", "68439-46-3", 0.05, ())


def makeup(code: str, name: str, kind: str, *ingredients: Ingredient, **facts: object) -> Makeup:
    """Return a product by volume whose composition somebody typed in."""
    known: dict[str, object] = {"composed": bool(ingredients), "density_kg_l": 1.0, **facts}
    return Makeup(code, name, kind, "volume", tuple(ingredients), **known)  # type: ignore[arg-type]


HOLLIN = makeup(
    "XHLNKLNB", "Hollin panel wipe", "solvent", ISOPROPANOL, density_kg_l=0.88, flash_point_c=19.0
)
TIDEWALL = makeup("XTDWKLNB", "Tidewall coating", "coating", ACETATE, SILAZANE, density_kg_l=0.95)
BRACK = makeup("XBRKKLNB", "Brack wheel acid", "acid", FLUORIDE)
QUELL = makeup("XQLLKLNB", "Quell interior cleaner", "interior", SOAP)
BARE = makeup("XBARKLNB", "Sallow paste wax", "wax", volatile=True)
MAKEUPS = {one.code: one for one in (HOLLIN, TIDEWALL, BRACK, QUELL, BARE)}


def wiping(ml: float, of: Makeup = HOLLIN, **facts: object) -> AirStep:
    """Return Friday's wipe with so much of a product."""
    use = AirUse(f"{WIPE.code}-{of.code}", round(ml * ML), of.code)
    known: dict[str, object] = {"bay": BAY_2.code, "person": "HTMSKLNB", "uses": (use,), **facts}
    return AirStep(WIPE.code, WIPE.name, JOB.key, WIPE.starts_at, WIPE.ends_at, **known)  # type: ignore[arg-type]


def coating(ml: float, **facts: object) -> AirStep:
    """Return Friday's coat after the wipe."""
    return replace(
        wiping(ml, TIDEWALL), code=COAT.code, name=COAT.name, starts_at=COAT.starts_at, ends_at=COAT.ends_at,
        **facts,  # type: ignore[arg-type]
    )  # fmt: skip


def sparks(*states: tuple[str, str, datetime | None]) -> AirPlace:
    """Return Bay 2 with what may spark in it."""
    return replace(BAY_2, sparks=tuple(Spark(*each) for each in states))


def facts(*steps: AirStep, place: AirPlace = BAY_2, others: Iterable[AirStep] = (), **more: object) -> Facts:
    """Return the facts of the job on paper with the air of these steps."""
    known: dict[str, object] = {
        "regime": "UK", "places": {place.code: place}, "makeups": MAKEUPS, "steps": steps,
        "others": tuple(others), "readings": {BAY_2.code: READING}, **more,
    }  # fmt: skip
    return Facts(JOB, steps=(WIPE, COAT), air=AirFacts(**known))  # type: ignore[arg-type]


def case(of: Facts, at: datetime = NOON) -> Case:
    """Return the facts as a question is asked about them."""
    return Case(of, at, plan(of.needs, of.shelf, of.zone, at))


def found(*steps: AirStep, at: datetime = NOON, **more: object) -> tuple[Finding, ...]:
    """Return what the questions of air find."""
    return check_job(facts(*steps, **more), at, questions=QUESTIONS).findings  # type: ignore[arg-type]


def said(*steps: AirStep, at: datetime = NOON, **more: object) -> list[tuple[str, str]]:
    """Return code and grade of each finding."""
    return [(one.code, one.grade) for one in found(*steps, at=at, **more)]


def finding(code: str, *steps: AirStep, **more: object) -> Finding:
    """Return the one finding of a code."""
    [one] = [one for one in found(*steps, **more) if one.code == code]  # type: ignore[arg-type]
    return one
