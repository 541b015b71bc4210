"""What the settings pages list."""

from django.db.models import Count, QuerySet

from inventory.models import Place, Shop, Station, Supplier


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
