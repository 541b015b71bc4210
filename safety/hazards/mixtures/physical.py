"""The other physical hazards: gases under pressure, oxidisers, peroxides, what heats itself, meets water
badly or eats metal. Never summed: only a test of the mixture, or an ingredient's own limit, can say.

Sources: CLP Annex I part 2, Art 10; 29 CFR 1910.1200 appendix B; SOR/2015-17 Part 7; UN GHS Rev 10 part 2.
Annex VI prints its limits for oxidisers with four asterisks: to be confirmed by a test (from memory).
"""

from safety.hazards.classes import Hazard
from safety.hazards.mixtures import limits
from safety.hazards.mixtures.cutoffs import by_own_limits
from safety.hazards.mixtures.flammable import carried, pure
from safety.hazards.mixtures.limits import Of, own_limits
from safety.hazards.mixtures.values import Because, Found, Ingredient, Mixture
from safety.hazards.mixtures.written import named

GASES = (
    "Press. Gas",
    "Press. Gas (Comp.)",
    "Press. Gas (Liq.)",
    "Press. Gas (Diss.)",
    "Press. Gas (Ref. Liq.)",
)
# What other families reckon with. Every other class of the table is asked about here, also one added later.
RECKONED = {
    *GASES, "Flam. Liq.", "Flam. Gas", "Flam. Sol.", "Acute Tox.", "Skin Corr.", "Skin Irrit.", "Eye Dam.",
    "Eye Irrit.", "Resp. Sens.", "Skin Sens.", "Muta.", "Carc.", "Repr.", "Lact.", "STOT SE", "STOT RE",
    "Asp. Tox.", "Aquatic Acute", "Aquatic Chronic", "Ozone", "ED HH", "ED ENV", "PBT", "vPvB", "PMT", "vPvM",
}  # fmt: skip
# Flash points, viscosity and M factors decide these; the other families read an ingredient's own limits.
RECKONED_OTHERWISE = (
    "Flam. Liq.", "Flam. Gas", "Flam. Sol.", "Asp. Tox.", "Aquatic Acute", "Aquatic Chronic"
)  # fmt: skip
SOURCE = {
    "EU": "CLP Annex I part 2",
    "US": "29 CFR 1910.1200 appendix B",
    "CA": "SOR/2015-17 Part 7",
    "UN": "UN GHS Rev 10 part 2",
}


def physical(mixture: Mixture, regime: str) -> Found:
    """Return what is carried from ingredients, and what only a test can tell."""
    because: list[Because] = []
    review: list[str] = []
    for one in mixture.ingredients:
        for name in sorted(named(one) - RECKONED) if one.percent else ():
            given, asked = of_one(one, name, regime)
            because += given
            review += asked
    gases = under_pressure(mixture, regime)
    because += gases.because
    return Found(tuple(one.hazard for one in because), tuple(because), (*review, *gases.needs_review))


def of_one(one: Ingredient, name: str, regime: str) -> tuple[list[Because], list[str]]:
    """Return the classes of one name that an ingredient gives, and what has to be asked."""
    own = own_limits(one, regime, Of(name))
    if own:
        given = list(by_own_limits(one, own))
        return given, [
            f"{stands.hazard} follows from the own limit of {one.name} ({one.percent:g} %): test it."
            for stands in given
        ]
    mine = [hazard for hazard in one.hazards or () if hazard.of.name == name and regime in hazard.of.regimes]
    if mine and pure(one):
        return [substance(one, hazard, regime) for hazard in mine], []
    return [], [
        f"{one.name} ({one.percent:g} %) is {hazard}: whether the mixture still is needs a test."
        for hazard in mine
    ]


def substance(one: Ingredient, hazard: Hazard, regime: str) -> Because:
    """Return that a product of one substance has the substance's class."""
    numbers: dict[str, object] = {"ingredient": one.name, "percent": one.percent}
    return Because(str(hazard), "the product is this one substance", SOURCE[regime], "S", numbers)


def under_pressure(mixture: Mixture, regime: str) -> Found:
    """Return the class of a gas; an aerosol's class says it, a liquid with gas in it is asked about."""
    if mixture.form == "aerosol":
        return Found()
    if mixture.form == "gas":
        because: list[Because] = []
        review: list[str] = []
        for name in GASES:
            found = carried(mixture, regime, name, "CLP Annex I 2.5, UN GHS Rev 10, 2.5")
            because += found.because
            review += found.needs_review
        return Found(tuple(one.hazard for one in because), tuple(because), tuple(review))
    return Found(
        needs_review=tuple(
            f"{one.name} ({one.percent:g} %) is {hazard}: say whether this product stands under pressure."
            for one in mixture.ingredients
            for hazard in one.hazards or ()
            if hazard.of.name in GASES and one.percent
        )
    )


def unread_limits(mixture: Mixture, regime: str) -> Found:
    """Return, for the EU, own limits of classes that are reckoned in another way: never passed in silence."""
    if regime not in limits.WITH_OWN_LIMITS:
        return Found()
    return Found(
        needs_review=tuple(
            f"{one.name} ({one.percent:g} %) has a limit for {limit.hazard}, that is not reckoned with."
            for one in mixture.ingredients
            if one.limits
            for name in RECKONED_OTHERWISE
            for limit in own_limits(one, regime, Of(name))
            if limits.reaches(one.percent, limit.from_percent)
        )
    )
