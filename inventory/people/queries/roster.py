"""The people of a shop."""

from django.db.models import QuerySet

from inventory.models import Person, Shop


def people(shop: Shop) -> "QuerySet[Person]":
    """Return everybody of a shop, those who left last."""
    return Person.objects.filter(shop=shop).order_by("-is_active", "name")
