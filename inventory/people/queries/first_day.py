"""What the first day's sheet is made from: what stands where, and what guards against it."""

from collections.abc import Callable

from inventory.models import Admission, Container, Place, Product, Serves, Shop
from inventory.people.rules.first_day import Here, House, Room, Section, sections
from safety import queries as sheets
from safety.hazards.statements import wording
from safety.models import SheetVersion

WORKED_IN = (Place.Kind.BAY, Place.Kind.STORE, Place.Kind.VAN, Place.Kind.WASTE)
WORN = (
    Serves.GLOVES, Serves.GOGGLES, Serves.FACE_SHIELD, Serves.APRON, Serves.HALF_MASK, Serves.FULL_MASK,
    Serves.POWERED_HALF_MASK, Serves.POWERED_FULL_MASK, Serves.HOOD, Serves.AIR_FED, Serves.DUST_MASK,
)  # fmt: skip

# A statement's code in words, by the shop's rules and the reader's language.
InWords = Callable[[str], str]


def first_day(shop: Shop, sheets_at: str, language: str) -> tuple[Section, ...]:
    """Return the sheet of the first day as the shop is now; `sheets_at` is where its data sheets are read."""
    places = list(Place.objects.filter(shop=shop).select_related("within__within"))
    products = _products(shop, places)
    current = sheets.current_by_sheet(one.sheet_id for found in products.values() for one in found)

    def in_words(statement: str) -> str:
        return wording(statement, shop.regime, language)

    rooms = [
        _room(place, products.get(place.pk, []), current, in_words)
        for place in sorted(places, key=lambda one: one.name)
        if place.kind in WORKED_IN
    ]
    told = [room for room in rooms if room.products or room.eyewash]
    return sections(_house(shop, sheets_at), told, language)


def _products(shop: Shop, places: list[Place]) -> dict[int, list[Product]]:
    """Return by the room they are in what stands or is admitted there."""
    room = {place.pk: _room_of(place).pk for place in places}
    found: dict[int, dict[int, Product]] = {}
    here = Container.objects.filter(shop=shop, state__in=["sealed", "open"], content__gt=0)
    pairs = [
        *((row.place_id, row.product) for row in here.select_related("product")),
        *(
            (row.place_id, row.product)
            for row in Admission.objects.filter(place__shop=shop).select_related("product")
        ),
    ]
    for place, product in pairs:
        if place in room and product is not None:
            found.setdefault(room[place], {})[product.pk] = product
    return {place: list(some.values()) for place, some in found.items()}


def _room_of(place: Place) -> Place:
    around = (place, place.within, place.within.within if place.within else None)
    return next((one for one in around if one and one.kind in WORKED_IN), place)


def _room(place: Place, products: list[Product], current: sheets.Current, in_words: InWords) -> Room:
    known = [(one, current.get(one.sheet_id or 0)) for one in products]
    return Room(
        name=place.name,
        products=tuple(
            _here(one, version, in_words) for one, version in known if version and version.hazards
        ),
        eyewash=place.eyewash_at,
        spill_kit=place.spill_kit_at,
        extinguisher=place.extinguisher_at,
        first_aid=place.first_aid_at,
    )


def _here(product: Product, version: SheetVersion, in_words: InWords) -> Here:
    dangers = [str(one) for one in version.statements if str(one).startswith(("H", "EUH"))]
    worn = (
        ("Hands", version.wear_hands),
        ("Eyes", version.wear_eyes),
        ("Body", version.wear_body),
        ("Breath", version.wear_breath),
    )
    return Here(
        name=product.name,
        word=version.signal_word,
        dangers=tuple(in_words(one) for one in dangers),
        worn=tuple((part, text) for part, text in worn if text),
        spill=version.spill,
        fluoride=version.holds_fluoride,
        isocyanate=version.holds_isocyanate,
    )


def _house(shop: Shop, sheets_at: str) -> House:
    rows = Container.objects.filter(shop=shop, state__in=["sealed", "open"], content__gt=0, held="")
    here = rows.filter(product__equipment__isnull=False).exclude(place__kind=Place.Kind.WASTE)
    found: dict[str, dict[str, list[str]]] = {}
    for row in here.select_related("product__equipment", "place").order_by("product__name", "place__name"):
        assert row.product is not None
        places = found.setdefault(row.product.equipment.serves, {}).setdefault(row.product.name, [])
        if row.place and row.place.name not in places:
            places.append(row.place.name)

    def where(serves: str) -> tuple[str, ...]:
        return tuple(", ".join([name, *places]) for name, places in found.get(serves, {}).items())

    return House(
        name=shop.name,
        emergency_number=shop.emergency_number,
        poison_centre=shop.poison_centre,
        binder_at=shop.binder_at,
        sheets_at=sheets_at,
        gel=where(Serves.GLUCONATE),
        bottles=where(Serves.EYEWASH),
        worn=tuple(each for one in WORN for each in where(one)),
    )
