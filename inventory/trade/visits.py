"""What earlier visits left on a surface: protection that lasts from one visit to the next."""

from collections.abc import Iterable
from dataclasses import replace

from .acts import Act, Surface
from .kinds import turn

# Oils, haze and the like go with the next wash or with the road; these stay until something takes them off.
LASTING = frozenset({"wax", "sealant"})
COATS = "coats"


def arriving(surface: Surface, earlier: Iterable[Act]) -> Surface:
    """Return a surface as the acts of earlier visits left it, done in order of time and of work."""
    for act in sorted(earlier, key=lambda each: (each.starts_at, turn(each.kind))):
        if act.meets(surface) and not act.spot:
            surface = _after(surface, act)
    return surface


def _after(surface: Surface, act: Act) -> Surface:
    if act.strips_coating:
        surface = replace(surface, coating="", coated_at=None, coating_profile=None)
    stays = {residue: since for residue, since in surface.arrives.items() if residue not in act.profile.lifts}
    if act.has(COATS):
        # A layer buries what lay below it.
        stays = {}
        surface = replace(surface, coating=act.name, coated_at=act.ends_at, coating_profile=act.profile)
    return replace(surface, arrives=stays | dict.fromkeys(sorted(act.profile.leaves & LASTING), act.ends_at))
