"""The places with their posters: what hangs there, what it should say now, why it is out of date."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import asdict, dataclass
from datetime import date, datetime

from django.db.models import Max, OuterRef, Q, QuerySet, Subquery
from django.utils import timezone

from inventory.codes import tidy
from inventory.models import Admission, Container, Person, Place, PosterIssue, Product, Shop
from inventory.posters.rules import Snapshot, Standing, by_outer_place, changes, too_old
from safety import queries as sheets
from safety.hazards.facts import SheetFacts
from safety.poster_content import poster_content
from safety.print.values import PlaceFacts, PosterContent

# A towel, a pad, a burn gel: there is no sheet to ask for, so a poster has nothing to say of them.
SAYS_SOMETHING = Q(product__needs_sheet=True) | Q(product__sheet__isnull=False)


def now() -> datetime:
    """Return the instant of a request, the only clock in this feature."""
    return timezone.now()


def today(shop: Shop) -> date:
    """Return the shop's own day."""
    return now().astimezone(shop.zone).date()


@dataclass(frozen=True)
class Wall:
    """A place with its poster: what is printed, what it should say now, why it is out of date."""

    place: Place
    products: list[Product]
    issue: PosterIssue | None
    snapshot: Snapshot
    reasons: list[str]
    not_admitted: list[Standing]

    @property
    def next_version(self) -> int:
        """The version that the next print carries."""
        return self.issue.version + 1 if self.issue else 1

    @property
    def as_issued(self) -> bool:
        """Whether printing it now gives what hangs there: a worn poster is printed again as it was."""
        return self.issue is not None and self.issue.snapshot == self.snapshot


def walls(shop: Shop, only: Place | None = None, on: date | None = None) -> list[Wall]:
    """Return every bay and every place that admits something, with its poster on a day; in five queries."""
    places = list(Place.objects.filter(shop=shop).select_related("shop").order_by("name"))
    admitted = _admitted(shop)
    here = standing(shop, places)
    issues = {issue.place_id: issue for issue in _latest(shop)}
    facts = sheets.current_by_sheet({product.sheet_id for rows in admitted.values() for product in rows})
    bays = [place for place in places if admitted[place.pk] or place.kind == Place.Kind.BAY]
    return [
        _wall(place, admitted[place.pk], here.get(place.pk, []), issues.get(place.pk), facts, on)
        for place in ([only] if only else bays)
    ]


def _wall(
    place: Place,
    products: list[Product],
    here: list[Standing],
    issue: PosterIssue | None,
    facts: sheets.Current,
    on: date | None,
) -> Wall:
    says = snapshot(place, products, facts)
    reasons = changes(issue.snapshot if issue else None, says, here)
    reasons += too_old(issue.printed_on if issue else None, on or today(place.shop))
    known = {product.code for product in products}
    return Wall(place, products, issue, says, reasons, [one for one in here if one.code not in known])


def _admitted(shop: Shop) -> dict[int, list[Product]]:
    found: dict[int, list[Product]] = defaultdict(list)
    rows = Admission.objects.filter(place__shop=shop).select_related("product")
    for row in rows.order_by("product__name"):
        found[row.place_id].append(row.product)
    return found


def standing(shop: Shop, places: Iterable[Place]) -> dict[int, list[Standing]]:
    """Return by place which products stand in it or in a place within it."""
    rows = Container.objects.filter(SAYS_SOMETHING, shop=shop, content__gt=0, place__isnull=False)
    named = rows.order_by("place_id").values_list("place_id", "product__code", "product__name").distinct()
    return by_outer_place(
        ((place, Standing(code, name)) for place, code, name in named if place and code and name),
        {place.pk: place.within_id for place in places},
    )


def _latest(shop: Shop) -> "QuerySet[PosterIssue]":
    of_place = PosterIssue.objects.filter(place=OuterRef("place")).order_by()
    last = of_place.values("place").annotate(last=Max("version")).values("last")
    return PosterIssue.objects.filter(place__shop=shop, version=Subquery(last))


def place_facts(place: Place) -> PlaceFacts:
    """Return a place as the poster knows it."""
    shop = place.shop
    return PlaceFacts(
        name=place.name,
        task=place.task,
        shop=shop.name,
        address=shop.address,
        eyewash=place.eyewash_at,
        extinguisher=place.extinguisher_at,
        spill_kit=place.spill_kit_at,
        emergency_number=shop.emergency_number,
        poison_centre=shop.poison_centre,
        ventilation=place.ventilation,
        binder_at=shop.binder_at,
        first_aid=place.first_aid_at,
        volume_m3=place.volume_m3,
        air_m3_h=place.air_m3_h,
    )


def snapshot(place: Place, products: Iterable[Product], facts: sheets.Current) -> Snapshot:
    """Return what a poster printed now would say, in short."""
    versions = {product.code: facts.get(product.sheet_id or 0) for product in products}
    return {
        "place": asdict(place_facts(place)) | {"regime": place.shop.regime, "language": place.shop.language},
        "products": {
            product.code: {
                "name": product.name,
                "sheet": version.revision_on.isoformat() if (version := versions[product.code]) else "",
                "typed": version.pk if version else None,
            }
            for product in products
        },
    }


def content(
    wall: Wall, url: str, on: date, read_at_m: float | None = None, language: str = ""
) -> PosterContent:
    """Return all that a place's poster says: as it hangs where nothing changed, else its next version.

    Without a language, the shop's own. Raises UnknownLanguage.
    """
    facts = sheets.current_by_sheet({product.sheet_id for product in wall.products})
    issue = wall.issue if wall.as_issued else None
    return poster_content(
        place_facts(wall.place),
        [(product.name, product_facts(product, facts)) for product in wall.products],
        regime=wall.place.shop.regime,
        url=url,
        version=issue.version if issue else wall.next_version,
        printed_on=issue.printed_on if issue else on,
        read_at_m=read_at_m or float(wall.place.read_at_m),
        language=language or wall.place.shop.language,
    )


def product_facts(product: Product, facts: sheets.Current) -> SheetFacts | None:
    """Return what a product's confirmed sheet says; of what needs none, that it is not classified."""
    if product.sheet_id is None and not product.needs_sheet:
        return SheetFacts(not_classified=True)
    return sheets.facts_or_none(facts.get(product.sheet_id or 0))


def place_coded(code: str, person: Person | None) -> Place | None:
    """Return a place by its code: any shop's for the phone on the wall's network, else one's own shop's."""
    rows = Place.objects.filter(code=tidy(code) or "").select_related("shop")
    return (rows.filter(shop=person.shop_id) if person and person.shop_id else rows).first()


def place_called(text: str) -> list[Place]:
    """Return the places with this code, else with this name."""
    coded = Place.objects.filter(code=tidy(text) or "").select_related("shop")
    return list(coded) or list(Place.objects.filter(name__iexact=text.strip()).select_related("shop"))


def products_to_admit(place: Place) -> "QuerySet[Product]":
    """Return what can be admitted to a place: whatever has or needs a sheet and is not on the list yet."""
    rows = Product.objects.filter(
        Q(needs_sheet=True) | Q(sheet__isnull=False), shop=place.shop, archived=False
    )
    return rows.exclude(admissions__place=place).order_by("name")
