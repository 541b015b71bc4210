"""Hydrocarbon solvents in the UK: the limit of a mixture from its parts.

Trap: a naphtha is never "no limit" in the UK; its composition unknown, it counts as the strictest group.
Source: EH40, reciprocal calculation procedure (from memory): 1/WEL = Σ fᵢ/GVᵢ by mass.
"""

from collections.abc import Mapping

from safety.hazards.tables import rows

GROUPS = {row["key"]: float(row["mg_m3"]) for row in rows("hydrocarbon_groups") if row["kind"] == "group"}
SOLVENTS = frozenset(row["key"] for row in rows("hydrocarbon_groups") if row["kind"] == "solvent")
STRICTEST = min(GROUPS.values())
# up to this many mg/m³, rounded to the nearest of these
ROUNDING = ((100.0, 25.0), (600.0, 50.0))
COARSEST = 200.0


def reciprocal_mg_m3(fractions: Mapping[str, float]) -> float:
    """Return the limit of a mixture in mg/m³ from the mass fractions of its groups, which sum to 1.

    A group without a guidance value raises KeyError.
    """
    return 1 / sum(part / GROUPS[group] for group, part in fractions.items() if part > 0)


def rounded_mg_m3(exact: float) -> float:
    """Return a reciprocal limit as the procedure rounds it."""
    step = next((step for most, step in ROUNDING if exact <= most), COARSEST)
    return round(exact / step) * step
