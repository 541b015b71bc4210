"""Bottles and places as the conversation sees them."""

from collections.abc import Iterable, Set

from django.db.models import Exists, OuterRef, Prefetch, Q, prefetch_related_objects

from inventory.models import Admission, Container, Place, PosterIssue, Product, Shop, Station
from inventory.stock import queries as stock
from inventory.stock.conversation import Said, State
from inventory.stock.conversation.facts import Bottle, PlaceFacts, ProductFacts
from inventory.stock.rules.reserve import life_or_none


def named(shop: Shop, codes: Iterable[str]) -> list[Container]:
    """Return the bottles meant, locked, without their lots: what is written of them needs no second look."""
    if not (listed := list(codes)):
        return []
    rows = Container.objects.select_for_update(of=("self",)).filter(shop=shop, code__in=listed)
    here = rows.exclude(state="expected").select_related("product__supplier", "product__profile", "place")
    return list(here.order_by("id"))


def beside(shop: Shop, meant: list[Container], products: Set[str], kinds: Set[str]) -> list[Container]:
    """Return the bottles meant, and those of some products or kinds that compete with them; lots loaded."""
    pool = Q(product__code__in=products)
    if kinds:
        pool |= Q(product__kind__in=kinds)
    rows = Container.objects.filter(pool, shop=shop, state__in=["sealed", "open"], content__gt=0)
    rows = rows.exclude(pk__in=[row.pk for row in meant])
    found = [*meant, *(rows.select_related("place") if products or kinds else ())]
    _give_products(found)
    prefetch_related_objects(found, "lots")
    return found


def _give_products(rows: list[Container]) -> None:
    """Give each bottle its product; most are of the one in hand, which is loaded."""
    known = {row.product_id: row.product for row in rows if Container.product.is_cached(row)}
    if missing := {row.product_id for row in rows} - set(known):
        known |= Product.objects.select_related("supplier").in_bulk(missing)
    for row in rows:
        row.product = known[row.product_id]


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
        code=row.code,
        name=row.name,
        kind=row.kind,
        dimension=row.dimension,
        noun=row.noun,
        keeping=row.keeping,
        traced=row.traced,
        mixes_lots=row.mixes_lots,
        dated=row.dated,
        density_mg_per_l=row.density_mg_per_l,
        open=life_or_none(row.open_life, row.open_life_unit, row.open_life_by),
        mix=life_or_none(row.mix_life, row.mix_life_unit, row.mix_life_by),
        wear_uses=row.wear_uses,
        wear_minutes=row.wear_minutes,
        on_posters=row.needs_sheet or row.sheet_id is not None,
    )


def places_for(shop: Shop, state: State, said: Said, station: Station) -> dict[str, PlaceFacts]:
    """Return the places that are meant; what their posters admit only where something may arrive."""
    named = {said.code if said.kind == "place" else "", str(state.slots.get("place", ""))}
    arriving = state.verb == "receive" or said.packs or said.kind == "product" or said.command == "bring_back"
    if said.measured:
        named |= {state.place, station.place.code if station.place else ""}
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
