"""Who and what carries a code that is printed on a card: people, commands, places."""

from inventory.codes import COMMANDS
from inventory.models import Person, Place, Shop
from inventory.posters.pdf import COMMAND_WORDS

Named = tuple[str, str]


def badges(shop: Shop) -> list[Named]:
    """Return everybody who works here with their badge's code."""
    rows = Person.objects.filter(shop=shop, is_active=True).exclude(role=Person.Role.VIEWER)
    return [(row.name, row.code) for row in rows.order_by("name")]


def cards(shop: Shop) -> list[Named]:
    """Return the station's commands, then the places, with their codes."""
    places = Place.objects.filter(shop=shop).order_by("name")
    return [
        *((COMMAND_WORDS[name], code) for name, code in COMMANDS.items()),
        *((place.name, place.code) for place in places),
    ]
