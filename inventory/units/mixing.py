"""Between mass and volume, and between a product and its water."""

import re
from fractions import Fraction
from math import gcd

from inventory.units.amounts import Amount, AmountError, Dimension, whole
from inventory.units.showing import show

_MIX = re.compile(r"(?P<product>[1-9][0-9]{0,3}) ?[:+] ?(?P<water>[0-9]{1,4})")
_BETWEEN = {Dimension.VOLUME, Dimension.MASS}


def by_density(amount: Amount, to: Dimension | str, density_mg_per_l: int | None) -> Amount:
    """Convert between mass (mg) and volume (µl) by an integer density in mg per litre, half-even once.

    Raises AmountError where no density is known, or where there is nothing to convert by it.
    """
    to = Dimension(to)
    if to is amount.dimension:
        return amount
    if {to, amount.dimension} != _BETWEEN:
        raise AmountError(f"A density turns mass into volume and back, not {amount.dimension} into {to}.")
    if density_mg_per_l is None or density_mg_per_l <= 0:
        raise AmountError(
            "Mass and volume convert only by density, and none is known here. "
            "Type the product's density from its data sheet, or give the amount in the product's own unit."
        )
    # A litre is a million µl.
    mg_per_ul = Fraction(density_mg_per_l, 10**6)
    exact = amount.base * mg_per_ul if to is Dimension.MASS else amount.base / mg_per_ul
    return Amount(whole(exact, show(amount.base, amount.dimension)), to)


def read_mix(text: str) -> tuple[int, int] | None:
    """Return a mix as typed ("1:10", "2 : 7", "neat") in parts of product and of water; None if not."""
    said = text.strip()
    if said.lower() in {"neat", "undiluted"}:
        return (1, 0)
    found = _MIX.fullmatch(said)
    if not found:
        return None
    product, water = int(found["product"]), int(found["water"])
    # 2:20 is 1:10, and any parts without water are neat: equal mixes must count as one.
    shared = gcd(product, water)
    return product // shared, water // shared


def show_mix(product_parts: int, water_parts: int) -> str:
    """Return a mix as `read_mix` reads it: "1:10", "neat"."""
    return f"{product_parts}:{water_parts}" if water_parts else "neat"


def dilution(total_base: int, product_parts: int, water_parts: int) -> tuple[int, int]:
    """Split a total volume (µl) by parts added, 1:10 being one part product and ten parts water.

    With a total in mg the parts are by weight. Product is rounded half-even, water takes the exact remainder.
    Raises AmountError for impossible parts.
    """
    if product_parts < 1 or water_parts < 0:
        raise AmountError("A mix ratio has at least one part of product and no negative water, like 1:10.")
    if total_base < 0:
        raise AmountError("A mix cannot be less than nothing. Type the volume to be filled.")
    product = round(Fraction(total_base * product_parts, product_parts + water_parts))
    return product, total_base - product


def pour_in_words(product: int, water: int, dimension: Dimension | str = Dimension.VOLUME) -> str:
    """Return two volumes (µl) as a person pours them: "91 ml product into 909 ml water, water first".

    With the dimension mass they are mg, and both are weighed.
    """
    of = Dimension(dimension)
    if not water:
        return f"{_poured(product, of)} product, undiluted"
    weighed = ", both weighed" if of is Dimension.MASS else ""
    return f"{_poured(product, of)} product into {_poured(water, of)} water{weighed}, water first"


def _poured(base: int, dimension: Dimension) -> str:
    """Whole millilitres or grams where a jug or a scale has them: nobody pours 90.91 ml."""
    if base < 10_000 or base >= 10_000_000:
        return show(base, dimension)
    return f"{round(Fraction(base, 1000))} {'g' if dimension is Dimension.MASS else 'ml'}"
