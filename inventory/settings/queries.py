"""What the settings pages list."""

from django.db.models import Count, QuerySet

from inventory.models import Container, Place, Product, Shop, Station, Supplier
from safety import queries as sheets
from safety.hazards.changes import what_changed
from safety.hazards.facts import label_parts


def places(shop: Shop) -> "QuerySet[Place]":
    """Return a shop's places with `things`, the number of containers in each."""
    return (
        Place.objects.filter(shop=shop)
        .select_related("within")
        .annotate(things=Count("containers"))
        .order_by("name")
    )


def suppliers(shop: Shop) -> "QuerySet[Supplier]":
    """Return a shop's suppliers."""
    return Supplier.objects.filter(shop=shop).order_by("name")


def stations(shop: Shop) -> "QuerySet[Station]":
    """Return a shop's scan stations that are in use."""
    return (
        Station.objects.filter(shop=shop, revoked_at=None)
        .select_related("place", "enrolled_by")
        .order_by("name")
    )


def relabelled(shop: Shop, before: str) -> list[str]:
    """Return what the shop's rules change on labels against those `before`, a sentence a product or mix.

    Judged is every product with a confirmed sheet, and each mix of it on the shelf; three queries.
    """
    products = {row.pk: row for row in Product.objects.filter(shop=shop, archived=False, sheet__isnull=False)}
    current = sheets.current_by_sheet(row.sheet_id for row in products.values())
    mixed = Container.objects.filter(shop=shop, content__gt=0, product__in=products, parts_water__gt=0)
    mixes = mixed.order_by().values_list("product", "parts_product", "parts_water").distinct()
    wanted = [*((key, 1, 0) for key in products), *sorted(mixes)]
    found = []
    for key, product, water in wanted:
        row, version = products[key], current.get(products[key].sheet_id or 0)
        old, new = (
            label_parts(sheets.facts_in(version, regime, (product, water), row.density_in_mixes), regime)
            for regime in (before, shop.regime)
        )
        if change := what_changed(old, new):
            found.append(f"{row.name}{f', {product}:{water}' if water else ''}: {change.says}")
    return sorted(found)
