"""Who works in a shop, for a finding that only one of them can end."""

from inventory.models import Person, Shop


def crew(shop: Shop) -> list[Person]:
    """Return who works here, by name, in one query."""
    return list(Person.objects.filter(shop=shop, is_active=True).order_by("name"))
