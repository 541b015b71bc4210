"""The cast of every test: Larkmoor Works, its people, its places, and a few bottles. All of it is invented.

`larkmoor()` opens the shop; the functions after it put things on its shelf through the real ledger. Amounts
are base units (µl, mg, pieces). NOON is the moment from which tests count: Wednesday 25 November 2026,
12:00 UTC.
"""

from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from itertools import count

from inventory.models import (
    Container,
    Job,
    Kind,
    Pack,
    Person,
    Place,
    Product,
    Profile,
    Shop,
    Step,
    StepNeed,
    Supplier,
    Vehicle,
)
from inventory.stock import ledger
from inventory.stock.rules.acts import Act, LotFacts, NewBottle

NOON = datetime(2026, 11, 25, 12, 0, tzinfo=UTC)
TODAY = NOON.date()
ML = 1_000
LITRE = 1_000_000
GRAM = 1_000
_numbers = count(1)


@dataclass(frozen=True)
class World:
    """Larkmoor Works on an ordinary Wednesday."""

    shop: Shop
    ines: Person
    tomas: Person
    wren: Person
    orlo: Supplier
    store: Place
    bay_1: Place
    bay_2: Place


def larkmoor(slug: str = "larkmoor") -> World:
    """Open the shop: an owner, a technician, a viewer, a supplier, a store and two bays; an empty ledger."""
    shop = Shop.objects.create(
        slug=slug, name="Larkmoor Works", address="3 Mill Lane", country="GB", time_zone="Europe/London"
    )
    ledger.start(shop)
    place = {
        name: Place.objects.create(shop=shop, name=name, kind=kind)
        for name, kind in (("Store", "store"), ("Bay 1", "bay"), ("Bay 2", "bay"))
    }
    return World(
        shop=shop,
        ines=person(shop, "Ines", Person.Role.OWNER),
        tomas=person(shop, "Tomas", Person.Role.TECHNICIAN),
        wren=person(shop, "Wren", Person.Role.VIEWER),
        orlo=Supplier.objects.create(shop=shop, name="Orlo Supply", lead_days=6),
        store=place["Store"],
        bay_1=place["Bay 1"],
        bay_2=place["Bay 2"],
    )


def person(shop: Shop, name: str, role: str) -> Person:
    """Return someone who works here; the password is "clear coat"."""
    username = name.lower() if shop.slug == "larkmoor" else f"{name.lower()}.{shop.slug}"
    return Person.objects.create_user(username, "clear coat", name=name, role=role, shop=shop)


def tidewall(world: World, **facts: object) -> Product:
    """Tidewall coating: 30 ml bottles, 90 days after opening by its maker's word."""
    return product(
        world, "Tidewall coating", Kind.COATING, open_life=90, open_life_by="maker", traced=True, **facts
    )


def hollin(world: World, **facts: object) -> Product:
    """Hollin panel wipe: a solvent that does not die of being opened."""
    return product(world, "Hollin panel wipe", Kind.SOLVENT, traced=True, **facts)


def marl(world: World, **facts: object) -> Product:
    """Marl cutting compound: by weight, 180 days after opening by this shop's own estimate."""
    return product(
        world,
        "Marl cutting compound",
        Kind.COMPOUND,
        dimension="mass",
        open_life=180,
        open_life_by="shop",
        **facts,
    )


def fenmoor(world: World, **facts: object) -> Product:
    """Fenmoor iron remover: drums of 5 litres."""
    return product(world, "Fenmoor iron remover", Kind.IRON, noun="drum", traced=True, **facts)


def product(world: World, name: str, kind: str, **facts: object) -> Product:
    """Return a product of the shop from Orlo Supply, by volume unless said otherwise."""
    known: dict[str, object] = {"dimension": "volume", "supplier": world.orlo, **facts}
    return Product.objects.create(shop=world.shop, name=name, kind=kind, **known)


def reactive(world: World, name: str, kind: str, *groups: str) -> Product:
    """A product that needs no sheet here, with reactivity groups that Ines confirmed."""
    made = product(world, name, kind, needs_sheet=False)
    Profile.objects.create(
        product=made, groups=list(groups), groups_confirmed_on=NOON.date(), groups_confirmed_by="Ines"
    )
    return made


