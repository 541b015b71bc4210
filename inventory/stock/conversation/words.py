"""How the station says codes, days, amounts and bottles."""

from datetime import date, datetime, tzinfo

from inventory.stock.rules.use_by import Term
from inventory.units import Amount, AmountError, Dimension, by_density, parse_amount, show

from .facts import Bottle, Facts, ProductFacts, ShopFacts

# A day further away than this is said with its year.
NEAR_DAYS = 270
_OTHER = {Dimension.VOLUME: Dimension.MASS, Dimension.MASS: Dimension.VOLUME}


def short(code: str) -> str:
    """Return the first group of one of our codes, as people say it."""
    return code[:4]


def day(value: date, today: date) -> str:
    """Return "24 February", with its year where that is not plain."""
    said = f"{value.day} {value:%B}"
    return said if abs((value - today).days) <= NEAR_DAYS else f"{said} {value.year}"


def local(at: datetime, zone: tzinfo) -> date:
    """Return the shop's day of an instant."""
    return at.astimezone(zone).date()


def until(term: Term, facts: Facts) -> str:
    """Return when a term ends: a day, or a time of day for a life under a day."""
    today = local(facts.at, facts.zone)
    if "minute" in term.why and local(term.at, facts.zone) == today:
        return f"{term.at.astimezone(facts.zone):%H:%M}"
    return day(term.on, today)


def name(bottle: Bottle) -> str:
    """Return "Marl cutting compound CFDR", or "spray bottle BKTR" where nothing is in it."""
    return f"{bottle.product.name if bottle.product else bottle.noun} {short(bottle.code)}"


def amount(base: int, product: ProductFacts | None, shop: ShopFacts) -> str:
    """Return an amount in the shop's units; a bottle that never held anything counts in millilitres."""
    return show(base, product.dimension if product else Dimension.VOLUME, shop.system)


def holds(bottle: Bottle, facts: Facts) -> str:
    """Return what the book says is in a bottle."""
    return amount(bottle.content, bottle.product, facts.shop)


def read_amount(text: str, product: ProductFacts | None, shop: ShopFacts) -> int:
    """Return typed text in a product's base unit, by its density where mass and volume differ.

    Raises AmountError with a whole sentence.
    """
    wanted = Dimension(product.dimension if product else Dimension.VOLUME)
    try:
        return parse_amount(text, dimension=wanted, system=shop.system, decimal=shop.decimal).base
    except AmountError as refusal:
        said = _in_the_other(text, wanted, shop)
        if said is None or product is None:
            raise refusal
        return by_density(said, wanted, product.density_mg_per_l).base


def read_amount_in(text: str, bottle: Bottle, shop: ShopFacts) -> int:
    """Return typed text in the base unit of what is in a bottle. Raises AmountError.

    What was mixed by weight is neither as heavy nor as light as its product: its millilitres say nothing.
    """
    product = bottle.product
    if product is None or product.dimension != Dimension.MASS or not bottle.shelf.parts[1]:
        return read_amount(text, product, shop)
    if _in_the_other(text, Dimension.MASS, shop) is not None:
        raise AmountError(
            f"{text.strip()} of a mix by weight says nothing about its weight. Weigh it, and type the grams."
        )
    return read_amount(text, product, shop)


def _in_the_other(text: str, wanted: Dimension, shop: ShopFacts) -> Amount | None:
    other = _OTHER.get(wanted)
    try:
        return (
            parse_amount(text, dimension=other, system=shop.system, decimal=shop.decimal) if other else None
        )
    except AmountError:
        return None


def counted(count: int, noun: str) -> str:
    """Return "1 bottle", "12 bottles", "2 boxes"."""
    if count == 1:
        return f"1 {noun}"
    return f"{count} {noun}{'es' if noun.endswith(('x', 's', 'ch', 'sh')) else 's'}"
