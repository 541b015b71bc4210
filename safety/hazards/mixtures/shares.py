"""What the skin and the eye share: sums of Ci over its limit, and single ingredients that are not additive.

The sum of shares reaches 1 exactly where the tables say so: Σ Ci ≥ 5 is Σ Ci/5 ≥ 1, and in the EU an
ingredient's own limit takes the place of its 5 (CLP Art 10). A sum looks at ingredients from 1 %, or from a
lower limit of their own.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass

from safety.hazards.mixtures.acidity import is_not_additive
from safety.hazards.mixtures.limits import Of, cut_off_for, own_limit, reaches
from safety.hazards.mixtures.values import Ingredient, Mixture

CUT_OFF = 1.0
# From which percentage an ingredient alone gives an outcome; None: it does not count towards it.
LimitOf = Callable[[Ingredient, str], float | None]
Source = tuple[str, str]


@dataclass(frozen=True)
class Shares:
    """The ingredients that count towards one outcome of `classes`, each with its limit and share."""

    counted: tuple[tuple[Ingredient, float, float], ...]

    @property
    def total(self) -> float:
        """Return the sum; the outcome stands from 1 on."""
        return math.fsum(part for _, _, part in self.counted)

    @property
    def reached(self) -> bool:
        """Return whether the outcome stands."""
        return reaches(self.total, 1.0)

    def numbers(self) -> dict[str, object]:
        """Return what went in, for the answer's reasons."""
        rows = [{"name": one.name, "percent": one.percent, "limit": at} for one, at, _ in self.counted]
        return {"counted": rows, "shares": self.total}


def shares(mixture: Mixture, regime: str, limit: LimitOf, *classes: Of) -> Shares:
    """Return the shares of the ingredients that are relevant for these classes."""
    counted = []
    for one in mixture.ingredients:
        at = limit(one, regime) if one.percent > 0 else None
        if at is not None and reaches(one.percent, cut_off_for(one, regime, CUT_OFF, *classes)):
            counted.append((one, at, one.percent / at if at else 1.0))
    return Shares(tuple(counted))


def acts_alone(one: Ingredient, regime: str, *classes: Of) -> bool:
    """Return whether the table of what is not additive applies: a specific limit comes first."""
    return is_not_additive(one) and own_limit(one, regime, *classes) is None


def source_alone(one: Ingredient, source: Source) -> Source:
    """Return source and mark; that an unmeasured acid or base is a strong one is from memory."""
    if one.additive is None and one.ph is None:
        return f"{source[0]}; that {one.name} is a strong acid or base from memory", "M"
    return source


def numbers_alone(one: Ingredient, limit: float) -> dict[str, object]:
    """Return the numbers of a rule that one ingredient meets alone."""
    return {"name": one.name, "percent": one.percent, "limit": limit, "ph": one.ph}
