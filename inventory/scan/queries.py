"""What the conversation must know for one line: a constant number of queries, whatever the shop holds."""

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta

from django.db.models import Exists, OuterRef, Prefetch, Q, Subquery

from inventory.codes import tidy
from inventory.models import (
    Admission,
    Container,
    Heard,
    Job,
    Order,
    OrderLine,
    Pack,
    Person,
    Place,
    PosterIssue,
    Product,
    Shop,
    Station,
)
from inventory.precheck import queries as precheck
from inventory.stock import queries as stock
from inventory.stock.conversation import Said, State
from inventory.stock.conversation.facts import (
    Bottle,
    Facts,
    Found,
    JobFacts,
    OpenLine,
    PackFacts,
    PersonFacts,
    PlaceFacts,
    ProductFacts,
    ShopFacts,
    StepFacts,
)
from inventory.stock.receiving import awaiting
from inventory.stock.rules.reserve import Need, life_or_none
from inventory.stock.signing import load_stage

# Entered this much after it happened, an entry is marked late; a queue that was sent again is not.
LATE = timedelta(minutes=2)
LAST_SHOWN = 5
# Where a delivery goes unless somebody says otherwise: a station that stands in a bay receives nothing by itself.
STORING = {"store", "cabinet", "shelf", "van"}


@dataclass
class Loaded:
    """The facts, and the rows that writing needs again."""

    facts: Facts
    people: dict[str, Person] = field(default_factory=dict)
    job: Job | None = None


def load(station: Station, state: State, said: Said, at: datetime, now: datetime) -> Loaded:
    """Return what one line needs: only what the line and the state name is asked for."""
    shop = station.shop
    slots = state.slots
    codes = {
        said.code,
        state.bottle,
        *(str(slots.get(name, "")) for name in ("bottle", "source", "target")),
    } - {""}
    people = {row.code: row for row in _people(shop, {said.code if said.kind == "person" else "", state.who})}
    job = _job(shop, state, said)
    bottles = _bottles(shop, [code for code in codes if code[0] == "B"])
    facts = Facts(
        at=at,
        zone=shop.zone,
        shop=ShopFacts(shop.system, shop.decimal_mark or None, shop.date_order or None),
        people={code: PersonFacts(code, row.name, row.role) for code, row in people.items()},
        bottles=bottles,
        places=_places(shop, state, said, station),
        packs=_packs(shop, state, said),
        orders=_orders(shop, said),
        station_place=station.place.code if station.place and station.place.kind in STORING else "",
        late=now - at > LATE,
        stage=load_stage(job) if job and said.command == "sign" else None,
    )
    facts = _with_job(facts, job, at, said) if job else _with_bookings(facts, shop)
    return Loaded(facts, people, job)


def _people(shop: Shop, codes: set[str]) -> list[Person]:
    return (
        list(Person.objects.filter(shop=shop, is_active=True, code__in=codes - {""})) if codes - {""} else []
    )


def _job(shop: Shop, state: State, said: Said) -> Job | None:
    rows = Job.objects.filter(shop=shop).select_related("vehicle", "shop")
    if said.kind == "job":
        return rows.filter(code=said.code).first()
    if said.kind == "vehicle":
        return rows.filter(vehicle__code=said.code, state=Job.State.OPEN).order_by("starts_at").first()
    return rows.filter(code=state.job, state=Job.State.OPEN).first() if state.job else None


def _bottles(shop: Shop, codes: list[str]) -> dict[str, Bottle]:
    """Return the bottles that are meant, and every other of their kinds: one of them may be taken instead."""
    if not codes:
        return {}
    meant = Q(shop=shop, code__in=codes)
    kinds = Container.objects.filter(meant, product__isnull=False).values("product__kind")
    like = Q(product__kind__in=Subquery(kinds), state__in=["sealed", "open"], content__gt=0)
    rows = Container.objects.filter(Q(shop=shop) & (Q(code__in=codes) | like))
    found = rows.exclude(state="expected").select_related("product", "place").prefetch_related("lots")
    return {row.code: bottle_of(row) for row in found}


