"""An aerosol's health classes come from the liquid without its propellant, what is breathed from the whole.

Source: the bridging principle “aerosols” of each health chapter of GHS and CLP Annex I (from memory).
Resp. Sens. and STOT SE 3 are asked of the liquid too: its percentages are the higher ones.
"""

from dataclasses import replace

from safety.hazards.mixtures.limits import Of, has
from safety.hazards.mixtures.values import Found, Mixture

PROPELLANTS = tuple(
    Of(name)
    for name in (
        "Flam. Gas", "Press. Gas", "Press. Gas (Comp.)", "Press. Gas (Liq.)", "Press. Gas (Diss.)",
        "Press. Gas (Ref. Liq.)",
    )
)  # fmt: skip
SWALLOWED_OR_TOUCHED = ("oral", "dermal")
BREATHED = "acute inhalation toxicity"  # in the sentence about what is unknown


def liquid_of(mixture: Mixture) -> Mixture:
    """Return what is left of an aerosol when its propellant is gone; any other mixture as it is."""
    if mixture.form != "aerosol":
        return mixture
    left = [one for one in mixture.ingredients if not has(one, *PROPELLANTS)]
    gone = sum(one.percent for one in mixture.ingredients if has(one, *PROPELLANTS))
    if not left or not gone or gone >= 100:
        return mixture
    times = 100 / (100 - gone)
    scaled = [replace(one, percent=min(100.0, one.percent * times), least=one.least * times) for one in left]
    return replace(mixture, ingredients=tuple(scaled))


def by_route(of_liquid: Found, of_whole: Found) -> Found:
    """Return acute toxicity with oral and dermal from the liquid, and the inhaled routes from the whole."""
    return Found(
        hazards=tuple(
            [text for text in of_liquid.hazards if not inhaled(text)]
            + [text for text in of_whole.hazards if inhaled(text)]
        ),
        because=tuple(
            [one for one in of_liquid.because if not inhaled(one.hazard)]
            + [one for one in of_whole.because if inhaled(one.hazard)]
        ),
        needs_review=(*of_liquid.needs_review, *of_whole.needs_review),
        supplemental=tuple(
            [text for text in of_liquid.supplemental if BREATHED not in text]
            + [text for text in of_whole.supplemental if BREATHED in text]
        ),
        ate=pick(of_liquid.ate, of_whole.ate),
        unknown_percent=pick(of_liquid.unknown_percent, of_whole.unknown_percent),
    )


def inhaled(hazard: str) -> bool:
    """Return whether a hazard is acute toxicity by breathing: H330 to H333."""
    return "H33" in hazard


def pick(of_liquid: dict[str, float], of_whole: dict[str, float]) -> dict[str, float]:
    """Return oral and dermal values of the one, the others of the other."""
    return {route: value for route, value in of_liquid.items() if route in SWALLOWED_OR_TOUCHED} | {
        route: value for route, value in of_whole.items() if route not in SWALLOWED_OR_TOUCHED
    }
