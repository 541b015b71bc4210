"""Acute toxicity: a sum for each route and inhaled form, its unknowns, and what it must not pass in silence.

Sources: CLP Annex I 3.1.3.3(a), 3.1.3.6, Table 1.1; 29 CFR 1910.1200 A.1.3; SOR/2015-17 s. 8.1; UN GHS Rev 10
3.1.3. That US and UN ask for a category 1 or 2 ingredient below 1 % to be considered is from memory.
"""

from collections.abc import Iterable

from safety.hazards.mixtures.acute_sums import (
    UNKNOWN_COUNTS_ABOVE,
    Sum,
    cut_off,
    kinds,
    sum_of,
    unknown_percent,
)
from safety.hazards.mixtures.acute_values import (
    INHALED,
    Value,
    breathed,
    categories,
    listed,
    point_estimate,
    route_of,
)
from safety.hazards.mixtures.limits import Of, own_limits, reaches
from safety.hazards.mixtures.values import ROUTES, Because, Found, Mixture

SOURCES = {
    "EU": ("CLP Annex I 3.1.3.6, relevant ingredients by Table 1.1", "S2"),
    "US": ("29 CFR 1910.1200 A.1.3.6; the 1 % of relevant ingredients from memory", "M"),
    "CA": ("SOR/2015-17 s. 8.1.2 to 8.1.7", "S"),
    "UN": ("UN GHS Rev 10, 3.1.3.6; the 1 % of relevant ingredients and category 5 from memory", "M"),
}
UNITS = {"oral": "mg/kg", "dermal": "mg/kg", "vapour": "mg/l", "dust_mist": "mg/l", "gas": "ppmV"}
BY = {
    "oral": "swallowed",
    "dermal": "on the skin",
    "vapour": "breathed as vapour",
    "dust_mist": "breathed as dust or mist",
    "gas": "breathed as gas",
}
CODES = {"oral": "H30", "dermal": "H31", "inhalation": "H33"}
SEVERITY = {1: "0", 2: "0", 3: "1", 4: "2", 5: "3"}


def acute_toxicity(mixture: Mixture, regime: str) -> Found:
    """Return Acute Tox. by each route, the values and unknowns behind it, and what must be looked at."""
    sums = [sum_of(mixture, kind, regime) for kind in kinds(mixture)]
    because = [reason for route in ROUTES for reason in reasons(mixture, route, sums, regime)]
    unknown = {route: share for route in ROUTES if (share := unknown_percent(mixture, route, regime))}
    return Found(
        hazards=tuple(dict.fromkeys(one.hazard for one in because)),
        because=tuple(because),
        needs_review=(*(below_cut_off(one) for one in sums if one.below), *unsummed(mixture, sums, regime)),
        supplemental=tuple(statement(route, share) for route, share in unknown.items()),
        ate={one.kind: ate for one in sums if (ate := one.ate()) is not None},
        unknown_percent=unknown,
    )


def hazard(route: str, category: int) -> str:
    """Return the class as a label's elements read it."""
    return f"Acute Tox. {category} {CODES[route]}{SEVERITY[category]}"


def reasons(mixture: Mixture, route: str, sums: Iterable[Sum], regime: str) -> Iterable[Because]:
    """Return why a route has its class: the worst of its sums, or a graver limit of an ingredient."""
    found = [(category, reason_of(one, category)) for one in sums
             if route_of(one.kind) == route and (category := one.category())]  # fmt: skip
    found += list(by_limit(mixture, route, regime))
    return [min(found, key=lambda pair: pair[0])[1]] if found else []


def reason_of(one: Sum, category: int) -> Because:
    """Return the reason with the numbers of one sum."""
    source, mark = SOURCES[one.regime]
    numbers: dict[str, object] = {
        "counted": [
            {"name": value.of.name, "percent": value.of.percent, "ate": value.ate, "from": value.origin}
            for value in one.counted
        ],
        "ate": one.ate(),
        "unit": UNITS[one.kind],
        "kind": one.kind,
        "limit": {number: limit for number, limit, _ in categories(one.kind)}[category],
        "unknown_percent": one.unknown,
    }
    rule = "100/ATE = Σ Ci/ATEi, each route and inhaled form apart"
    if not reaches(UNKNOWN_COUNTS_ABOVE, one.unknown):
        rule = (
            "(100 − Σ unknown)/ATE = Σ Ci/ATEi, unknowns being above 10 %; each route and inhaled form apart"
        )
    return Because(hazard(route_of(one.kind), category), rule, source, mark, numbers)


def by_limit(mixture: Mixture, route: str, regime: str) -> Iterable[tuple[int, Because]]:
    """Yield classes that an ingredient's own limit gives, whatever the sum says."""
    for one in mixture.ingredients:
        for category in (1, 2, 3, 4):
            code = hazard(route, category)
            for limit in own_limits(one, regime, Of("Acute Tox.", (str(category),), code.split()[-1])):
                if one.percent and reaches(one.percent, limit.from_percent):
                    numbers: dict[str, object] = {
                        "name": one.name,
                        "percent": one.percent,
                        "limit": limit.from_percent,
                    }
                    yield (
                        category,
                        Because(code, "a specific limit of the ingredient", "CLP Art 10", "S", numbers),
                    )


def below_cut_off(one: Sum) -> str:
    """Return the sentence for category 1 and 2 ingredients that the cut-off leaves out."""
    names = ", ".join(
        f"“{v.of.name}” ({v.of.percent:g} %, category {v.category})"
        for v in sorted(one.below, key=lambda v: v.of.name)
    )
    category, limit = one.category(one.below), cut_off(1, one.regime)
    ate = one.ate(one.below)
    gives = hazard(route_of(one.kind), category) if category else "no class"
    return (
        f"Very toxic {BY[one.kind]}, yet below the cut-off of {limit:g} %: {names}. Counted, the mixture "
        f"would have {gives} ({float(f'{ate:.3g}'):g} {UNITS[one.kind]})."
    )


def unsummed(mixture: Mixture, sums: list[Sum], regime: str) -> Iterable[str]:
    """Yield what stays out of the inhaled sums although it may matter."""
    inhaled = [one for one in sums if one.kind in INHALED]
    worst = min((one.category() or 9 for one in inhaled), default=9)
    for one in inhaled:
        others = tuple(moved for other in inhaled if other is not one for moved in converted(other, one))
        together = one.category(others) if others else None
        if one.kind in breathed(mixture) and together and together < worst:
            yield (
                "Values for vapour, mist or gas stand side by side and were summed apart: together as "
                f"{one.kind.replace('_', ' or ')}, by category they give {hazard('inhalation', together)}."
            )
            break
    fifth = [one.name for one in mixture.ingredients
             if listed(one, "inhalation", regime) == 5 and reaches(one.percent, 1.0)]  # fmt: skip
    if fifth and worst == 9:
        names = ", ".join(f"“{name}”" for name in sorted(fifth))
        yield f"{names}: category 5 by breathing carries no figure, so H333 cannot be summed; ask the maker."


def converted(other: Sum, into: Sum) -> Iterable[Value]:
    """Yield the values of another form that this one lacks, by the point estimate of their category."""
    have = [value.of for value in into.counted]
    for value in other.counted:
        point = point_estimate(into.kind, value.category) if value.category else None
        if value.of not in have and point is not None:
            yield Value(value.of, point, value.category, "category")


def statement(route: str, share: float) -> str:
    """Return the label's sentence; the EU asks for it on the data sheet alone (from memory)."""
    return f"{round(share, 2):g} % of the mixture consists of ingredient(s) of unknown acute {route} toxicity"
