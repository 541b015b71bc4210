"""Extreme pH: of the whole mixture, of an ingredient, and the question nobody answered.

Sources: CLP Annex I 3.2.3.1.2 and SOR/2015-17 s. 8.2.5, 8.3.5 (whole mixture of pH ≤2 or ≥11.5: Skin Corr. 1
and Eye Dam. 1); CLP 3.2.3.3.4 and s. 8.2.11(3) (ingredients that are not additive);
safety/tables/strong_acids_bases.csv, from memory.
"""

from functools import cache

from safety.hazards.mixtures.limits import Of, has, reaches
from safety.hazards.mixtures.values import Ingredient, Mixture
from safety.hazards.tables import rows

ACID, BASE = 2.0, 11.5
CORROSIVE = Of("Skin Corr.")
# Below 0.01 % even sodium hydroxide stays under pH 11.5 and hydrochloric acid over pH 2 (textbook chemistry,
# from memory: 0.01 % are 0.0025 mol/l of the one and 0.0027 mol/l of the other).
PH_CARES_FROM = 0.01
PH_RULE = {
    "EU": ("CLP Annex I 3.2.3.1.2", "S"),
    "US": ("29 CFR 1910.1200 A.2.4.1, A.3.4.1, as in SOR/2015-17", "M"),
    "CA": ("SOR/2015-17 s. 8.2.5, 8.3.5", "S"),
    "UN": ("UN GHS Rev 10, 3.2.3.1.2, 3.3.3.1.2, as in CLP", "M"),
}


@cache
def strong() -> dict[str, bool]:
    """Return by CAS number the strong acids and bases, and whether 1 % in water is extreme already."""
    return {row["cas"]: row["at_1_percent"] == "yes" for row in rows("strong_acids_bases")}


def is_extreme(ph: float | None) -> bool:
    """Return whether a pH is 2 or below, or 11.5 or above."""
    return ph is not None and (reaches(ACID, ph) or reaches(ph, BASE))


def is_not_additive(one: Ingredient) -> bool:
    """Return whether the sums do not apply: known so, of extreme pH, or a strong corrosive acid or base."""
    if one.additive is not None:
        return not one.additive
    if one.ph is not None:
        return is_extreme(one.ph)
    return strong().get(one.cas, False) and has(one, CORROSIVE)


def missing_ph(mixture: Mixture) -> str | None:
    """Return the sentence that asks for the pH beside a strong acid or base, None where it is known."""
    if mixture.ph is not None:
        return None
    doubtful = sorted(
        f"“{one.name}” ({one.percent:g} %)" for one in mixture.ingredients if may_be_strong(one)
    )
    if not doubtful:
        return None
    return (
        f"The pH of the whole is not stated, and it holds {', '.join(doubtful)}: at pH 2 or below, or 11.5 "
        "or above, it is Skin Corr. 1 and Eye Dam. 1 whatever the sums say. Measure it."
    )


def may_be_strong(one: Ingredient) -> bool:
    """Return whether an ingredient may bring the whole to an extreme pH."""
    if not reaches(one.percent, PH_CARES_FROM):
        return False
    if one.ph is not None:
        return is_extreme(one.ph)
    return one.cas in strong() or (one.additive is not True and has(one, CORROSIVE))
