"""What the posters and labels are made from, read in a constant number of queries."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import asdict, dataclass
from datetime import date, datetime

from django.db.models import QuerySet
from django.utils import timezone

from inventory.models import Admission, Container, Place, PosterIssue, Product, Shop
from inventory.posters.rules import Snapshot, changes
from inventory.stock.queries import dates_of_container
from inventory.stock.rules.use_by import use_by
from safety import queries as sheets
from safety.label_content import label_content
from safety.poster_content import poster_content
from safety.print.values import LabelContent, PlaceFacts, PosterContent


def now() -> datetime:
    """Return the instant of a request, the only clock in this feature."""
    return timezone.now()


@dataclass(frozen=True)
class Wall:
    """A place with its poster: what is printed, what it should say now, why it is out of date."""

    place: Place
    products: list[Product]
    issue: PosterIssue | None
    snapshot: Snapshot
    reasons: list[str]
    not_admitted: list[Product]

    @property
    def next_version(self) -> int:
        """The version that the next print carries."""
        return self.issue.version + 1 if self.issue else 1


def walls(shop: Shop, only: Place | None = None) -> list[Wall]:
    """Return every place that admits products or holds some and works as a bay, with the state of its poster."""
    places = list(Place.objects.filter(shop=shop).select_related("shop").order_by("name"))
    admitted = _admitted(shop)
    here = _standing(shop, places)
    issues: dict[int, PosterIssue] = {}
    for issue in PosterIssue.objects.filter(place__shop=shop).order_by("version"):
        issues[issue.place_id] = issue
    facts = sheets.current_by_sheet({product.sheet_id for rows in admitted.values() for product in rows})
    shown = [only] if only else [place for place in places if admitted[place.pk] or place.kind == Place.Kind.BAY]
    return [_wall(place, admitted[place.pk], here[place.pk], issues.get(place.pk), facts) for place in shown]


def _wall(
    place: Place, products: list[Product], here: list[Product], issue: PosterIssue | None, facts: sheets.Current
) -> Wall:
    now = snapshot(place, products, facts)
    reasons = changes(issue.snapshot if issue else None, now, [(one.code, one.name) for one in here])
    known = {product.pk for product in products}
    return Wall(place, products, issue, now, reasons, [one for one in here if one.pk not in known])


def _admitted(shop: Shop) -> dict[int, list[Product]]:
    found: dict[int, list[Product]] = defaultdict(list)
    rows = Admission.objects.filter(place__shop=shop).select_related("product__sheet").order_by("product__name")
    for row in rows:
        found[row.place_id].append(row.product)
    return found


def _standing(shop: Shop, places: list[Place]) -> dict[int, list[Product]]:
    """Return by place which products stand in it or in a place within it."""
    outer = {place.pk: place.within_id for place in places}
    found: dict[int, dict[int, Product]] = defaultdict(dict)
    rows = Container.objects.filter(shop=shop, content__gt=0, place__isnull=False, product__isnull=False)
    for row in rows.select_related("product").order_by("product__name"):
        step = row.place_id
        while step is not None and row.product is not None:
            found[step][row.product.pk] = row.product
            step = outer.get(step)
    return defaultdict(list, {place: list(products.values()) for place, products in found.items()})


def place_facts(place: Place) -> PlaceFacts:
    """Return a place as the poster knows it."""
    shop = place.shop
    return PlaceFacts(
        name=place.name, task=place.task, shop=shop.name, address=shop.address, eyewash=place.eyewash_at,
        extinguisher=place.extinguisher_at, spill_kit=place.spill_kit_at, emergency_number=shop.emergency_number,
        poison_centre=shop.poison_centre, ventilation=place.ventilation, binder_at=shop.binder_at,
    )  # fmt: skip


def snapshot(place: Place, products: Iterable[Product], facts: sheets.Current) -> Snapshot:
    """Return what a poster printed now would say, in short."""
    return {
        "place": asdict(place_facts(place)),
        "products": {
            product.code: {"name": product.name, "sheet": _revision(product, facts)} for product in products
        },
    }


def _revision(product: Product, facts: sheets.Current) -> str:
    version = facts.get(product.sheet_id or 0)
    return version.revision_on.isoformat() if version else ""


def content(wall: Wall, url: str, on: date, read_at_m: float | None = None) -> PosterContent:
    """Return everything that the poster of a place says, as printed on a day in its next version."""
    facts = sheets.current_by_sheet({product.sheet_id for product in wall.products})
    named = [(product.name, sheets.facts_or_none(facts.get(product.sheet_id or 0))) for product in wall.products]
    return poster_content(
        place_facts(wall.place), named, regime=wall.place.shop.regime, url=url, version=wall.next_version,
        printed_on=on, read_at_m=read_at_m or float(wall.place.read_at_m),
    )  # fmt: skip


def to_label(shop: Shop, codes: Iterable[str]) -> "QuerySet[Container]":
    """Return containers by code with all that their labels say."""
    rows = Container.objects.filter(shop=shop, code__in=list(codes))
    return rows.select_related("product__sheet", "place", "shop").prefetch_related("lots").order_by("product__name", "code")


def labels(shop: Shop, containers: Iterable[Container]) -> list[LabelContent]:
    """Return the labels of containers, in their order."""
    rows = list(containers)
    facts = sheets.current_by_sheet({row.product.sheet_id for row in rows if row.product})
    return [_label(shop, row, facts) for row in rows]


def _label(shop: Shop, row: Container, facts: sheets.Current) -> LabelContent:
    product = row.product
    if product is None:
        return LabelContent(name=f"Empty {row.noun}", code=row.code, notice="Nothing in it. Label it when it is filled.")
    term = use_by(dates_of_container(row), shop.zone)
    mix = f", {row.parts_product}:{row.parts_water}" if row.parts_water else ""
    says = label_content(
        f"{product.name}{mix}", row.code, sheets.facts_or_none(facts.get(product.sheet_id or 0)), shop.regime,
        use_by=f"{term.on.day} {term.on:%b %Y}" if term else "", because=term.why if term else "", more=_more(shop, row),
    )  # fmt: skip
    return says if product.needs_sheet or product.sheet_id else _without_hazards(says)


def _without_hazards(says: LabelContent) -> LabelContent:
    return LabelContent(
        name=says.name, code=says.code, use_by=says.use_by, because=says.because, facts=says.facts
    )


def _more(shop: Shop, row: Container) -> tuple[str, ...]:
    facts = [f"lot {lot.number}" for lot in row.lots.all() if lot.number]
    for word, instant in (("opened", row.opened_at), ("mixed", row.mixed_at)):
        if instant and not (word == "opened" and row.mixed_at):
            day = instant.astimezone(shop.zone)
            facts.append(f"{word} {day.day} {day:%b %Y}")
    return tuple(facts)
