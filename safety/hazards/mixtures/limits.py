"""Specific concentration limits, which every family of rules asks for before its generic ones.

Sources: CLP Art 10, and Annex I 1.1.2.2.2 (a specific limit below the generic cut-off is the cut-off), in the
consolidation of 1 Sep 2025. Only the EU knows them: elsewhere the generic limits stand alone.
"""

from dataclasses import dataclass
from functools import cache

from safety.hazards.classes import Hazard, plain, read_hazard
from safety.hazards.mixtures.values import Ingredient, Limit

WITH_OWN_LIMITS = ("EU",)
SOURCE = "CLP Art 10, Annex I 1.1.2.2.2"
# Percentages are sums and quotients of decimals: 0.1 + 0.2 must reach 0.3.
GRAIN = 1e-9


@dataclass(frozen=True)
class Of:
    """What a limit is asked for: a class, some of its categories (none: all), one of its codes ("": any).

    Of("STOT SE", ("3",), "H335") is respiratory irritation alone.
    """

    name: str
    categories: tuple[str, ...] = ()
    code: str = ""

    def covers(self, hazard: Hazard) -> bool:
        """Return whether a hazard is one of these. Suffix letters of the code do not matter."""
        return (
            hazard.of.name == self.name
            and (not self.categories or hazard.of.category in self.categories)
            and (not self.code or self.code in map(plain, hazard.codes))
        )


def reaches(value: float, limit: float) -> bool:
    """Return whether value is at or above limit, blind to the last digits of decimal arithmetic."""
    return value >= limit - GRAIN * max(1.0, abs(limit))


def has(ingredient: Ingredient, *asked: Of) -> bool:
    """Return whether the ingredient's own list carries one of these classes."""
    return any(of.covers(hazard) for hazard in ingredient.hazards or () for of in asked)


@cache
def read_limit(limit: Limit) -> Hazard | None:
    """Return the hazard a limit names; None for a supplemental statement such as EUH031.

    Raises UnknownHazard.
    """
    return None if limit.hazard.startswith("EUH") else read_hazard(limit.hazard)


def own_limits(ingredient: Ingredient, regime: str, *asked: Of) -> tuple[Limit, ...]:
    """Return the ingredient's specific limits for these classes, whether or not its list carries them."""
    if not ingredient.limits or regime not in WITH_OWN_LIMITS:
        return ()
    named = [(limit, read_limit(limit)) for limit in ingredient.limits]
    return tuple(limit for limit, hazard in named if hazard and any(of.covers(hazard) for of in asked))


def own_limit(ingredient: Ingredient, regime: str, *asked: Of) -> float | None:
    """Return the lowest percentage from which the ingredient's own limits give one of these classes.

    The upper end of a band is where a graver class takes over, so more never falls out of the milder one.
    """
    return min((limit.from_percent for limit in own_limits(ingredient, regime, *asked)), default=None)


def limit_for(ingredient: Ingredient, regime: str, generic: float, *asked: Of) -> float | None:
    """Return the percentage from which this ingredient gives one of these classes.

    Its own limit where it has one, even for a class its list lacks; else `generic` where its list carries the
    class; else None: it does not count towards it.
    """
    own = own_limit(ingredient, regime, *asked)
    if own is not None:
        return own
    return generic if has(ingredient, *asked) else None


def cut_off_for(ingredient: Ingredient, regime: str, generic: float, *asked: Of) -> float:
    """Return the percentage from which the ingredient is relevant: a lower specific limit is the cut-off."""
    own = own_limit(ingredient, regime, *asked)
    return generic if own is None else min(generic, own)


def share(ingredient: Ingredient, regime: str, generic: float, *asked: Of, cut_off: float = 0.0) -> float:
    """Return Ci over its limit for these classes, 0 where it does not count or stays below the cut-off.

    The class stands where the shares of a mixture sum to 1.
    """
    limit = limit_for(ingredient, regime, generic, *asked)
    if limit is None or ingredient.percent <= 0:
        return 0.0
    if not reaches(ingredient.percent, cut_off_for(ingredient, regime, cut_off, *asked)):
        return 0.0
    return ingredient.percent / limit if limit else 1.0


def own_statements(ingredient: Ingredient, regime: str) -> tuple[str, ...]:
    """Return supplemental statements (EUH031) whose own limit this ingredient's percentage reaches."""
    if regime not in WITH_OWN_LIMITS:
        return ()
    return tuple(
        limit.hazard
        for limit in ingredient.limits
        if read_limit(limit) is None and reaches(ingredient.percent, limit.from_percent)
    )