def bottle_of(row: Container) -> Bottle:
    """Return a container as the conversation sees it; product, place and lots must be loaded."""
    return Bottle(
        shelf=stock.on_shelf(row),
        product=product_of(row.product) if row.product else None,
        state=row.state,
        full=row.full,
        noun=row.noun,
        place_name=row.place.name if row.place else "",
        refillable=row.refillable,
        rinsed=row.rinsed,
        labelled_at=row.labelled_at,
        filled_at=row.mixed_at or row.opened_at,
        lot_numbers=tuple(lot.number for lot in row.lots.all()),
        uses=row.uses,
    )


def product_of(row: Product) -> ProductFacts:
    """Return a product as the conversation sees it."""
    return ProductFacts(
        code=row.code, name=row.name, kind=row.kind, dimension=row.dimension, noun=row.noun, keeping=row.keeping,
        traced=row.traced, mixes_lots=row.mixes_lots, dated=row.dated, density_mg_per_l=row.density_mg_per_l,
        open=life_or_none(row.open_life, row.open_life_unit, row.open_life_by),
        mix=life_or_none(row.mix_life, row.mix_life_unit, row.mix_life_by),
        wear_uses=row.wear_uses, wear_minutes=row.wear_minutes,
    )  # fmt: skip


def _places(shop: Shop, state: State, said: Said, station: Station) -> dict[str, PlaceFacts]:
    """Return the places that are meant; what their posters admit only where something may arrive."""
    named = {said.code if said.kind == "place" else "", str(state.slots.get("place", ""))}
    arriving = state.verb == "receive" or said.packs or said.kind == "product" or said.command == "bring_back"
    if arriving or state.waits == "yes":
        named |= {state.delivery.get("place", ""), station.place.code if station.place else ""}
    if not named - {""}:
        return {}
    posters = PosterIssue.objects.filter(place=OuterRef("pk"))
    rows = Place.objects.filter(shop=shop, code__in=named).annotate(postered=Exists(posters))
    admitted = Prefetch("admissions", Admission.objects.select_related("product"))
    return {row.code: _place(row) for row in rows.prefetch_related(admitted)}


def _place(row: Place) -> PlaceFacts:
    listed = frozenset(each.product.code for each in row.admissions.all())
    return PlaceFacts(row.code, row.name, row.kind, listed if row.postered else None)  # type: ignore[attr-defined]


def _packs(shop: Shop, state: State, said: Said) -> dict[str, tuple[PackFacts, ...]]:
    """Return packs by the number or product code that named them, with the orders that await them."""
    keys = {
        str(state.slots.get("of", "")),
        str(state.delivery.get("of", "")),
        *(each.gtin or "" for each in said.packs),
    }
    keys = (keys | ({said.code} if said.kind == "product" else set())) - {""}
    if not keys:
        return {}
    rows = Pack.objects.filter(product__shop=shop, product__archived=False)
    rows = rows.filter(Q(gtin__in=keys) | Q(product__code__in=keys)).order_by("-usual", "id")
    packs = list(rows.select_related("product").prefetch_related("parts__product"))
    lines: dict[int, list[OrderLine]] = {}
    for line in awaiting(shop, [pack.id for pack in packs]):
        lines.setdefault(line.pack_id, []).append(line)
    return {
        key: tuple(_pack(row, lines.get(row.id, [])) for row in packs if key in (row.gtin, row.product.code))
        for key in keys
    }


def _pack(row: Pack, lines: Iterable[OrderLine]) -> PackFacts:
    open_lines = tuple(
        OpenLine(line.id, line.order.code, line.order.supplier.name, line.packs, line.received)
        for line in lines
        if not line.closed_short
    )
    parts = tuple((product_of(part.product), part.amount) for part in row.parts.all())
    return PackFacts(row.id, row.gtin, product_of(row.product), row.amount, row.per_case, parts, open_lines)


def _orders(shop: Shop, said: Said) -> dict[str, str]:
    if said.kind != "order":
        return {}
    rows = Order.objects.filter(shop=shop, code=said.code, state=Order.State.PLACED)
    return dict(rows.values_list("code", "supplier__name"))


