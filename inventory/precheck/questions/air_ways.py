"""Ways out of a stop about the air that depend on the shop: the masks on its shelf, the cabin of a car."""

from collections.abc import Iterable
from dataclasses import replace

from inventory.codes import pair
from safety.air.protection import named_for
from safety.air.respirators import factors
from safety.air.values import Emission
from safety.findings import Finding as Found

from .case import Case
from .evaporation import StepAir
from .respirators import serves_as

OUT_OF_THE_CABIN = (
    "Take a product without flammables, or do this work outside the car; open doors alone are not enough. "
    "Ignition off."
)
NONE_HERE = "None of the masks named for it is on the shelf in date: order one."


def in_a_cabin(of: StepAir, found: Found) -> Found:
    """Return a stop of a closed space; nobody types what air moves in a car's cabin."""
    cabin = found.code == "air.closed_space" and of.place.cabin
    return replace(found, do=OUT_OF_THE_CABIN) if cabin else found


def with_masks_here(case: Case, of: StepAir, found: Found, bare: Iterable[Emission]) -> Found:
    """Return a stop for want of a named mask with which of those masks are here, said first."""
    people = case.facts.people
    if not people.kept:
        return found
    known, until = factors(of.regime), max(of.step.ends_at, case.at)
    kinds = {kind for one in bare if one.name in found.about for kind in named_for(one) if kind in known}
    here = [
        f"{pair(item.code)} {item.name}"
        for item in people.items
        if item.lasts(until) and any(serves_as(item, kind) for kind in kinds)
    ]
    first = f"Here: {', '.join(here)}." if here else NONE_HERE
    return replace(found, do=f"{first} {found.do}")
