"""Who works on paper: Tomas, trained and fitted; a wheel acid in Bay 1, where all that protects him lies.

Wednesday 25 November 2026, noon; the steps are on Friday. Every test takes one thing away, or spoils it.
"""

from collections.abc import Iterable
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

from inventory.precheck.questions import Facts, Finding, Question, StepFacts
from inventory.precheck.questions.topics.people import (
    BayFacts,
    DangerFacts,
    Fitted,
    GloveFacts,
    ItemFacts,
    Lasting,
    PeopleFacts,
    PersonFacts,
    Trained,
    WorkFacts,
)
from inventory.precheck.rules import check_job
from tests.inventory.precheck.cases import FRIDAY, JOB, NOON

TODAY = NOON.date()
BAY = BayFacts("PBAYRHHX", "Bay 1", "left of the door", "office", run_at=NOON - timedelta(days=2))
ACID = StepFacts(
    "SACDKLNB", "wash", "Wheel acid", FRIDAY, FRIDAY + timedelta(minutes=40), BAY.code, BAY.name, "Tomas"
)
SPRAY = StepFacts(
    "SSPRKLNB", "coat", "Spray sealer", FRIDAY + timedelta(hours=1), FRIDAY + timedelta(hours=2), BAY.code,
    BAY.name, "Tomas",
)  # fmt: skip
BRACK = DangerFacts("XBRKKLNB", "Brack wheel acid", "acid", ("Skin Corr. 1B H314",), fluoride=True)
LYE = DangerFacts("XLYEKLNB", "Fenmoor alkaline wash", "alkaline", ("Skin Corr. 1A H314",))
WIPE = DangerFacts("XHLNKLNB", "Hollin panel wipe", "solvent", ("Flam. Liq. 2 H225", "Eye Irrit. 2 H319"))
SOAP = DangerFacts("XSPPKLNB", "Fenmoor shampoo", "shampoo")
CORRIN = DangerFacts("XCRRKLNB", "Corrin hardener", "other", ("Resp. Sens. 1 H334",), isocyanate=True)
TOPICS = ("corrosive", "fluoride", "flammable", "isocyanate", "respirator")
YEAR = Lasting(date(2026, 6, 1), date(2027, 5, 31))
MASK = "XMSKKLNB"
TOMAS = PersonFacts(
    "HTMSKLNB",
    "Tomas",
    face="shaven",
    trained=tuple(Trained(topic, YEAR) for topic in TOPICS),
    evaluated=(YEAR,),
    fitted=(Fitted(MASK, "Ossen half mask", "half", YEAR, YEAR.on),),
    first_day=NOON - timedelta(days=100),
)


def item(code: str, serves: str, name: str, **facts: object) -> ItemFacts:
    """Return something on hand in Bay 1 that is good to the end of 2027."""
    known: dict[str, object] = {
        "place": BAY.code,
        "place_name": BAY.name,
        "reach": frozenset({BAY.code}),
        **good_to(date(2027, 12, 31)),
        **facts,
    }
    return ItemFacts(code, str(known.pop("product", f"X{code[1:]}")), name, serves, **known)  # type: ignore[arg-type]


def good_to(day: date) -> dict[str, object]:
    """Return the two ends of an item's life."""
    return {
        "ends_on": day,
        "ends_at": datetime(day.year, day.month, day.day, tzinfo=UTC) + timedelta(days=1),
    }


GLOVES = item("BGLVKLNB", "gloves", "Ossen gloves")
GOGGLES = item("BGGLKLNB", "goggles", "Ossen goggles")
SHIELD = item("BSHDKLNB", "face_shield", "Ossen face shield")
APRON = item("BAPRKLNB", "apron", "Ossen apron")
HALF = item("BHLFKLNB", "half", "Ossen half mask", product=MASK)
CARTRIDGE = item("BCRTKLNB", "cartridge", "Ossen filter A2", wear_minutes=480)
GEL = item("BGELKLNB", "gluconate", "Ossen gel")
BOTTLE = item("BEYEKLNB", "eyewash", "Ossen eyewash bottle")
HERE = (GLOVES, GOGGLES, SHIELD, APRON, HALF, CARTRIDGE, GEL, BOTTLE)
STAND = GloveFacts(GLOVES.product, "Ossen gloves", BRACK.code, 120, "Ossen's table of May 2026")


def crew(
    *takes: DangerFacts,
    step: StepFacts = ACID,
    respirator: str = "none",
    sprayed: bool = False,
    who: PersonFacts | None = TOMAS,
    items: Iterable[ItemFacts] = HERE,
    bay: BayFacts = BAY,
    steps: tuple[StepFacts, ...] = (),
    **people: object,
) -> Facts:
    """Return the facts of a job of one step that takes some products; `people` changes the shop's own."""
    work = WorkFacts(who.code if who else "", respirator, sprayed, tuple(one.code for one in takes))
    known: dict[str, object] = {
        "country": "GB",
        "kept": True,
        "trainings_kept": True,
        "work": {one.code: work for one in steps or (step,)},
        "persons": {who.code: who} if who else {},
        "dangers": {one.code: one for one in takes},
        "items": tuple(items),
        "bays": {bay.code: bay},
        **people,
    }
    return Facts(JOB, steps=steps or (step,), people=PeopleFacts(**known))  # type: ignore[arg-type]


def without(*gone: ItemFacts) -> tuple[ItemFacts, ...]:
    """Return what is on hand but some."""
    return tuple(one for one in HERE if one not in gone)


def spoilt(one: ItemFacts, **facts: object) -> tuple[ItemFacts, ...]:
    """Return what is on hand with one item changed."""
    return tuple(replace(each, **facts) if each == one else each for each in HERE)  # type: ignore[arg-type]


def asked(question: Question, facts: Facts, at: datetime = NOON) -> tuple[Finding, ...]:
    """Return what one question finds."""
    return check_job(facts, at, questions=(question,)).findings


def said(question: Question, facts: Facts, at: datetime = NOON) -> list[tuple[str, str, str]]:
    """Return code, grade and sentence of what one question finds."""
    return [(one.code, one.grade, one.says) for one in asked(question, facts, at)]


def only(question: Question, facts: Facts, at: datetime = NOON) -> Finding:
    """Return the one finding of a question."""
    found = asked(question, facts, at)
    assert len(found) == 1, found
    return found[0]
