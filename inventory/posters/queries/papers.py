"""What a product's card, a cabinet's list and the shop's list of chemicals are made from."""

from collections.abc import Iterable
from datetime import date

from django.db.models import Q

from inventory.codes import tidy
from inventory.models import Admission, Container, Person, Place, Product, Shop
from inventory.posters.queries.walls import SAYS_SOMETHING, place_facts, product_facts, standing
from safety import queries as sheets
from safety.poster_content import Kept, cabinet_content, card_content, chemicals_content
from safety.print.values import CabinetContent, CardContent, ChemicalsContent, PlaceFacts

HAS_OR_NEEDS_SHEET = Q(needs_sheet=True) | Q(sheet__isnull=False)


def shop_facts(shop: Shop) -> PlaceFacts:
    """Return a shop as its papers know it."""
    return PlaceFacts(
        name="",
        shop=shop.name,
        address=shop.address,
        emergency_number=shop.emergency_number,
        poison_centre=shop.poison_centre,
        binder_at=shop.binder_at,
    )


def card(product: Product, url: str, on: date, language: str = "") -> CardContent:
    """Return the card of one product, in four queries. Raises UnknownLanguage."""
    shop = product.shop
    facts = sheets.current_by_sheet([product.sheet_id])
    version = facts.get(product.sheet_id or 0)
    rows = Admission.objects.filter(product=product).select_related("place__shop").order_by("place__name")
    places = [row.place for row in rows]
    beside = Product.objects.filter(admissions__place__in=places).exclude(pk=product.pk).distinct()
    waste = Place.objects.filter(shop=shop, kind=Place.Kind.WASTE).order_by("name")
    return card_content(
        product.name,
        product_facts(product, facts),
        regime=shop.regime,
        url=url,
        printed_on=on,
        maker=product.maker,
        sheet_of=version.revision_on if version else None,
        shop=shop_facts(shop),
        places=[place_facts(place) for place in places],
        waste_at=", ".join(place.name for place in waste),
        others=list(beside.order_by("name").values_list("name", flat=True)),
        language=language or shop.language,
    )


def cabinet(place: Place, url: str, on: date, language: str = "") -> CabinetContent:
    """Return what stands in a place and the places within it, in five queries. Raises UnknownLanguage."""
    shop = place.shop
    here = standing(shop, Place.objects.filter(shop=shop)).get(place.pk, [])
    rows = Product.objects.filter(shop=shop, code__in=[one.code for one in here]).order_by("name")
    products = list(rows)
    facts = sheets.current_by_sheet(product.sheet_id for product in products)
    admitted = set(Admission.objects.filter(place=place).values_list("product__code", flat=True))
    strangers = [product.name for product in products if product.code not in admitted] if admitted else []
    return cabinet_content(
        place_facts(place),
        [(product.name, product_facts(product, facts)) for product in products],
        regime=shop.regime,
        url=url,
        printed_on=on,
        not_admitted=strangers,
        language=language or shop.language,
    )


def chemicals(shop: Shop, url: str, on: date, language: str = "") -> ChemicalsContent:
    """Return the list of what stands or is admitted somewhere, in four queries. Raises UnknownLanguage."""
    places = _places_of(shop)
    rows = Product.objects.filter(HAS_OR_NEEDS_SHEET, shop=shop, pk__in=places).order_by("name")
    products = list(rows)
    facts = sheets.current_by_sheet(product.sheet_id for product in products)
    kept = []
    for product in products:
        version = facts.get(product.sheet_id or 0)
        revised = version.revision_on if version else None
        where = tuple(sorted(places[product.pk]))
        kept.append(Kept(product.name, product_facts(product, facts), product.maker, revised, where))
    return chemicals_content(
        shop_facts(shop),
        kept,
        regime=shop.regime,
        url=url,
        printed_on=on,
        language=language or shop.language,
    )


def _places_of(shop: Shop) -> dict[int, set[str]]:
    admitted = Admission.objects.filter(SAYS_SOMETHING, place__shop=shop)
    stock = Container.objects.filter(SAYS_SOMETHING, shop=shop, content__gt=0, place__isnull=False)
    found: dict[int, set[str]] = {}
    pairs: Iterable[tuple[int, str]] = (
        *admitted.values_list("product_id", "place__name"),
        *stock.values_list("product_id", "place__name").distinct(),
    )
    for product, place in pairs:
        found.setdefault(product, set()).add(place)
    return found


def product_coded(code: str, person: Person | None) -> Product | None:
    """Return a product by its code: any shop's for a phone on the shop's network, else one's own shop's."""
    rows = Product.objects.filter(code=tidy(code) or "").select_related("shop")
    return (rows.filter(shop=person.shop_id) if person and person.shop_id else rows).first()


def product_called(text: str) -> list[Product]:
    """Return the products with this code, else with this name."""
    coded = Product.objects.filter(code=tidy(text) or "").select_related("shop")
    return list(coded) or list(Product.objects.filter(name__iexact=text.strip()).select_related("shop"))


def shop_called(slug: str, person: Person | None = None) -> Shop | None:
    """Return the shop of this address or, without one, the only shop there is."""
    rows = Shop.objects.filter(slug=slug) if slug else Shop.objects.order_by("pk")
    if person and person.shop_id:
        rows = rows.filter(pk=person.shop_id)
    found = list(rows[:2])
    return found[0] if len(found) == 1 else None
