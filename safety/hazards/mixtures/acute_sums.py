"""The sums of acute toxicity: which ingredients are relevant, which values enter, what is unknown.

Sources: relevance CLP Annex I 3.1.3.3(a), Table 1.1 (EU), SOR/2015-17 s. 8.1.2(2) (CA), from memory (US, UN);
the sums CLP Annex I 3.1.3.6, SOR/2015-17 s. 8.1.5 and 8.1.6. An inhaled form is summed alone: vapour and mist
never meet in one sum (our convention, from CLP Art 6(1)).
"""

import math
from dataclasses import dataclass

from safety.hazards.mixtures.acute_values import (
    INHALED,
    Value,
    breathed,
    category_of,
    is_unknown,
    route_of,
    value_of,
)  # fmt: skip
from safety.hazards.mixtures.limits import reaches
from safety.hazards.mixtures.values import Mixture

UNKNOWN_FROM, UNKNOWN_COUNTS_ABOVE = 1.0, 10.0


@dataclass(frozen=True)
class Sum:
    """One sum 100/ATE = Σ Ci/ATEi. `below` are category 1 and 2 ingredients that the cut-off leaves out."""

    kind: str
    counted: tuple[Value, ...]
    below: tuple[Value, ...]
    unknown: float
    regime: str

    def ate(self, more: tuple[Value, ...] = ()) -> float | None:
        """Return the mixture's value, None where nothing enters. Unknowns above 10 % leave the 100.

        Upper ends of ranges may sum above 100: what is known is never less than what was counted.
        """
        entered = self.counted + more
        if not entered:
            return None
        known = 100.0 if reaches(UNKNOWN_COUNTS_ABOVE, self.unknown) else 100.0 - self.unknown
        known = max(known, min(100.0, math.fsum(one.of.percent for one in entered)))
        return known / math.fsum(one.of.percent / one.ate for one in entered)

    def category(self, more: tuple[Value, ...] = ()) -> int | None:
        """Return the mixture's category, None where it has none.

        Point estimates lie on the limit of the category above: a mixture is never graver than what is in it.
        """
        ate = self.ate(more)
        reckoned = None if ate is None else category_of(self.kind, ate, self.regime)
        gravest = min((one.category for one in (*self.counted, *more) if one.category), default=reckoned)
        return None if reckoned is None or gravest is None else max(reckoned, gravest)


def kinds(mixture: Mixture) -> list[str]:
    """Return the routes and inhaled forms to sum: the forms breathed, and any that alone carries a value."""
    forms = breathed(mixture)
    others = [
        form
        for form in INHALED
        if form not in forms
        and any(form in one.ate and not any(k in one.ate for k in forms) for one in mixture.ingredients)
    ]
    return ["oral", "dermal", *forms, *others]


def cut_off(category: int | None, regime: str) -> float:
    """Return the percentage from which an ingredient of a category is relevant."""
    return 0.1 if regime == "EU" and category in (1, 2, 3) else 1.0


def sum_of(mixture: Mixture, kind: str, regime: str) -> Sum:
    """Return the sum of one route or inhaled form."""
    found = [value_of(one, kind, regime, mixture) for one in mixture.ingredients if one.percent > 0]
    values = [one for one in found if one is not None and alone_in(mixture, one, kind)]
    counted = tuple(one for one in values if reaches(one.of.percent, cut_off(one.category, regime)))
    below = tuple(one for one in values if one not in counted and one.category in (1, 2))
    return Sum(kind, counted, below, unknown_percent(mixture, route_of(kind), regime), regime)


def alone_in(mixture: Mixture, value: Value, kind: str) -> bool:
    """Return whether a value belongs into this form: not where its ingredient has one of a form breathed."""
    forms = breathed(mixture)
    return kind not in INHALED or kind in forms or not any(form in value.of.ate for form in forms)


def unknown_percent(mixture: Mixture, route: str, regime: str) -> float:
    """Return the percentage of ingredients of unknown toxicity by a route, each from 1 % on."""
    return min(
        100.0,
        math.fsum(
            one.percent
            for one in mixture.ingredients
            if reaches(one.percent, UNKNOWN_FROM) and is_unknown(one, route, regime)
        ),
    )
