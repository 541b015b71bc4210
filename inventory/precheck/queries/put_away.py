"""What the put-away check is told: what stands in a place and in its fire area, in three queries.

A fourth asks what a bottle is made of, where a law limits that.
"""

from django.db.models import Q

from inventory.models import Container, Place, Product, Profile
from inventory.precheck.rules.put_away import CABINET, Putting, put_away
from safety.findings import Finding
from safety.flammables.values import Held
from safety.models import SheetVersion

from .burning import burns_as, litres, vessel_of
from .substances import sheets_of, substance

# Outside the United States and Great Britain the shop types its limit; Canada's code is not in our tables.
REGIMES = {"US": "US", "GB": "UK"}


def putting_away(
    place: Place, product: Product, amount: int, moving: Container | None
) -> tuple[Finding, ...]:
    """Return the findings on putting so much of a product (base units) in a place; `moving`: it, if here."""
    rows = _around(place, moving)
    products = {row.product_id: row.product for row in rows if row.product} | {product.pk: product}
    profiles = {row.product_id: row for row in Profile.objects.filter(product__in=products)}
    sheets = sheets_of(products.values())

    def of(one: Product) -> tuple[Profile | None, SheetVersion | None]:
        return profiles.get(one.pk), sheets.get(one.sheet_id or 0)

    cabinet = _cabinet_of(place)
    here = [row for row in rows if row.place_id == place.pk]
    others = [row for row in rows if row.place_id != place.pk]
    beside = [row for row in others if cabinet and _cabinet_of(row.place) == cabinet]
    held = [
        (row, _held(row.product, row.content, sheets.get(row.product.sheet_id or 0), row, row.place))
        for row in rows
        if row.product
    ]
    sheet = sheets.get(product.sheet_id or 0)
    coming = _held(product, amount, sheet, moving, place)
    return put_away(
        Putting(
            kind=place.kind,
            what=substance(product, *of(product)),
            there=tuple(substance(row.product, *of(row.product)) for row in here if row.product),
            in_reach=tuple(substance(row.product, *of(row.product)) for row in beside if row.product),
            in_cabinet=(coming, *(one for row, one in held if _cabinet_of(row.place) == cabinet))
            if cabinet
            else (),
            in_area=(coming, *(one for row, one in held if _in_area(row, place))),
            area=place.fire_area,
            regime=REGIMES.get(place.shop.country, "EU"),
            typed_litres=place.fire_area_limit_l,
            vessel=vessel_of(product, moving, sheet, place.shop.regime) if moving else None,
            vessel_regime=place.shop.regime,
        )
    )


def _around(place: Place, moving: Container | None) -> list[Container]:
    near = Q(place=place)
    if cabinet := _cabinet_of(place):
        near |= Q(place=cabinet) | Q(place__within=cabinet) | Q(place__within__within=cabinet)
    if place.fire_area:
        near |= Q(place__fire_area=place.fire_area)
    rows = Container.objects.filter(near, shop=place.shop_id, state__in=["sealed", "open"], content__gt=0)
    if moving is not None:
        rows = rows.exclude(pk=moving.pk)
    return list(rows.select_related("product", "place__within__within"))


def _cabinet_of(place: Place | None) -> Place | None:
    """Return the cabinet that a place is, or stands in: a shelf or tray shares the air of its cabinet."""
    within = place.within if place else None
    around = (place, within, within.within if within else None)
    return next((one for one in around if one and one.kind == CABINET), None)


def _in_area(row: Container, place: Place) -> bool:
    return bool(place.fire_area) and row.place is not None and row.place.fire_area == place.fire_area


def _held(
    product: Product, content: int, sheet: SheetVersion | None, row: Container | None, place: Place | None
) -> Held:
    # A mix with much water is counted as the product: its own flash point is not known.
    category, aerosol = burns_as(sheet.hazards if sheet else None)
    return Held(
        product.name, category, litres(product, content), aerosol=aerosol,
        flash_c=sheet.flash_point_c if sheet else None,
        sealed=row is None or row.state == Container.State.SEALED, cabinet=_cabinet_of(place) is not None,
    )  # fmt: skip
