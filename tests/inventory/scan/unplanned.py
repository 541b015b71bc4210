"""A shop in which somebody pours what nobody planned: its station, its bottles, who is trained.

The wipe is 880 g/l with 70 % isopropanol, poured in Bay 1 of 160 m³ with 960 m³/h and K 3: of 180 ml who
works there breathes 91.2 % of the 15-minute limit (worked by hand in tests/inventory/precheck/airs.py).
"""

from datetime import date, timedelta
from decimal import Decimal

from inventory.models import (
    Container,
    FirstDay,
    Job,
    Person,
    PlaceCheck,
    Product,
    Step,
    Training,
    WeatherReading,
)
from inventory.precheck import queries
from inventory.precheck.questions import Finding
from safety.models import DataSheet, SheetVersion
from tests.world import LITRE, NOON, World, bottle, job, larkmoor, person, product, reactive, step

OPENED = NOON - timedelta(days=1)
ISOPROPANOL = {
    "name": "Propan-2-ol", "cas": "67-63-0", "percent": 70, "classes": ["Flam. Liq. 2 H225"],
}  # fmt: skip


def shop() -> World:
    """Open the shop: Tomas is trained and signed his first day; Bay 1 is measured and has what eyes need."""
    world = larkmoor()
    bay = world.bay_1
    bay.volume_m3, bay.air_m3_h, bay.mixing_k = 160, 960, Decimal("3.0")
    bay.eyewash_at, bay.first_aid_at = "left of the door", "office"
    bay.save()
    PlaceCheck.objects.create(place=bay, what="eyewash", done_at=NOON, by=world.tomas)
    WeatherReading.objects.create(
        place=bay, taken_at=NOON, air_c=Decimal("20.0"), humidity=Decimal("50.0"), panel_c=Decimal("19.0"),
        by=world.tomas,
    )  # fmt: skip
    for who in (world.tomas, world.ines):
        FirstDay.objects.create(person=who, signed_at=NOON - timedelta(days=90), shown_by=world.ines)
        for topic in ("corrosive", "fluoride", "flammable"):
            Training.objects.create(
                person=who, topic=topic, trained_on=date(2026, 6, 1), proof="course", kept_by=world.ines
            )
    return world


def nia(world: World) -> Person:
    """Return Nia, who began today: no training, no first day signed."""
    return person(world.shop, "Nia", Person.Role.TECHNICIAN)


def sheeted(of: Product, **says: object) -> Product:
    """Give a product a confirmed sheet."""
    sheet = DataSheet.objects.create(supplier="Orlo Supply", title=of.name)
    SheetVersion.objects.create(
        sheet=sheet, revision_on=date(2025, 1, 1), typed_on=date(2025, 1, 1), confirmed_on=date(2025, 1, 1),
        confirmed_by="Ines", **says,
    )  # fmt: skip
    of.sheet = sheet
    of.save()
    return of


def wheel_acid(world: World) -> Product:
    """Return a wheel acid with a fluoride."""
    made = product(world, "Brack wheel acid", "acid")
    return sheeted(made, hazards=["Skin Corr. 1B H314"], holds_fluoride=True)


def glass_acid(world: World) -> Product:
    """Return an acid whose owner confirmed that it holds a fluoride, and that needs no sheet here."""
    return reactive(world, "Brack rim acid", "acid", "15", "106")


def wipe(world: World) -> Product:
    """Return the panel wipe."""
    made = product(world, "Hollin panel wipe", "solvent", density_mg_per_l=880_000)
    return sheeted(made, hazards=["Flam. Liq. 2 H225"], composition=[ISOPROPANOL])


def plain(world: World, name: str, kind: str) -> Product:
    """Return a product that needs no sheet here."""
    return product(world, name, kind, needs_sheet=False)


def opened(world: World, of: Product, amount: int = LITRE) -> str:
    """Return the code of an open bottle."""
    return bottle(world, of, amount, opened_at=OPENED).code


def working(world: World, **work: object) -> tuple[Job, Step]:
    """Return a job whose one step is done now, by Tomas in Bay 1, and takes nothing."""
    car = job(world, NOON)
    now = step(car, "Wheels", stage="decontaminate", bay=world.bay_1, person=world.tomas)
    Step.objects.filter(pk=now.pk).update(**work)
    return car, now


def found(car: Job, code: str) -> list[Finding]:
    """Return what the check's page says of a code."""
    at = NOON + timedelta(minutes=30)
    fresh = Job.objects.select_related("shop", "vehicle").get(pk=car.pk)
    return [one for one in queries.check(fresh, at).check.findings if one.code == code]


def kept(code: str) -> Container:
    """Return a bottle as the shelf has it now."""
    return Container.objects.get(code=code)
