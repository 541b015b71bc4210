"""Who does the steps under check, what they take holds against them, and what is at hand to protect them."""

from collections import defaultdict
from collections.abc import Sequence

from inventory.models import Job, Product, Step
from inventory.precheck.questions.topics.people import BayFacts, DangerFacts, PeopleFacts, WorkFacts
from safety.models import SheetVersion

from .loading import Loading
from .people_rows import PeopleRows, persons
from .protection import gloves, items, serves

ACID = "acid"


def load(loading: Loading) -> dict[int, PeopleFacts]:
    """Return the facts of each job under check by its id; who is fit for what only where something asks."""
    dangers = _dangers(loading)
    served = serves(loading.shop)
    stock = items(loading.shop, served)
    respirators = any(row.respirator != Step.Respirator.NONE for row in loading.step_rows)
    asked = respirators or any(one.all or one.kind == ACID for one in dangers.values())
    rows = PeopleRows(loading, asked=asked, respirators=respirators, served=served)
    bays = _bays(rows, corrosive=any(one.corrosive for one in dangers.values()))
    named = _named(loading)
    shared = {
        "country": loading.shop.country,
        "kept": bool(served),
        "trainings_kept": bool(rows.trainings),
        "persons": persons(rows),
        "dangers": dangers,
        "items": stock,
        "bays": bays,
        "gloves": gloves(stock),
    }
    return {job.pk: PeopleFacts(work=_work(loading, job, named), **shared) for job in loading.jobs}  # type: ignore[arg-type]


def _named(loading: Loading) -> dict[int, list[str]]:
    found: dict[int, list[str]] = defaultdict(list)
    for need in loading.at_work:
        if need.product:
            found[need.step_id].append(need.product.code)
    return found


def _work(loading: Loading, job: Job, named: dict[int, list[str]]) -> dict[str, WorkFacts]:
    return {
        row.code: WorkFacts(
            person=row.person.code if row.person else "",
            respirator=row.respirator,
            sprayed=row.sprayed,
            products=tuple(dict.fromkeys(named[row.pk])),
        )
        for row in loading.step_rows
        if row.job_id == job.pk
    }


def _dangers(loading: Loading) -> dict[str, DangerFacts]:
    taken = [need.product for need in loading.at_work if need.product]
    products = {row.pk: row for row in (*taken, *loading.product_rows)}
    versions: dict[int, list[SheetVersion]] = defaultdict(list)
    sheets = {row.sheet_id for row in products.values() if row.sheet_id}
    for version in SheetVersion.objects.filter(sheet__in=sheets).order_by("-revision_on", "-id"):
        versions[version.sheet_id].append(version)
    return {row.code: _danger(row, versions.get(row.sheet_id or 0, [])) for row in products.values()}


def _danger(row: Product, versions: Sequence[SheetVersion]) -> DangerFacts:
    """Classes count once confirmed; a fluoride or an isocyanate already from the newest version."""
    confirmed = next((one for one in versions if one.confirmed), None)
    counting = [one for one in (confirmed, *versions[:1]) if one]
    return DangerFacts(
        code=row.code,
        name=row.name,
        kind=row.kind,
        hazards=tuple(map(str, confirmed.hazards)) if confirmed else (),
        fluoride=any(one.holds_fluoride for one in counting),
        isocyanate=any(one.holds_isocyanate for one in counting),
        worn={
            "hands": confirmed.wear_hands,
            "eyes": confirmed.wear_eyes,
            "body": confirmed.wear_body,
        }
        if confirmed
        else {},
    )


def _bays(rows: PeopleRows, *, corrosive: bool) -> dict[str, BayFacts]:
    bays = {row.bay.pk: row.bay for row in rows.loading.step_rows if row.bay}
    runs = rows.runs(bays) if corrosive else {}
    fluorides = rows.fluorides(bays)
    return {
        bay.code: BayFacts(
            code=bay.code,
            name=bay.name,
            eyewash_at=bay.eyewash_at,
            first_aid_at=bay.first_aid_at,
            run_at=runs.get(bay.pk),
            fluorides=tuple(dict.fromkeys(fluorides.get(bay.pk, ()))),
        )
        for bay in bays.values()
    }
