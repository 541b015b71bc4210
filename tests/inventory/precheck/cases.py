"""A job on paper: a panel wipe and a coating on Friday 27 November 2026, checked on Wednesday at noon."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

from inventory.precheck.questions import Facts, Finding, JobFacts, ProductFacts, SheetFacts, StepFacts
from inventory.precheck.questions.facts import LabelFacts
from inventory.precheck.rules import check_job
from inventory.stock.rules.reserve import Need, OnShelf
from inventory.stock.rules.use_by import Dates, Life
from inventory.trade.profile import profile

NOON = datetime(2026, 11, 25, 12, 0, tzinfo=UTC)
FRIDAY = datetime(2026, 11, 27, 8, 30, tzinfo=UTC)
ML = 1_000
JOB = JobFacts("000000000007", "JDPXKLNB", "Grey estate · Coating", FRIDAY, FRIDAY + timedelta(hours=5))
EARLIER = JobFacts("000000000003", "JDPRHHLN", "Red van · Wipe", NOON, NOON + timedelta(hours=2))
WIPE = StepFacts(
    "SWPXKLNB", "coat", "Panel wipe", FRIDAY, FRIDAY + timedelta(minutes=30), "PBAYTWOX", "Bay 2"
)
COAT = StepFacts(
    "SCTXKLNB",
    "coat",
    "Coating",
    FRIDAY + timedelta(minutes=30),
    FRIDAY + timedelta(hours=3),
    "PBAYTWOX",
    "Bay 2",
)
HOLLIN = ProductFacts(
    "XHLNKLNB", "Hollin panel wipe", "solvent", "panel wipe", "volume", "bottle", 6, "Orlo Supply",
    profile("solvent"),
)  # fmt: skip
SALTMERE = ProductFacts(
    "XSLTKLNB", "Saltmere panel wipe", "solvent", "panel wipe", "volume", does=profile("solvent")
)
TIDEWALL = ProductFacts(
    "XTDWKLNB", "Tidewall coating", "coating", "coating", "volume", "bottle", 6, "Orlo Supply"
)
BRACK = ProductFacts("XBRKKLNB", "Brack wheel acid", "acid", "acid cleaner", "volume")
PRODUCTS = (HOLLIN, SALTMERE, TIDEWALL, BRACK)
MAKER_90 = Life(90, "day", "maker")
SHOP_90 = Life(90, "day", "shop")


def bottle(code: str, product: ProductFacts, ml: int, **facts: object) -> OnShelf:
    """Return a sealed bottle in the store, of a lot of its own, that does not go out of date."""
    known: dict[str, object] = {"place": "PSTRKLNB", "lots": frozenset({f"L{code[1:]}"}), **facts}
    return OnShelf(code, product.code, product.kind, ml * ML, **known)  # type: ignore[arg-type]


def opened(days_ago: int, life: Life) -> dict[str, object]:
    """Return what makes a bottle open since so many days before Wednesday."""
    return {"sealed": False, "dates": Dates(opened_at=NOON - timedelta(days=days_ago), open=life)}


def need(step: StepFacts, product: ProductFacts | str, ml: int, **facts: object) -> Need:
    """Return what a step of the job on paper needs: of a product, or of a kind."""
    known: dict[str, object] = {
        "id": f"{step.code}-{product if isinstance(product, str) else product.code}",
        "job": JOB.key,
        "starts_at": step.starts_at,
        "ends_at": step.ends_at,
        "job_starts_at": JOB.starts_at,
        "booked_at": NOON - timedelta(days=7),
        "amount": ml * ML,
        **({"kind": product} if isinstance(product, str) else {"product": product.code}),
        **facts,
    }
    return Need(**known)  # type: ignore[arg-type]


def earlier(product: ProductFacts, ml: int, *, starts_at: datetime = NOON) -> Need:
    """Return what the job before it takes."""
    return need(
        WIPE, product, ml, id=f"earlier-{product.code}", job=EARLIER.key, job_starts_at=starts_at,
        starts_at=starts_at, ends_at=starts_at + timedelta(hours=1),
    )  # fmt: skip


def facts(*needs: Need, shelf: tuple[OnShelf, ...] = (), **more: object) -> Facts:
    """Return the facts of the job on paper: sheets confirmed, labels printed, unless said otherwise."""
    given: dict[str, object] = {
        "steps": (WIPE, COAT),
        "needs": needs,
        "step_of": {one.id: one.id.split("-")[0] for one in needs},
        "jobs": {JOB.key: JOB, EARLIER.key: EARLIER},
        "shelf": shelf,
        "products": {product.code: product for product in PRODUCTS},
        "sheets": {product.code: SheetFacts(attached=True, confirmed=True) for product in PRODUCTS},
        "labels": {one.code: LabelFacts(labelled_at=NOON - timedelta(days=1)) for one in shelf},
        "places": {"PSTRKLNB": "Store", "PBAYTWOX": "Bay 2"},
        **more,
    }
    return Facts(JOB, **given)  # type: ignore[arg-type]


def found(of: Facts, at: datetime = NOON) -> tuple[Finding, ...]:
    """Return the findings of a check."""
    return check_job(of, at).findings


def said(of: Facts, at: datetime = NOON) -> list[tuple[str, str]]:
    """Return grade and sentence of each finding."""
    return [(one.grade, one.says) for one in found(of, at)]


def moved(one: OnShelf, **facts_: object) -> OnShelf:
    """Return a bottle with something else about it."""
    return replace(one, **facts_)  # type: ignore[arg-type]