def _with_job(facts: Facts, job: Job, at: datetime, said: Said) -> Facts:
    """Add the car, what every open job still needs, and what the pre-job check finds about this one."""
    checked = precheck.check(job, at)
    known = {precheck.key(job.id): (job.code, job.vehicle.name)}
    known |= {key: (each.code, each.title) for key, each in checked.facts.jobs.items() if key not in known}
    needs = tuple(replace(need, job=known[need.job][0]) for need in checked.facts.needs if need.job in known)
    return replace(
        facts,
        jobs={job.code: _job_facts(job, checked), said.code: _job_facts(job, checked)},
        needs=needs,
        step_of=dict(checked.facts.step_of),
        booked=dict(known.values()),
        step_lots=_step_lots(job),
        findings=tuple(
            Found(one.code, one.grade, one.says, one.do, one.about) for one in checked.check.findings
        ),
    )


def _job_facts(job: Job, checked: precheck.Checked) -> JobFacts:
    steps = tuple(
        StepFacts(
            step.code, step.stage, step.name, step.bay, step.bay_name, step.starts_at, bool(step.signed_at)
        )
        for step in checked.facts.steps
    )
    return JobFacts(job.code, job.vehicle.name, job.title, job.state, job.starts_at, job.booked_at, steps)


def _step_lots(job: Job) -> dict[str, frozenset[str]]:
    """Return the lots of coatings that each step of a job has had, by the step's code."""
    rows = job.movements.filter(kind="use", product__kind="coating", reversed_by=None)
    found: dict[str, set[str]] = {}
    for step, lot in rows.values_list("step__code", "source__lots__code"):
        if step and lot:
            found.setdefault(step, set()).add(lot)
    return {step: frozenset(lots) for step, lots in found.items()}


def _with_bookings(facts: Facts, shop: Shop) -> Facts:
    """Add what open jobs still need, where a bottle may be taken from them."""
    if not facts.bottles:
        return facts
    jobs = {
        precheck.key(row.id): row
        for row in Job.objects.filter(shop=shop, state="open").select_related("vehicle")
    }
    found = [need for need in precheck.open_needs(shop) if need.job in jobs]
    needs: tuple[Need, ...] = tuple(replace(need, job=jobs[need.job].code) for need in found)
    return replace(facts, needs=needs, booked={row.code: row.vehicle.name for row in jobs.values()})


def last_heard(station: Station) -> list[Heard]:
    """Return a station's last answers, the newest first."""
    return list(station.heard.order_by("-at", "-id")[:LAST_SHOWN])


def set_aside(shop: Shop) -> list[Heard]:
    """Return what stations did not know and set aside, the newest first."""
    rows = Heard.objects.filter(station__shop=shop, set_aside=True).select_related("station")
    return list(rows.order_by("-at", "-id")[:50])


def station_by(shop: Shop, named: str) -> Station | None:
    """Return a station by its code or name."""
    rows = Station.objects.filter(shop=shop, revoked_at=None).select_related("shop", "place")
    return rows.filter(Q(code=tidy(named) or "") | Q(name__iexact=named)).first()


def station_of_token(hashed: str) -> Station | None:
    """Return the enrolled station of a device's token, unless it was revoked."""
    rows = Station.objects.filter(token_hash=hashed, revoked_at=None)
    return rows.select_related("shop", "place").first() if hashed else None


def emergency_card(station: Station, place: str) -> dict[str, str]:
    """Return what the emergency panel says: the shop's numbers, and where things are at a place."""
    here = Place.objects.filter(shop=station.shop, code=place).first() if place else station.place
    facts = {
        "eyewash": "eyewash_at",
        "extinguisher": "extinguisher_at",
        "spill_kit": "spill_kit_at",
        "first_aid": "first_aid_at",
    }
    card = {name: getattr(here, column) if here else "" for name, column in facts.items()}
    return card | {"number": station.shop.emergency_number, "poison": station.shop.poison_centre}
