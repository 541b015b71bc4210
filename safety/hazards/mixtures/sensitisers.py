"""Respiratory and skin sensitisers: one ingredient is enough, nothing is summed.

Sources: safety/tables/mixture_cutoffs.csv. What stays below a cut-off in the EU may still have to be named on
the label (EUH208): that is the supplemental statements' matter.
"""

from safety.hazards.mixtures.cutoffs import of_single_ingredients
from safety.hazards.mixtures.limits import Of
from safety.hazards.mixtures.values import Found, Mixture


def sensitisers(mixture: Mixture, regime: str) -> Found:
    """Return Resp. Sens. and Skin Sens. as single ingredients give them; a gas only has lower cut-offs."""
    return of_single_ingredients(mixture, regime, Of("Resp. Sens."), Of("Skin Sens."))