def bleach(world: World) -> Product:
    """Hypochlorite in lye and water."""
    return reactive(world, "Brack bleach", "cleaner", "104", "10", "hypochlorite", "106")


def lime_remover(world: World) -> Product:
    """An organic acid in water."""
    return reactive(world, "Brack lime remover", "acid", "3", "106")


def soap(world: World) -> Product:
    """Water and what foams in it: it meets nothing that it harms."""
    return reactive(world, "Fenmoor soap", "shampoo", "106")


def pack(of: Product, amount: int, **facts: object) -> Pack:
    """Return a size in which a product is bought."""
    return Pack.objects.create(product=of, amount=amount, **facts)


def bottle(
    world: World,
    of: Product,
    content: int,
    *,
    lot: str | None = None,
    expires_on: date | None = None,
    at: datetime = NOON - timedelta(days=30),
    opened_at: datetime | None = None,
    place: Place | None = None,
    **new: object,
) -> Container:
    """Receive one bottle through the ledger; `opened_at` opens it then; return it as the shelf has it."""
    facts = LotFacts(lot if lot is not None else f"LOT-{next(_numbers)}", expires_on)
    bringing = NewBottle(of.code, content, noun=of.noun, lot=facts, **new)  # type: ignore[arg-type]
    acts = [Act("receive", at, new=bringing, amount=content, place=(place or world.store).code)]
    received = record(world, *acts)[0].target
    assert received is not None
    if opened_at:
        record(world, Act("open", opened_at, target=received.code))
    received.refresh_from_db()
    return received


def spray_bottle(world: World, full: int = LITRE, place: Place | None = None) -> Container:
    """Return an empty refillable bottle, rinsed, ready to be filled."""
    bringing = NewBottle(None, full, noun="spray bottle", refillable=True, sealed=False)
    at = NOON - timedelta(days=30)
    received = record(world, Act("receive", at, new=bringing, amount=0, place=(place or world.store).code))[
        0
    ].target
    assert received is not None
    return received


def record(world: World, *acts: Act, by: Person | None = None):  # type: ignore[no-untyped-def]
    """Write acts through the ledger, by Tomas unless said otherwise, recorded at NOON."""
    return ledger.record(world.shop, list(acts), by=by or world.tomas, recorded_at=NOON)


def car(world: World, name: str = "Grey estate", size: str = "mid") -> Vehicle:
    """Return a vehicle of the shop."""
    return Vehicle.objects.create(shop=world.shop, name=name, size=size)


def job(
    world: World,
    starts_at: datetime = NOON + timedelta(days=1),
    *,
    vehicle: Vehicle | None = None,
    title: str = "Correction and coating",
    booked_at: datetime = NOON - timedelta(days=7),
    hours: int = 8,
) -> Job:
    """Book a car; steps are added with `step`."""
    return Job.objects.create(
        shop=world.shop,
        vehicle=vehicle or car(world),
        title=title,
        starts_at=starts_at,
        ends_at=starts_at + timedelta(hours=hours),
        booked_at=booked_at,
    )


def step(
    of: Job,
    name: str = "Panel wipe",
    *,
    stage: str = "coat",
    after_hours: float = 0,
    hours: float = 1,
    bay: Place | None = None,
    person: Person | None = None,
) -> Step:
    """Add a step to a job, so many hours after the job's start."""
    starts_at = of.starts_at + timedelta(hours=after_hours)
    return Step.objects.create(
        job=of,
        position=of.steps.count() + 1,
        stage=stage,
        name=name,
        bay=bay,
        person=person,
        starts_at=starts_at,
        ends_at=starts_at + timedelta(hours=hours),
    )


def need(of: Step, what: Product | str, amount: int, parts: tuple[int, int] = (1, 0)) -> StepNeed:
    """Plan that a step takes so much concentrate of a product, or of a kind."""
    which = {"kind": what} if isinstance(what, str) else {"product": what}
    return StepNeed.objects.create(
        step=of, amount=amount, parts_product=parts[0], parts_water=parts[1], **which
    )
