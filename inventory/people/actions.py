"""What the people pages write. A name can be removed; the lines of the ledger keep the code."""

from inventory.models import Person, Shop
from inventory.people.forms import PersonForm

REMOVED = "someone who left"


class LastOwner(Exception):
    """A shop keeps at least one owner who can sign in."""

    says = "This is the shop's only owner. Make somebody else an owner first."


def keep(form: PersonForm, shop: Shop) -> Person:
    """Save a person of a shop, with a new password or PIN where one was typed."""
    person: Person = form.save(commit=False)
    _refuse_last_owner(person, shop)
    person.shop = shop
    if form.cleaned_data["password"]:
        person.set_password(form.cleaned_data["password"])
    elif person.pk is None:
        person.set_unusable_password()
    if form.cleaned_data["pin"]:
        person.set_pin(form.cleaned_data["pin"])
    person.save()
    return person


def remove_name(person: Person) -> None:
    """Take a person's name out of the program; they can no longer sign in, their entries stay under the code."""
    if person.shop:
        person.is_active = False
        _refuse_last_owner(person, person.shop)
    person.name, person.username, person.pin_hash = REMOVED, f"left-{person.code.lower()}", ""
    person.set_unusable_password()
    person.save()


def _refuse_last_owner(person: Person, shop: Shop) -> None:
    if person.is_active and person.is_owner:
        return
    others = Person.objects.filter(shop=shop, role=Person.Role.OWNER, is_active=True).exclude(pk=person.pk)
    if not others.exists():
        raise LastOwner
