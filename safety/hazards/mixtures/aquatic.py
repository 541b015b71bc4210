"""Harm to water life: ingredients weighed by their M factors and summed.

Sources: CLP Annex I 4.1.3.1 (what is relevant), Tables 4.1.1 and 4.1.2, UN GHS Rev 10 Tables 4.1.3 and 4.1.4;
the tables from memory. Canada has no such classes; in the US they are optional, and the fuller label stands.
"""

import math
from collections.abc import Callable

from safety.hazards.mixtures.limits import Of, has, reaches
from safety.hazards.mixtures.values import Because, Found, Ingredient, Mixture

LIMIT = 25.0
OPTIONAL = "; optional in the US"
SOURCES = {
    "EU": "CLP Annex I 4.1.3.5.5",
    "US": "UN GHS Rev 7, 4.1.3.5.5 (not a class of 29 CFR 1910.1200)",
    "UN": "UN GHS Rev 10, 4.1.3.5.5",
}
# class, category, code, how many times an ingredient of each category counts (category 1 also times its M
# factor), regimes. Of one class the gravest comes first and the first that stands is taken.
SUMS: tuple[tuple[str, str, str, dict[str, float], tuple[str, ...]], ...] = (
    ("Aquatic Acute", "1", "H400", {"1": 1}, ("EU", "US", "UN")),
    ("Aquatic Acute", "2", "H401", {"1": 10, "2": 1}, ("UN",)),
    ("Aquatic Acute", "3", "H402", {"1": 100, "2": 10, "3": 1}, ("UN",)),
    ("Aquatic Chronic", "1", "H410", {"1": 1}, ("EU", "US", "UN")),
    ("Aquatic Chronic", "2", "H411", {"1": 10, "2": 1}, ("EU", "US", "UN")),
    ("Aquatic Chronic", "3", "H412", {"1": 100, "2": 10, "3": 1}, ("EU", "US", "UN")),
    ("Aquatic Chronic", "4", "H413", {"1": 1, "2": 1, "3": 1, "4": 1}, ("EU", "US", "UN")),
)
# Category 4 counts ingredients of category 1 without their M factor.
PLAIN = "4"
M_FACTOR: dict[str, Callable[[Ingredient], float | None]] = {
    "Aquatic Acute": lambda one: one.m_acute,
    "Aquatic Chronic": lambda one: one.m_chronic,
}


def aquatic(mixture: Mixture, regime: str) -> Found:
    """Return Aquatic Acute and Aquatic Chronic, and which M factors are missing."""
    if regime not in SOURCES:
        return Found()
    because, review = [], []
    for name, factor in M_FACTOR.items():
        known = [(one, category_of(one, name)) for one in mixture.ingredients if one.percent]
        known = [(one, category) for one, category in known if category]
        review += [missing(one, name) for one, category in known if category == "1" and factor(one) is None]
        because += gravest(name, known, regime)
    return Found(tuple(one.hazard for one in because), tuple(because), tuple(review))


def category_of(one: Ingredient, name: str) -> str:
    """Return an ingredient's category of a class, "" where it has none."""
    return next((category for category in "1234" if has(one, Of(name, (category,)))), "")


def missing(one: Ingredient, name: str) -> str:
    """Return that an ingredient of category 1 came without its M factor."""
    which = name.removeprefix("Aquatic ").lower()
    return (
        f"{one.name} ({one.percent:g} %) is {name} 1 and its {which} M factor is not known: it counted as 1."
    )


def gravest(name: str, known: list[tuple[Ingredient, str]], regime: str) -> list[Because]:
    """Return why the gravest category of a class stands, [] where none does."""
    for of, category, code, times, regimes in SUMS:
        if of != name or regime not in regimes:
            continue
        parts = [
            (one.name, counted(one, mine, name, category, times)) for one, mine in known if mine in times
        ]
        total = math.fsum(part for _, part in parts)
        if reaches(total, LIMIT):
            weights = ", ".join(f"category {mine} × {time:g}" for mine, time in times.items())
            by_m = "" if category == PLAIN else ", category 1 also × M"
            rule = f"percentages weighed ({weights}{by_m}) sum to 25 or more"
            rule += OPTIONAL if regime == "US" else ""
            numbers: dict[str, object] = {"weighed": {who: part for who, part in parts if part}, "sum": total}
            return [Because(f"{name} {category} {code}", rule, SOURCES[regime], "M", numbers)]
    return []


def counted(one: Ingredient, mine: str, name: str, category: str, times: dict[str, float]) -> float:
    """Return what an ingredient adds to a sum: nothing below 0.1 % / M for category 1, 1 % for the others."""
    factor = (M_FACTOR[name](one) or 1.0) if mine == "1" else 1.0
    if not reaches(one.percent, 0.1 / factor if mine == "1" else 1.0):
        return 0.0
    return one.percent * times[mine] * (1.0 if category == PLAIN else factor)
