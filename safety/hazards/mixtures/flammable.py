"""What burns: liquids by flash and boiling point, aerosols by what they hold, gases as they come.

Sources: CLP Annex I 2.2, 2.3, 2.6, 29 CFR 1910.1200 Tables B.3.1 and B.6.1, SOR/2015-17 s. 7.3.1 and
7.6.1(2), UN GHS Rev 10, 2.3 and 2.6. Physical hazards are never summed: they need a measured value of the
mixture. Without one the class of its ingredients is kept and put to review; water does not lower it unless
somebody measured.
"""

import math
from dataclasses import replace

from safety.hazards.mixtures.values import Because, Found, Ingredient, Mixture
from safety.hazards.mixtures.written import gravity, read

KEPT = "flammable ingredients and no flash point of the mixture: the gravest class of an ingredient is kept"
LIQUID = {
    "EU": "CLP Annex I Table 2.6.1",
    "US": "29 CFR 1910.1200 Table B.6.1",
    "CA": "SOR/2015-17 s. 7.6.1(2)",
    "UN": "UN GHS Rev 10, Table 2.6.1",
}
AEROSOL = {
    "EU": "CLP Annex I 2.3.2",
    "US": "29 CFR 1910.1200 B.3",
    "CA": "SOR/2015-17 s. 7.3.1(3)",
    "UN": "UN GHS Rev 10, 2.3.2",
}
PARTS_OF_AEROSOL = ("Flam. Gas", "Flam. Sol.", "Flam. Liq.", "Aerosol")
MILDEST = "Aerosol 3 H229"
CATEGORY_4 = ("US", "CA", "UN")
FLASH_OF_PARTS = 93.0
LITTLE = 1.0
HOT = "20 kJ/g"


def flammable(mixture: Mixture, regime: str) -> Found:
    """Return Flam. Liq., Aerosol, Flam. Gas, Flam. Sol., and what a missing measurement leaves open."""
    if mixture.form == "aerosol":
        return aerosol(mixture, regime)
    if mixture.form == "gas":
        found = carried(mixture, regime, "Flam. Gas", "CLP Annex I 2.2.3, UN GHS Rev 10, 2.2.4")
        others = untested(mixture, regime, "gas", "Flam. Liq.", "Flam. Sol.")
        return replace(found, needs_review=(*found.needs_review, *others))
    if mixture.form == "solid":
        return solid(mixture, regime)
    if mixture.flash_point_c is None:
        return unmeasured(mixture, regime)
    return measured(mixture, mixture.flash_point_c, regime)


def of_class(mixture: Mixture, regime: str, *names: str) -> list[tuple[Ingredient, str]]:
    """Return the ingredients with a class the regime knows, the gravest first."""
    found = [
        (one, hazard)
        for one in mixture.ingredients
        for hazard in one.hazards or ()
        if one.percent and hazard.of.name in names and regime in hazard.of.regimes
    ]
    found.sort(key=lambda pair: (gravity(pair[1]), pair[0].name))
    return [(one, str(hazard)) for one, hazard in found]


def pure(one: Ingredient) -> bool:
    """Return whether an ingredient is the whole product, whose class is then its own."""
    return one.percent >= 100 and not 0 < one.least < 100


def measured(mixture: Mixture, flash: float, regime: str) -> Found:
    """Return the category of a liquid by its closed-cup flash point and where it starts to boil."""
    boils = mixture.boiling_point_c
    numbers: dict[str, object] = {"flash_point_c": flash, "boiling_point_c": boils}
    review: tuple[str, ...] = ()
    if flash < 23:
        hazard, rule = "Flam. Liq. 2 H225", "flash point below 23 °C, starts to boil above 35 °C"
        if boils is None:
            review = (
                f"Flash point {flash:g} °C, and where it starts to boil is not known: at or below 35 °C it "
                "is Flam. Liq. 1.",
            )
            lowest = of_class(mixture, regime, "Flam. Liq.")
            if not lowest or any(one.hazards is None for one in mixture.ingredients):
                rule = "flash point below 23 °C, boiling point not known"
            elif read(lowest[0][1]).of.category == "1":
                hazard, rule = (
                    lowest[0][1],
                    "flash point below 23 °C, an ingredient of category 1 may boil first",
                )
            else:
                rule, review = "flash point below 23 °C, no ingredient of category 1", ()
        elif boils <= 35:
            hazard, rule = "Flam. Liq. 1 H224", "flash point below 23 °C, starts to boil at or below 35 °C"
    elif flash <= 60:
        hazard, rule = "Flam. Liq. 3 H226", "flash point from 23 to 60 °C"
    elif flash <= 93 and regime in CATEGORY_4:
        hazard, rule = "Flam. Liq. 4 H227", "flash point above 60 to 93 °C"
    else:
        return Found()
    return Found((hazard,), (Because(hazard, rule, LIQUID[regime], "S", numbers),), review)


