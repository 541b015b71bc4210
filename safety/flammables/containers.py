"""Whether a container is too large for what is in it.

Source: safety/tables/container_sizes.csv (29 CFR 1910.106, Table H-12). The table is the law of the United
States; in Canada, whose own code is not in our tables, it is a measure that says so; elsewhere nothing is
judged. Aerosols are no containers of this table.
"""

from functools import cache

from safety.findings import MARKS, Finding
from safety.flammables.values import US_GALLON_L, Vessel, amount
from safety.hazards.tables import rows

ROUNDING = 1e-3  # a pint is 0.473176 l, and labels say 473 ml
SMALL_GLASS = 1.0  # US gallons
ANY = ("metal drum", "portable tank")  # bought filled, never a way out for a bottle
CODE = "flammables.container"
SMALL = {0.125: "1 pt", 0.25: "1 qt"}  # of a gallon
TABLE = "29 CFR 1910.106, Table H-12"
BORROWED = " The table is the United States': your own fire code is not in our tables and comes first."
# Whose table is asked where a regime has none of its own.
ASKS = {"US": "US", "CA": "US"}


class ContainerError(ValueError):
    """A material that the table does not know; the sentence names those it does."""


@cache
def sizes(regime: str) -> dict[str, tuple[dict[int, float], str]]:
    """Return the largest litres by category, and the source with its mark, by material."""
    return {
        row["material"]: (
            {number: float(row[f"category_{number}"]) * US_GALLON_L for number in (1, 2, 3, 4)},
            f"{row['source']} ({MARKS[row['mark']]})",
        )
        for row in rows("container_sizes")
        if row["regime"] == regime
    }


def container_size(of: Vessel, regime: str) -> tuple[Finding, ...]:
    """Return what is told of a container over its size; raise ContainerError for an unknown material.

    `category` 1 to 4, 0 does not burn, None nobody knows: both are not judged.
    """
    table = sizes(ASKS.get(regime, ""))
    if not table or not of.category:
        return ()
    if of.material not in table:
        raise ContainerError(f"material: one of {', '.join(table)} was expected, not “{of.material}”.")
    largest, source = table[of.material]
    most = largest[of.category]
    if of.litres <= most * (1 + ROUNDING):
        return ()
    says = (
        f"{of.name}: {amount(of.litres, 'US')} of category {of.category} in {of.material} is above the "
        f"{_limit(most)} of {TABLE}."
    )
    because = (
        f"A container of {of.material} may hold at most {_limit(most)} of a category {of.category} liquid."
    )
    do = way_out(of.category, of.material, of.litres) + ("" if ASKS[regime] == regime else BORROWED)
    return (Finding(CODE, "tell", says, because, do, source, (of.name,)),)


def _limit(litres: float) -> str:
    """Return a limit of the table as a bottle in the United States names it: 0.946 l (1 qt)."""
    small = SMALL.get(round(litres / US_GALLON_L, 3))
    return f"{litres:.3g} l ({small})" if small else amount(litres, "US")


def way_out(category: int, material: str, litres: float) -> str:
    """Return which container would do, and the one exception for small glass."""
    fits = [
        name
        for name, (largest, _) in sizes("US").items()
        if name not in ANY and litres <= largest[category] * (1 + ROUNDING)
    ]
    if not fits:
        do = "Buy it in smaller containers, or keep it in the metal drum it was shipped in."
    else:
        do = f"Keep it in {' or '.join(_article(name) for name in fits)}, or buy smaller ones."
    if category <= 2 and material == "glass or plastic" and litres <= SMALL_GLASS * US_GALLON_L:
        do += " Glass or plastic stays allowed where metal would spoil the liquid or be eaten by it."
    return do


def _article(name: str) -> str:
    return f"a {name}" if name == "safety can" else name
