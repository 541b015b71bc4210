"""The demo's shop, people, places, suppliers, sheets, products and services, from its tables."""

from dataclasses import dataclass, field
from datetime import date, timedelta

from django.contrib.auth.hashers import make_password

from inventory.management.demo.compositions import MadeOf, made_of
from inventory.management.demo.tables import Row, listed, table
from inventory.models import (
    TRACED_KINDS,
    Admission,
    Pack,
    Person,
    Place,
    Product,
    Service,
    ServiceNeed,
    ServiceStep,
    Shop,
    Supplier,
    Vehicle,
)
from inventory.money import parse_money
from inventory.stock import ledger
from inventory.units import parse_amount
from safety.models import DataSheet, SheetVersion

SLUG = "larkmoor"
SHEETLESS_KINDS = frozenset({"pad", "towel", "applicator", "abrasive", "clay", "bottle", "other"})
# The demo shows what an old sheet looks like: these were last revised so many days ago.
OLD_SHEETS = {"quell_leather": 1500, "sallow_wax": 1320, "fenmoor_alk": 1180}
PASSWORD = "clear coat"


@dataclass
class Cast:
    """Everything of the demo by the keys of its tables."""

    shop: Shop
    people: dict[str, Person] = field(default_factory=dict)
    places: dict[str, Place] = field(default_factory=dict)
    products: dict[str, Product] = field(default_factory=dict)
    packs: dict[str, Pack] = field(default_factory=dict)
    services: dict[str, Service] = field(default_factory=dict)
    vehicles: dict[str, Vehicle] = field(default_factory=dict)


def load(on: date) -> Cast:
    """Make the shop and everything in it but stock and jobs; `on` is the day the demo counts from."""
    cast = Cast(
        Shop.objects.create(
            slug=SLUG,
            name="Larkmoor Works",
            address="3 Mill Lane",
            country="GB",
            time_zone="Europe/London",
            currency="EUR",
            emergency_number="112",
            poison_centre="0800 555 0147 (invented)",
            binder_at="the shelf by the office door",
            date_order="dmy",
        )
    )
    ledger.start(cast.shop)
    _people(cast)
    _places(cast)
    _products(cast, on)
    _services(cast)
    _vehicles(cast)
    for row in table("admissions"):
        Admission.objects.create(
            place=cast.places[row["place"]],
            product=cast.products[row["product"]],
            admitted_on=on - timedelta(days=150),
        )
    return cast


def _people(cast: Cast) -> None:
    # One hash for the three: each takes most of a second, by design, and this password is printed anyhow.
    hashed = make_password(PASSWORD)
    for name, role in (
        ("Ines", Person.Role.OWNER),
        ("Tomas", Person.Role.TECHNICIAN),
        ("Wren", Person.Role.VIEWER),
    ):
        person = Person.objects.create_user(name.lower(), None, name=name, role=role, shop=cast.shop)
        person.password = hashed
        if role == Person.Role.OWNER:
            person.set_pin("2580")
        person.save()
        cast.people[name.lower()] = person


def _places(cast: Cast) -> None:
    for row in table("places"):
        cast.places[row["key"]] = Place.objects.create(
            shop=cast.shop,
            name=row["name"],
            kind=row["kind"],
            within=cast.places.get(row["within"]),
            fire_area=row["fire_area"],
            task=row["task"],
            ventilation=row["ventilation"],
            volume_m3=row["volume_m3"] or None,
            air_m3_h=row["air_m3_h"] or None,
            eyewash_at=row["eyewash"],
            extinguisher_at=row["extinguisher"],
            spill_kit_at=row["spill_kit"],
            first_aid_at=row["first_aid"],
            rag_can_at=row["rag_can"],
        )


def _products(cast: Cast, on: date) -> None:
    suppliers = {row["name"]: _supplier(cast.shop, row) for row in table("suppliers")}
    profiles = {row["profile"]: row for row in table("sheets")}
    for row in table("products"):
        profile = profiles.get(row["sheet"])
        age = OLD_SHEETS.get(row["key"], 420)
        made = made_of().get(row["key"], MadeOf())
        product = Product.objects.create(
            shop=cast.shop,
            name=row["name"],
            maker=row["maker"],
            kind=row["kind"],
            dimension=row["dimension"],
            noun=row["noun"],
            keeping=row["keeping"],
            traced=row["kind"] in TRACED_KINDS,
            dated=row["dated"] == "yes",
            supplier=suppliers[row["supplier"]],
            needs_sheet=row["kind"] not in SHEETLESS_KINDS,
            sheet=_sheet(row, profile, made, on - timedelta(days=age)) if profile else None,
            density_mg_per_l=made.density_mg_per_l,
            density_source="section 9 of its sheet" if made.density_mg_per_l else "",
            wear_uses=8 if row["kind"] == "pad" else None,
            **_lives(row),
        )
        cast.products[row["key"]] = product
        cast.packs[row["key"]] = Pack.objects.create(
            product=product,
            amount=parse_amount(row["pack"], dimension=product.dimension).base,
            gtin=row["gtin"],
            price_minor=parse_money(row["price"]),
        )


