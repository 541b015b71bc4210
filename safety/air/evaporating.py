"""What of a product goes into the air: volatile parts, what its cure gives off, what only drifts or fumes.

Rule: an ingredient evaporates where it boils at or below 250 °C, or its vapour pressure at 20 °C is 0.01 kPa
or more; what the table does not know evaporates where its class says that its vapour burns. Water never
counts. Of a range the upper end counts. An acid dissolved in water fumes, but nobody can say how many grams:
its amount stays unknown. What is sprayed drifts as a mist, of which no figure is made either.
Source: 2004/42/EC article 2(5) (boiling point) and 2010/75/EU article 3(45) (vapour pressure), both from
memory; safety/tables/volatiles.csv. Cure gases: within the flash and the first hour, evenly (our choice).
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from safety.air.cure import given_off
from safety.air.fire import FLAMMABLE
from safety.air.no_figure import codes
from safety.air.substances import Substance, family, substances
from safety.air.values import Emission, Limit
from safety.hazards.classes import Hazard

BOILS_UP_TO_C, LEAST_KPA = 250.0, 0.01
WATER = "7732-18-5"
CURE_MINUTES = 60.0
UNKNOWN_KG_L, CHLORINATED_KG_L = 1.0, 1.6
CHLORINATED = frozenset({"75-09-2", "127-18-4"})  # heavier than water; the other solvents of the table float
# Listed nowhere as something to breathe: it only burns, so no mask and no limit is looked for.
ONLY_BURNS = frozenset({"1333-74-0"})


@dataclass(frozen=True)
class Ingredient:
    """A part of a product by mass: its share (0 to 1, the upper end of a range) and its classes if known."""

    name: str
    cas: str
    share: float
    hazards: tuple[Hazard, ...] | None = None


@dataclass(frozen=True)
class Release:
    """What a task lets go. `cure` is all of the first hour; `fumes` and `mist` have no grams."""

    vapours: tuple[Emission, ...] = ()
    cure: tuple[Emission, ...] = ()
    fumes: tuple[Emission, ...] = ()
    mist: tuple[Emission, ...] = ()

    def __bool__(self) -> bool:
        return bool(self.vapours or self.cure or self.fumes or self.mist)

    @property
    def weighed(self) -> tuple[Emission, ...]:
        """What has grams: all vapours, and what the first hour of cure gives off."""
        return (*self.vapours, *self.cure)


def _times(grams: float | None, part: float) -> float | None:
    return None if grams is None else grams * part


def released(
    ingredients: Iterable[Ingredient],
    grams: float | None,
    *,
    cures: bool = False,
    sprayed: bool = False,
    typed: Mapping[str, tuple[Limit, ...]] = {},
) -> Release:
    """Return what so many grams of a product let go; `typed` are the shop's own limits by CAS number."""
    vapours, cure, fumes, mist = [], [], [], []
    for one in ingredients:
        known = substances().get(one.cas)
        name = one.name if known is None else known.name
        mass = _times(grams, one.share)
        here = Emission(name, one.cas, mass, "vapour", one.hazards, typed.get(one.cas, ()))
        if fumes_from_water(known):
            fumes.append(replace(here, grams=None))
        elif evaporates(one, known):
            vapours.append(here)
        if sprayed and (drifts(one, known) or family(name, one.cas) == "isocyanate"):
            mist.append(replace(here, grams=None, form="mist"))
        if cures:
            gases = given_off(name, one.cas, 1.0)
            cure += [
                Emission(
                    gas.name,
                    gas.cas,
                    _times(mass, gas.grams),
                    "vapour",
                    None,
                    typed.get(gas.cas, ()),
                    lasts=CURE_MINUTES,
                )
                for gas in gases
            ]
    return Release(tuple(vapours), tuple(cure), tuple(fumes), tuple(mist))


def evaporates(one: Ingredient, known: Substance | None) -> bool:
    """Return whether an ingredient goes into the air as vapour."""
    if one.cas == WATER:
        return False
    if known is None:
        return any(
            code in FLAMMABLE for code in codes(Emission(one.name, one.cas, None, hazards=one.hazards))
        )
    if known.vapour_pressure_kpa is not None and known.vapour_pressure_kpa >= LEAST_KPA:
        return True
    return known.boiling_point_c is not None and known.boiling_point_c <= BOILS_UP_TO_C


def fumes_from_water(known: Substance | None) -> bool:
    """Return whether it is an acid in water: it boils low, does not burn, no vapour pressure is listed."""
    return (
        known is not None
        and not known.burns
        and known.boiling_point_c is not None
        and known.vapour_pressure_kpa is None
    )


def drifts(one: Ingredient, known: Substance | None) -> bool:
    """Return whether an ingredient stays in the drops of a spray: all but water and what evaporates."""
    return one.cas != WATER and not evaporates(one, known)


def density_kg_l(given: float | None, ingredients: Iterable[Ingredient]) -> float:
    """Return the density to count with: the product's own, else 1 kg/l, 1.6 for a chlorinated solvent."""
    if given is not None:
        return given
    return CHLORINATED_KG_L if any(one.cas in CHLORINATED for one in ingredients) else UNKNOWN_KG_L
