"""Aspiration: thin liquids that reach the lungs when swallowed. Ingredients of 1 % and more are summed.

Sources: CLP Annex I 3.10.3.3, 29 CFR 1910.1200 A.10.3, SOR/2015-17 s. 8.10 (read); UN GHS Rev 10, 3.10.3.3,
whose category 2 (14 mm²/s) is from memory. A layered product counts by its worst layer, which no list of
ingredients shows.
"""

import math

from safety.hazards.mixtures.limits import Of, has, reaches
from safety.hazards.mixtures.values import Because, Found, Mixture

EACH, SUM = 1.0, 10.0
SOURCE = {
    "EU": "CLP Annex I 3.10.3.3",
    "US": "29 CFR 1910.1200 A.10.3",
    "CA": "SOR/2015-17 s. 8.10",
    "UN": "UN GHS Rev 10, 3.10.3.3",
}
# category: hazard, viscosity up to which it stands in mm²/s at 40 °C, regimes, mark
CATEGORIES = (
    ("1", "Asp. Tox. 1 H304", 20.5, ("EU", "US", "CA", "UN"), "S"),
    ("2", "Asp. Tox. 2 H305", 14.0, ("UN",), "M"),
)


def aspiration(mixture: Mixture, regime: str) -> Found:
    """Return Asp. Tox., or that the viscosity is missing on which it hangs."""
    if mixture.form == "gas":
        return Found()
    for category, hazard, thin, regimes, mark in CATEGORIES:
        counted = {
            one.name: one.percent
            for one in mixture.ingredients
            if has(one, Of("Asp. Tox.", (category,))) and reaches(one.percent, EACH)
        }
        total = math.fsum(counted.values())
        if regime not in regimes or not reaches(total, SUM):
            continue
        viscosity = mixture.viscosity_mm2_s_40c
        if viscosity is None:
            said = f"Its ingredients of {hazard} sum to {total:g} %, and its viscosity at 40 °C is not known"
            return Found(needs_review=(f"{said}: at or below {thin:g} mm²/s the class stands.",))
        if viscosity <= thin:
            rule = f"ingredients of category {category} sum to 10 % or more, viscosity at most {thin:g} mm²/s"
            numbers: dict[str, object] = {"percent": counted, "sum": total, "viscosity_mm2_s_40c": viscosity}
            return Found((hazard,), (Because(hazard, rule, SOURCE[regime], mark, numbers),))
    return Found()