def _supplier(shop: Shop, row: Row) -> Supplier:
    return Supplier.objects.create(
        shop=shop,
        name=row["name"],
        email=row["email"],
        lead_days=int(row["lead_days"]),
        minimum_order_minor=parse_money(row["minimum"]),
    )


def _lives(row: Row) -> dict[str, object]:
    lives: dict[str, object] = {}
    for name in ("sealed", "open", "mix"):
        if row[name]:
            length, given_by = row[name].split("/")
            count, unit = length.split()
            lives |= {
                f"{name}_life": int(count),
                f"{name}_life_unit": unit.rstrip("s"),
                f"{name}_life_by": given_by,
            }
    return lives


def _sheet(row: Row, profile: Row, made: MadeOf, revised: date) -> DataSheet:
    sheet = DataSheet.objects.create(supplier=row["maker"], title=row["name"])
    hazards = listed(profile["hazards"])
    danger = any(code in profile["statements"] for code in ("H225", "H311", "H314", "H318", "H304"))
    SheetVersion.objects.create(
        sheet=sheet,
        revision_on=revised,
        hazards=hazards,
        statements=listed(profile["statements"]),
        signal_word="" if not hazards else "Danger" if danger else "Warning",
        not_classified=not hazards,
        holds_fluoride=profile["fluoride"] == "yes",
        holds_isocyanate=profile["isocyanate"] == "yes",
        wear_eyes=profile["eyes"],
        wear_hands=profile["hands"],
        wear_breath=profile["breath"],
        wear_body=profile["body"],
        ventilation=profile["ventilation"],
        aid_eyes=profile["aid_eyes"],
        aid_skin=profile["aid_skin"],
        aid_breath=profile["aid_breath"],
        aid_swallowed=profile["aid_swallowed"],
        fire=profile["fire"],
        spill=profile["spill"],
        never_with=_pairs(profile["never_with"]),
        typed_on=revised + timedelta(days=30),
        typed_by="Ines",
        confirmed_by="Ines",
        confirmed_on=revised + timedelta(days=31),
        **made.sheet,
    )
    return sheet


def _pairs(text: str) -> list[object]:
    pairs = [part.split(":", 1) for part in listed(text)]
    return [{"with": other.strip(), "why": why.strip()} for other, why in pairs]


def _services(cast: Cast) -> None:
    for row in table("services"):
        service, _ = Service.objects.get_or_create(shop=cast.shop, name=row["service"])
        cast.services[row["service"]] = service
        step, _ = ServiceStep.objects.get_or_create(
            service=service,
            name=row["step"],
            defaults={
                "position": service.steps.count() + 1,
                "stage": row["stage"],
                "starts_after": int(row["starts_after"]),
                "minutes": int(row["minutes"]),
            },
        )
        if row["amount"]:
            parts = [int(part) for part in row["mix"].split(":")] if row["mix"] else [1, 0]
            ServiceNeed.objects.create(
                step=step,
                product=cast.products.get(row["product"]),
                kind=row["kind"],
                amount=parse_amount(row["amount"]).base,
                parts_product=parts[0],
                parts_water=parts[1],
            )


def _vehicles(cast: Cast) -> None:
    for key, name, size, has in (
        ("hatch", "small red hatch", "small", ["lacquered_wheel"]),
        ("estate", "grey estate", "large", []),
        ("van", "blue van", "van", []),
        ("coupe", "black coupe", "mid", []),
        ("saloon", "white saloon", "mid", []),
        ("roadster", "green roadster", "small", ["lacquered_wheel", "leather"]),
        ("pickup", "silver pickup", "large", ["lacquered_wheel", "chrome"]),
        ("wagon", "brown wagon", "mid", []),
    ):
        cast.vehicles[key] = Vehicle.objects.create(shop=cast.shop, name=name, size=size, surfaces=has)
