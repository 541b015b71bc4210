"""What protects people on the shelf: each item with what it serves, where it stands and until when."""

from collections.abc import Mapping, Sequence

from inventory.models import Container, Equipment, GloveMinutes, Place, Serves, Shop
from inventory.precheck.questions.topics.people import GloveFacts, ItemFacts


def serves(shop: Shop) -> dict[int, Equipment]:
    """Return by product what it is for; empty where a shop says so of none."""
    return {row.product_id: row for row in Equipment.objects.filter(product__shop=shop)}


def items(shop: Shop, served: Mapping[int, Equipment]) -> tuple[ItemFacts, ...]:
    """Return the items on the shelf that are neither held nor on their way out."""
    if not served:
        return ()
    rows = Container.objects.filter(
        shop=shop, product__in=served, state__in=["sealed", "open"], content__gt=0, held=""
    )
    here = rows.exclude(place__kind=Place.Kind.WASTE).exclude(lots__held__gt="")
    found = here.select_related("product", "place__within__within").order_by("code")
    return tuple(_item(row, served) for row in found)


def _item(row: Container, served: Mapping[int, Equipment]) -> ItemFacts:
    assert row.product is not None
    said = served[row.product.pk]
    return ItemFacts(
        code=row.code,
        product=row.product.code,
        name=row.product.name,
        serves=said.serves,
        filters=said.filters,
        place=row.place.code if row.place else "",
        place_name=row.place.name if row.place else "",
        reach=_reach(row.place),
        ends_at=row.use_by_at,
        ends_on=row.use_by_on,
        sealed=row.state == Container.State.SEALED,
        minutes=row.minutes,
        wear_minutes=row.product.wear_minutes,
    )


def _reach(place: Place | None) -> frozenset[str]:
    """Return a place and the two around it: a box in a cabinet in a bay."""
    within = place.within if place else None
    around = (place, within, within.within if within else None)
    return frozenset(one.code for one in around if one)


def gloves(stock: Sequence[ItemFacts]) -> tuple[GloveFacts, ...]:
    """Return the minutes that the gloves on hand stand what their maker tried."""
    here = {item.product for item in stock if item.serves == Serves.GLOVES}
    if not here:
        return ()
    rows = GloveMinutes.objects.filter(glove__code__in=here).select_related("glove", "against")
    return tuple(
        GloveFacts(row.glove.code, row.glove.name, row.against.code, row.minutes, row.source)
        for row in rows.order_by("glove__code", "against__code")
    )
