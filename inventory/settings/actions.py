"""Opening a shop: its facts, the head of its ledger, its first owner. Keeping what the settings changed."""

from datetime import date

from django.db import transaction
from django.db.models import Model
from django.forms import ModelForm
from django.utils.text import slugify

from inventory.models import Container, Person, Place, Shop
from inventory.stock import ledger, rooms


@transaction.atomic
def open_shop(shop: Shop, owner: Person) -> Shop:
    """Save a new shop, start its ledger and make a person its owner."""
    shop.slug = slugify(shop.name) or "shop"
    shop.save()
    ledger.start(shop)
    owner.shop, owner.role = shop, Person.Role.OWNER
    owner.save(update_fields=["shop", "role"])
    return shop


@transaction.atomic
def keep(form: "ModelForm[Model]") -> Model:
    """Save what a form changed; with another clock every bottle's last day ends at another instant."""
    kept = form.save()
    if isinstance(kept, Shop) and "time_zone" in form.changed_data:
        bottles = Container.objects.filter(shop=kept).select_related("product", "shop")
        ledger.refresh_use_by(bottles.prefetch_related("lots"))
    return kept


def keep_place(form: "ModelForm[Place]", *, on: date) -> int:
    """Save what a form changed of a place; return how many measurements count no more."""
    return rooms.keep_room(form.instance, on=on)
