"""Which acute toxicity value of an ingredient enters a sum, and which category a value is.

Source: safety/tables/acute_toxicity.csv. Which values enter: EU those within categories 1 to 4 (CLP Annex I
3.1.3.6.1(a), a faithful copy was read); US (A.1.3.6.1(a), likewise), CA (s. 8.1.5(b), read) also a measured
oral or dermal LD50 up to 5000 mg/kg; UN category 5 (from memory).
"""

from dataclasses import dataclass
from functools import cache

from safety.hazards.classes import plain
from safety.hazards.mixtures.limits import reaches
from safety.hazards.mixtures.values import Ingredient, Mixture
from safety.hazards.tables import rows

INHALED = ("vapour", "dust_mist", "gas")
# What is breathed of an ingredient known by category alone; our convention, from CLP Art 6(1).
BREATHED = {
    "liquid": ("vapour",),
    "spray": ("dust_mist",),
    "aerosol": ("dust_mist",),
    "solid": ("dust_mist",),
    "gas": ("gas",),
}
UNKNOWN_FORM = ("vapour", "dust_mist")
DIGIT = {"oral": "0", "dermal": "1", "inhalation": "3"}
MEASURED_UP_TO = 5000.0


@dataclass(frozen=True)
class Value:
    """What an ingredient brings into one sum: mg/kg, mg/l or ppmV, and its category (None: above all)."""

    of: Ingredient
    ate: float
    category: int | None
    origin: str


@cache
def categories(kind: str) -> tuple[tuple[int, float, float], ...]:
    """Return (category, limit, point estimate) of a route or inhaled form, gravest first."""
    return tuple(
        (int(row["category"]), float(row["limit"]), float(row["point_estimate"]))
        for row in rows("acute_toxicity")
        if row["kind"] == kind
    )


def category_of(kind: str, ate: float, regime: str) -> int | None:
    """Return the category of a value; a value on the limit has the graver one. Category 5 is UN only."""
    known = (number for number, limit, _ in categories(kind) if reaches(limit, ate))
    number = next(known, None)
    return None if number == 5 and regime != "UN" else number


def point_estimate(kind: str, category: int) -> float | None:
    """Return the value a category stands for; None for category 5 by breathing, which has none."""
    return {number: point for number, _, point in categories(kind)}.get(category)


def route_of(kind: str) -> str:
    """Return oral, dermal or inhalation."""
    return "inhalation" if kind in INHALED else kind


def breathed(mixture: Mixture) -> tuple[str, ...]:
    """Return the inhaled forms that a category alone counts in."""
    return BREATHED.get(mixture.form, UNKNOWN_FORM)


@cache
def _digits(code: str) -> tuple[str, ...]:
    return tuple(part[2] for part in plain(code).split("+"))


def listed(one: Ingredient, route: str, regime: str) -> int | None:
    """Return the gravest category that the ingredient's own list gives for a route."""
    found = [
        int(hazard.of.category)
        for hazard in one.hazards or ()
        if hazard.of.name == "Acute Tox." and any(DIGIT[route] in _digits(code) for code in hazard.codes)
    ]
    return min((number for number in found if number < 5 or regime == "UN"), default=None)


def value_of(one: Ingredient, kind: str, regime: str, mixture: Mixture) -> Value | None:
    """Return what enters the sum of a route or inhaled form; None where nothing does.

    A stated value counts, unless the listed class is graver: a class may be a minimum, and is never undercut
    (the asterisk of CLP Annex VI). A class alone counts by its point estimate, in the forms breathed.
    """
    stated, given = one.ate.get(kind), listed(one, route_of(kind), regime)
    if stated is not None and (given is None or is_explained(one, kind, given, regime)):
        category = category_of(kind, stated, regime)
        return Value(one, stated, category, "value") if enters(one, kind, stated, regime) else None
    by_class_alone = kind not in INHALED or kind in breathed(mixture)
    if given is None or not by_class_alone or is_explained(one, kind, given, regime):
        return None
    point = point_estimate(kind, given)
    return None if point is None else Value(one, point, given, "category")


def is_explained(one: Ingredient, kind: str, given: int, regime: str) -> bool:
    """Return whether a stated value of the route, in whatever form, is as grave as the listed class."""
    forms = INHALED if kind in INHALED else (kind,)
    found = [category_of(form, one.ate[form], regime) for form in forms if form in one.ate]
    return any(number is not None and number <= given for number in found)


def enters(one: Ingredient, kind: str, stated: float, regime: str) -> bool:
    """Return whether a stated value enters at all; of a limit test without signs of harm it never does."""
    if category_of(kind, stated, "EU") is not None:
        return True
    may_be_milder = regime in ("US", "CA", "UN") and kind not in INHALED and not one.no_acute_toxicity
    return may_be_milder and reaches(MEASURED_UP_TO, stated)


def is_unknown(one: Ingredient, route: str, regime: str) -> bool:
    """Return whether nobody can say how toxic the ingredient is by a route."""
    kinds = INHALED if route == "inhalation" else (route,)
    if one.no_acute_toxicity or any(kind in one.ate for kind in kinds) or listed(one, route, regime):
        return False
    return route in one.unknown or one.hazards is None
