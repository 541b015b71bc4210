"""Rows as the check's values: jobs, steps, needs, products, sheets and bottles."""

from dataclasses import replace

from inventory.models import Container, Job, Kind, Place, Product, Step, StepNeed
from inventory.precheck.questions import JobFacts, ProductFacts, SheetFacts, StepFacts
from inventory.stock import queries as stock
from inventory.stock.rules.one_lot import NOTHING, Had, binds
from inventory.stock.rules.reserve import Need, OnShelf
from inventory.trade.profile import Profile
from safety.models import SheetVersion

KIND_WORDS = dict(Kind.choices)


def on_shelf(row: Container) -> OnShelf:
    place = bay_or_place(row.place)
    return replace(stock.on_shelf(row), place=place.code if place else None)


def bay_or_place(place: Place | None) -> Place | None:
    """A tray in a bay is in the bay."""
    return place.within if place and place.within and place.within.kind == Place.Kind.BAY else place


def key(job_id: int) -> str:
    """Return a job's id as a text that sorts as the number does."""
    return f"{job_id:012}"


def job_facts(job: Job) -> JobFacts:
    return JobFacts(key(job.id), job.code, str(job), job.starts_at, job.ends_at)


def step_facts(row: Step) -> StepFacts:
    return StepFacts(
        code=row.code, stage=row.stage, name=row.name, starts_at=row.starts_at, ends_at=row.ends_at,
        bay=row.bay.code if row.bay else None, bay_name=row.bay.name if row.bay else "",
        person=row.person.name if row.person else "", signed_at=row.signed_at,
        signed_by=row.signed_by.name if row.signed_by else "", rinses=row.rinses,
    )  # fmt: skip


def need_of(row: StepNeed, had: Had) -> Need:
    job, product = row.step.job, row.product
    bound = binds(product.kind, product.mixes_lots) if product else binds(row.kind, mixes_lots=False)
    return Need(
        id=str(row.id), job=key(job.id), starts_at=row.step.starts_at, ends_at=row.step.ends_at,
        job_starts_at=job.starts_at, booked_at=job.booked_at, amount=row.amount,
        product=product.code if product else None, kind=row.kind, parts=(row.parts_product, row.parts_water),
        one_lot=bound, had=had.get((row.step.code, product.code if product else row.kind), NOTHING),
        dimension="" if product else stock.measured_in(row),
    )  # fmt: skip


def product_facts(row: Product, does: Profile | None = None) -> ProductFacts:
    supplier = row.supplier
    lead = row.lead_days if row.lead_days is not None else supplier.lead_days if supplier else None
    return ProductFacts(
        row.code, row.name, row.kind, KIND_WORDS[row.kind], row.dimension, row.noun, lead,
        supplier.name if supplier else "", does,
    )  # fmt: skip


def sheet_facts(row: Product, versions: list[SheetVersion]) -> SheetFacts:
    newest = versions[0] if versions else None
    return SheetFacts(
        needed=row.needs_sheet,
        attached=bool(versions),
        confirmed=any(version.confirmed for version in versions),
        fluoride=bool(newest and newest.holds_fluoride),
        isocyanate=bool(newest and newest.holds_isocyanate),
    )
