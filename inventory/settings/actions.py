"""Opening a shop: its facts, the head of its ledger, its first owner."""

from django.db import transaction
from django.utils.text import slugify

from inventory.models import Person, Shop
from inventory.stock import ledger


@transaction.atomic
def open_shop(shop: Shop, owner: Person) -> Shop:
    """Save a new shop, start its ledger and make a person its owner."""
    shop.slug = slugify(shop.name) or "shop"
    shop.save()
    ledger.start(shop)
    owner.shop, owner.role = shop, Person.Role.OWNER
    owner.save(update_fields=["shop", "role"])
    return shop
