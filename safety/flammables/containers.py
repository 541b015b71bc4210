"""Whether a container is too large for what is in it.

Source: safety/tables/container_sizes.csv (29 CFR 1910.106, Table H-12); the table knows the US alone, so
elsewhere nothing is judged. Aerosols are no containers of this table.
"""

from functools import cache

from safety.findings import MARKS, Finding
from safety.flammables.values import US_GALLON_L, amount
from safety.hazards.tables import rows

ROUNDING = 1e-3  # a pint is 0.473176 l, and labels say 473 ml
SMALL_GLASS = 1.0  # US gallons
ANY = ("metal drum", "portable tank")  # bought filled, never a way out for a bottle


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


def container_size(category: int | None, material: str, litres: float, regime: str) -> tuple[Finding, ...]:
    """Return the finding on a container over its size; raise ContainerError for an unknown material.

    `category` 1 to 4, 0 does not burn, None nobody knows: both are not judged.
    """
    table = sizes(regime)
    if not table or not category:
        return ()
    if material not in table:
        raise ContainerError(f"material: one of {', '.join(table)} was expected, not “{material}”.")
    largest, source = table[material]
    if litres <= largest[category] * (1 + ROUNDING):
        return ()
    says = f"This container of {amount(litres, regime)} is too large for a category {category} liquid."
    because = f"In {material} it may hold at most {amount(largest[category], regime)}."
    do = way_out(category, material, litres, regime)
    return (Finding("flammables.container", "ask", says, because, do, source),)


def way_out(category: int, material: str, litres: float, regime: str) -> str:
    """Return which container would do, and the one exception for small glass."""
    fits = [
        name
        for name, (largest, _) in sizes(regime).items()
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
