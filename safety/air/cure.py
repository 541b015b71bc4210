"""What a coating gives off while it cures.

Trap: curing coatings release more than their solvent: it counts, within the flash and the first hour of cure
unless the maker says less. Source: safety/tables/cure_gases.csv (computed).
"""

from dataclasses import dataclass

from safety.hazards.tables import rows


@dataclass(frozen=True)
class CureGas:
    """A gas with its grams."""

    cas: str
    name: str
    grams: float


def given_off(name: str, cas: str, grams: float) -> tuple[CureGas, ...]:
    """Return what so many grams of an ingredient release; () for what the table does not know."""
    return tuple(
        CureGas(row["gas_cas"], row["gas"], grams * float(row["grams"]))
        for row in rows("cure_gases")
        if (row["cas"] and row["cas"] == cas) or (not row["cas"] and row["ingredient"] in name.lower())
    )
