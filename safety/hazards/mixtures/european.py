"""Classes that only the EU has since Regulation (EU) 2023/707, and the ozone layer.

Source: safety/tables/mixture_cutoffs.csv. Endocrine disruptors and what persists, builds up or moves are
never summed; new mixtures carry them since 1 May 2026, old stock by 1 May 2028.
"""

from safety.hazards.mixtures.cutoffs import of_single_ingredients
from safety.hazards.mixtures.limits import Of
from safety.hazards.mixtures.values import Found, Mixture

CLASSES = tuple(Of(name) for name in ("ED HH", "ED ENV", "PBT", "vPvB", "PMT", "vPvM", "Ozone"))


def european(mixture: Mixture, regime: str) -> Found:
    """Return ED HH, ED ENV, PBT, vPvB, PMT, vPvM (EU) and Ozone (not CA)."""
    return of_single_ingredients(mixture, regime, *CLASSES)
