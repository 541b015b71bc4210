"""Who and what carries a code that is printed on a card: people, commands, places."""

from decimal import Decimal

from inventory.codes import AIR, COMMANDS, HUMIDITY, PANEL, code_of, value_code
from inventory.models import Person, Place, Shop
from inventory.posters.pdf import COMMAND_WORDS
from inventory.stock.conversation.measured import celsius
from safety.print.code_card import BLANK, Band, CodeCard

Named = tuple[str, str]
# A degree and five percent are what a coat's window and a shop's instrument tell apart (common practice, no
# source); what lies between is typed.
CELSIUS, FAHRENHEIT, PERCENT = range(5, 41), range(42, 105, 2), range(20, 96, 5)
USE = (
    "With no bottle in hand scan the bay, or the car in it, then one value of each: air, panel and "
    "humidity, in any order. "
    "The station says what is still missing; of two, the last one scanned counts. "
    "Undo lets go of what was begun, or takes a whole reading back."
)
OTHERWISE = (
    "Between two values, or beyond them: type it at the station, as “{air}” or “humidity 52”. "
    "A reading is finished within 10 minutes of its first value, "
    "and the check of a coat counts it for two hours."
)


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


def weather_card(shop: Shop) -> CodeCard:
    """Return the card of a reading's values, in degrees as the shop counts them."""
    us = shop.system == Shop.System.US
    unit, air = ("°F", "air 70.5 F") if us else ("°C", "air 21.4")
    none = ("not measured", value_code(PANEL, None))
    humidity = [(str(each), value_code(HUMIDITY, Decimal(each))) for each in PERCENT]
    return CodeCard(
        "Weather in a bay",
        USE,
        (
            Band("Air", unit, _degrees(AIR, us=us)),
            Band("Panel", unit, [*_degrees(PANEL, us=us), BLANK, none]),
            Band("Humidity", "%", [*humidity, BLANK, (COMMAND_WORDS["undo"], code_of("undo"))]),
        ),
        OTHERWISE.format(air=air),
    )


def _degrees(quantity: str, *, us: bool) -> list[Named]:
    if us:
        return [(str(each), value_code(quantity, celsius(Decimal(each)))) for each in FAHRENHEIT]
    return [(str(each), value_code(quantity, Decimal(each))) for each in CELSIUS]
