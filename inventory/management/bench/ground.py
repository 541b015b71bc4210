"""The shop that is measured: 500 products, a drum to take from, a station, and a job of 15 steps."""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from hashlib import sha256

from inventory.models import (
    Container,
    Job,
    Kind,
    Lot,
    Pack,
    Person,
    Place,
    Product,
    Shop,
    Stage,
    Station,
    Step,
    StepNeed,
    Supplier,
    Vehicle,
)
from inventory.stock import ledger
from inventory.stock.rules.acts import Act, LotFacts, NewBottle

LITRE = 1_000_000
DRUM = 1_000 * LITRE
TOKEN = "bench"
STEPS = 15


@dataclass(frozen=True)
class Ground:
    """What the workloads need of it."""

    shop: Shop
    person: Person
    place: Place
    products: list[Product]
    lots: list[Lot]
    drum: Container
    station: Station
    job: Job
    now: datetime


def lay(products: int) -> Ground:
    """Make the shop, with the ledger's first two entries."""
    now = datetime.now(UTC).replace(microsecond=0)
    shop = Shop.objects.create(slug="bench", name="Larkmoor Works", time_zone="Europe/London")
    ledger.start(shop)
    person = Person.objects.create(shop=shop, username="bench", name="Ines", role=Person.Role.OWNER)
    place = Place.objects.create(shop=shop, name="Store", kind=Place.Kind.STORE)
    orlo = Supplier.objects.create(shop=shop, name="Orlo Supply")
    made = [_product(shop, orlo, number) for number in range(products)]
    Pack.objects.bulk_create(Pack(product=product, amount=LITRE, price_minor=1_250) for product in made)
    lots = Lot.objects.bulk_create(Lot(product=product, number="") for product in made)
    new = NewBottle(made[0].code, DRUM, noun="drum", lot=LotFacts("D-1"))
    receive = Act("receive", now - timedelta(days=30), new=new, amount=DRUM, place=place.code)
    drum = ledger.record(shop, [receive], by=person, recorded_at=now)[0].target
    assert drum is not None
    ledger.record(shop, [Act("open", now - timedelta(days=29), target=drum.code)], by=person, recorded_at=now)
    return Ground(shop, person, place, made, list(lots), drum, _station(shop), _job(shop, made, now), now)


def _product(shop: Shop, supplier: Supplier, number: int) -> Product:
    return Product.objects.create(
        shop=shop,
        supplier=supplier,
        name=f"Hollin cleaner {number}",
        kind=Kind.CLEANER,
        dimension=Product.Dimension.VOLUME,
        needs_sheet=False,
    )


def _station(shop: Shop) -> Station:
    hashed = sha256(TOKEN.encode()).hexdigest()
    return Station.objects.create(shop=shop, name="Bay 1 tablet", token_hash=hashed)


def _job(shop: Shop, products: list[Product], now: datetime) -> Job:
    starts = now + timedelta(days=1)
    vehicle = Vehicle.objects.create(shop=shop, name="grey estate")
    job = Job.objects.create(
        shop=shop,
        vehicle=vehicle,
        title="Two-step correction",
        starts_at=starts,
        ends_at=starts + timedelta(hours=STEPS),
        booked_at=now,
    )
    bay = Place.objects.create(shop=shop, name="Bay 1", kind=Place.Kind.BAY)
    for number in range(STEPS):
        step = Step.objects.create(
            job=job,
            position=number,
            stage=Stage.values[0],
            name=f"Step {number + 1}",
            bay=bay,
            starts_at=starts + timedelta(hours=number),
            ends_at=starts + timedelta(hours=number + 1),
        )
        StepNeed.objects.create(step=step, product=products[number % len(products)], amount=50_000)
    return job
