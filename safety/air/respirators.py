"""Which respirator is enough, and up to which concentration.

Traps: assigned protection factors differ (a full-face gas mask is 50 in the US, 20 in the UK). The maximum
use concentration is the lowest of factor × limit, IDLH and what the cartridge is approved for. Never an
air-purifying mask at IDLH or where the exposure is unknown. Below a boiling point of 65 °C the US knows no
safe rule for an organic-vapour cartridge: supplied air; the EU and UK name type AX.
Source: 29 CFR 1910.134(d)(3)(i)(B) (read); safety/tables/protection_factors.csv and cartridges.csv.
"""

from dataclasses import dataclass
from functools import cache

from safety.air.saying import number
from safety.air.substances import Substance
from safety.air.values import RESPIRATORS
from safety.hazards.tables import rows

LOW_BOILING_C = 65.0
ORGANIC = ("organic vapor", "A")
TABLE = {"US": "US", "UK": "UK", "EU": "UK"}
PARTICLES = ("particles", "P")
ONLY_SUPPLIED = "none"


@dataclass(frozen=True)
class Factor:
    """One row of the table of protection factors."""

    respirator: str
    against: str
    factor: float
    cartridge: bool
    mark: str


@dataclass(frozen=True)
class Cap:
    """Up to how many ppm a respirator may be used, and which of the three bounds that is."""

    ppm: float
    because: str


@cache
def factors(regime: str) -> dict[str, Factor]:
    """Return the regime's protection factors by respirator; what is missing protects against nothing."""
    return {
        row["respirator"]: Factor(
            row["respirator"], row["against"], float(row["factor"]), row["cartridge"] == "yes", row["mark"]
        )
        for row in rows("protection_factors")
        if row["regime"] == TABLE[regime]
    }


def cartridge_for(of: Substance | None, form: str, regime: str) -> str:
    """Return the cartridge's name, "none" where only supplied air protects or nobody knows.

    A mist of a solvent evaporates in the filter: it needs the vapour's cartridge, behind a particle filter.
    """
    if form == "dust" or (form == "mist" and of is None):
        return PARTICLES[0] if regime == "US" else PARTICLES[1]
    if of is None:
        return ONLY_SUPPLIED
    named = of.filters[regime]
    if named in ORGANIC and (of.boiling_point_c is None or of.boiling_point_c < LOW_BOILING_C):
        return ONLY_SUPPLIED if regime == "US" or of.boiling_point_c is None else "AX"
    return named


@cache
def cartridge_cap(cartridge: str, regime: str) -> float | None:
    """Return what a cartridge is approved for in ppm; None: no bound in ppm (particles)."""
    row = next(
        row for row in rows("cartridges") if (row["regime"], row["cartridge"]) == (TABLE[regime], cartridge)
    )
    return float(row["cap_ppm"]) if row["cap_ppm"] else None


def maximum_use(factor: float, limit_ppm: float, idlh_ppm: float | None, cartridge: float | None) -> Cap:
    """Return the maximum use concentration: lowest of factor × limit, IDLH and the cartridge's approval."""
    bounds = [Cap(factor * limit_ppm, "protection factor × limit")]
    if idlh_ppm is not None:
        bounds.append(Cap(idlh_ppm, "IDLH"))
    if cartridge is not None:
        bounds.append(Cap(cartridge, "what the cartridge is approved for"))
    return min(bounds, key=lambda bound: bound.ppm)


@dataclass(frozen=True)
class Exposed:
    """One substance as a mask meets it: ppm at its worst, whether IDLH is reached, its cartridge."""

    name: str
    worst_ppm: float | None
    at_idlh: bool
    cartridge: str


def why_not(respirator: str, regime: str, hazard_ratio: float, exposed: tuple[Exposed, ...]) -> str:
    """Return why a respirator is not enough for what is breathed, in words; "" where it is.

    `hazard_ratio` is the largest of the 8-hour, 15-minute and ceiling sums of concentration / limit.
    """
    reached = next((one.name for one in exposed if one.at_idlh), None)
    if reached is not None:
        return f"{reached} reaches the value that is immediately dangerous to life or health"
    known = factors(regime).get(respirator)
    if known is None:
        return f"{in_words(respirator)} {no_factor(regime)}"
    if hazard_ratio > known.factor:
        return f"its protection factor is {known.factor:g} and {number(hazard_ratio)} is needed"
    wrong = next((one for one in exposed if not suits(known, one)), None)
    if wrong is not None:
        return f"it does not filter {wrong.name}"
    return over_cartridge(regime, exposed) if known.cartridge else ""


def no_factor(regime: str) -> str:
    """Return what is so of a respirator without a row in a regime's table: it protects against nothing."""
    return f"has no protection factor in the {TABLE[regime]} table; no factor is known here"


def suits(known: Factor, one: Exposed) -> bool:
    """Return whether a kind of respirator can be fitted for a substance at all."""
    if not known.cartridge and known.against == "both":
        return True
    if one.cartridge in PARTICLES:
        return known.against in ("particles", "both")
    return known.against != "particles" and one.cartridge != ONLY_SUPPLIED


def over_cartridge(regime: str, exposed: tuple[Exposed, ...]) -> str:
    """Return which cartridge is asked for more than it is approved for; vapours of one cartridge add up."""
    together: dict[str, float] = {}
    for one in exposed:
        cap = cartridge_cap(one.cartridge, regime)
        if cap is not None and one.worst_ppm is None:
            return f"nobody knows how many ppm of {one.name} its cartridge would meet"
        if cap is not None and one.worst_ppm is not None:
            together[one.cartridge] = together.get(one.cartridge, 0.0) + one.worst_ppm
    for cartridge, met in together.items():
        cap = cartridge_cap(cartridge, regime)
        if cap is not None and met > cap:
            return f"a cartridge {cartridge} is approved for {cap:g} ppm and would meet {number(met)}"
    return ""


def enough(regime: str, hazard_ratio: float, exposed: tuple[Exposed, ...]) -> tuple[str, ...]:
    """Return the respirators that are enough, in the order of the list; () where none is."""
    return tuple(kind for kind in RESPIRATORS if not why_not(kind, regime, hazard_ratio, exposed))


def worn(respirator: str) -> str:
    """Return how somebody works who wears it."""
    return "unprotected" if respirator == "none" else f"in {in_words(respirator)}"


def in_words(respirator: str) -> str:
    """Return a respirator as people call it."""
    return {
        "none": "no respirator",
        "quarter": "a quarter mask",
        "half": "a half mask",
        "full": "a full-face mask",
        "powered_half": "a powered half mask",
        "powered_full": "a powered full-face mask",
        "hood": "a loose powered hood",
        "air_fed": "an air-fed mask",
    }.get(respirator, f"an {respirator.upper()} mask")