def unmeasured(mixture: Mixture, regime: str) -> Found:
    """Return the gravest class of the ingredients, kept, and the wish for a measurement."""
    burning = of_class(mixture, regime, "Flam. Liq.")
    solids = untested(mixture, regime, "liquid", "Flam. Gas", "Flam. Sol.")
    if not burning:
        return Found(needs_review=solids)
    one, hazard = burning[0]
    numbers: dict[str, object] = {"ingredient": one.name, "percent": one.percent, "flash_point_c": None}
    if pure(one):
        return Found(
            (hazard,), (Because(hazard, "the product is this one substance", LIQUID[regime], "S", numbers),)
        )
    said = f"{one.name} ({one.percent:g} %) is {hazard} and no flash point of the mixture is given"
    return Found(
        (hazard,),
        (Because(hazard, KEPT, LIQUID[regime], "S", numbers),),
        (f"{said}: the class is kept until one is measured.", *solids),
    )


def untested(mixture: Mixture, regime: str, form: str, *names: str) -> tuple[str, ...]:
    """Return what burns as an ingredient and may not in this form."""
    return tuple(
        f"{one.name} ({one.percent:g} %) is {hazard}: whether it still burns in this {form} needs a test."
        for one, hazard in of_class(mixture, regime, *names)
    )


def aerosol(mixture: Mixture, regime: str) -> Found:
    """Return the category of an aerosol: 1 where it may burn and nobody tested, never less than 3."""
    # Liquids up to 93 °C count in the EU too, which has no class for those above 60 °C: the UN has all.
    burning = of_class(mixture, "UN", *PARTS_OF_AEROSOL)
    parts = {one.name: one.percent for one, hazard in burning if hazard != MILDEST}
    parts |= {one.name: one.percent for one in mixture.ingredients if one.hazards is None and one.percent}
    total = math.fsum(parts.values())
    flash = mixture.flash_point_c
    numbers: dict[str, object] = {"flammable_percent": parts, "sum": total, "flash_point_c": flash}
    if total > LITTLE or (flash is not None and flash <= FLASH_OF_PARTS):
        hazard, rule = (
            "Aerosol 1 H222+H229",
            "it holds parts that burn or may, and no test of it is given",
        )
        return Found((hazard,), (Because(hazard, rule, AEROSOL[regime], "S", numbers),))
    hazard, rule = MILDEST, "every dispenser is at least category 3; flammable parts are at most 1 %"
    review = (
        f"Aerosol 3 holds only where it gives off less than {HOT} when burning, which no ingredient list "
        "says; liquids of a flash point up to 93 °C count as flammable, though EU lists do not show those "
        "above 60 °C.",
    )
    return Found((hazard,), (Because(hazard, rule, AEROSOL[regime], "S", numbers),), review)


def solid(mixture: Mixture, regime: str) -> Found:
    """Return what a solid's or a paste's ingredients leave open: it burns or not by test alone."""
    found = of_class(mixture, regime, "Flam. Sol.", "Flam. Liq.", "Flam. Gas")
    if any(pure(one) and hazard.startswith("Flam. Sol.") for one, hazard in found):
        return carried(mixture, regime, "Flam. Sol.", "CLP Annex I 2.7, UN GHS Rev 10, 2.7")
    return Found(
        needs_review=tuple(
            f"{one.name} ({one.percent:g} %) is {hazard}: whether this solid or paste burns needs a test."
            for one, hazard in found
        )
    )


def carried(mixture: Mixture, regime: str, name: str, source: str) -> Found:
    """Return the gravest class of a name, kept from its ingredient, with the wish for a test."""
    found = of_class(mixture, regime, name)
    if not found:
        return Found()
    one, hazard = found[0]
    numbers: dict[str, object] = {"ingredient": one.name, "percent": one.percent}
    if pure(one):
        return Found((hazard,), (Because(hazard, "the product is this one substance", source, "M", numbers),))
    said = f"{one.name} ({one.percent:g} %) is {hazard}: the class is kept until the mixture is tested."
    return Found((hazard,), (Because(hazard, "kept from an ingredient", source, "M", numbers),), (said,))
