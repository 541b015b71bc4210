"""What the people pages write. A name can be removed; the lines of the ledger keep the code."""

from inventory.models import Person, Shop

REMOVED = "someone who left"


class LastOwner(Exception):
    """A shop keeps at least one owner who can sign in."""

    says = "This is the shop's only owner. Make somebody else an owner first."


def keep(person: Person, shop: Shop, *, password: str, pin: str) -> None:
    """Save a person of a shop, with a new password or PIN where one is given."""
    _refuse_last_owner(person, shop)
    person.shop = shop
    if password:
        person.set_password(password)
    elif person.pk is None:
        person.set_unusable_password()
    if pin:
        person.set_pin(pin)
    person.save()


def remove_name(person: Person) -> None:
    """Take a person's name out of the program; their entries stay under the code."""
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
