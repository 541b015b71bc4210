"""Harm to organs: once (STOT SE 1, 2), by repetition (STOT RE 1, 2), and irritated airways or drowsiness
(STOT SE 3), the only one of them that is summed, each effect for itself.

Sources: safety/tables/mixture_cutoffs.csv; STOT SE 3: CLP Annex I 3.8.3.4.5, 29 CFR 1910.1200 A.8.3.4,
SOR/2015-17 s. 8.8, UN GHS 3.8.3.4.5: 20 % (from memory where exactly it stands).
"""

import math
from dataclasses import replace

from safety.hazards.mixtures import limits
from safety.hazards.mixtures.cutoffs import of_single_ingredients
from safety.hazards.mixtures.limits import Of, has, reaches, share
from safety.hazards.mixtures.values import Because, Found, Mixture

SUMMED = 20.0
EFFECTS = ("H335", "H336")
SOURCE = {
    "EU": "CLP Annex I 3.8.3.4.5",
    "US": "29 CFR 1910.1200 A.8.3.4",
    "CA": "SOR/2015-17 s. 8.8",
    "UN": "UN GHS Rev 10, 3.8.3.4.5",
}


def organs(mixture: Mixture, regime: str) -> Found:
    """Return STOT SE and STOT RE."""
    lasting = of_single_ingredients(mixture, regime, Of("STOT SE", ("1", "2")), Of("STOT RE"))
    because, review = list(lasting.because), list(lasting.needs_review)
    for effect in EFFECTS:
        stands = summed(mixture, regime, effect)
        if stands:
            because.append(stands)
        elif regime not in limits.WITH_OWN_LIMITS:
            review += in_the_eu(mixture, effect)
    hazards = tuple(one.hazard for one in because)
    return replace(lasting, hazards=hazards, because=tuple(because), needs_review=tuple(review))


def summed(mixture: Mixture, regime: str, effect: str) -> Because | None:
    """Return why STOT SE 3 stands for one effect: each percentage over its limit, summed, reaches 1."""
    asked = Of("STOT SE", ("3",), effect)
    shares = {one.name: (one.percent, share(one, regime, SUMMED, asked)) for one in mixture.ingredients}
    total = math.fsum(part for _, part in shares.values())
    if not reaches(total, 1):
        return None
    counted = {name: percent for name, (percent, part) in shares.items() if part}
    rule = "the percentages over their limits, the generic one being 20 %, sum to 1 or more"
    mark = "M" if all(has(one, asked) for one in mixture.ingredients if one.name in counted) else "S"
    return Because(f"STOT SE 3 {effect}", rule, SOURCE[regime], mark, {"percent": counted, "sum": total})


def in_the_eu(mixture: Mixture, effect: str) -> list[str]:
    """Return that the EU's own limits would class what the generic 20 % does not."""
    stands = summed(mixture, limits.WITH_OWN_LIMITS[0], effect)
    if stands is None:
        return []
    who = ", ".join(f"{name} {percent:g} %" for name, percent in stands.numbers["percent"].items())  # type: ignore[attr-defined]
    return [
        f"STOT SE 3 {effect} stays below 20 %, yet by its ingredients' own limits the EU gives it ({who}): "
        "if it is known to act, the class stands (SOR/2015-17 s. 2.5(1))."
    ]
