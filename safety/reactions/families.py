"""What judgements ask of a substance besides the rules: is it bleach, an acid, does it burn."""

from safety.reactions.groups import WATER, labels, traits
from safety.reactions.values import Substance

BLEACH = frozenset({"hypochlorite"})
PEROXIDE = frozenset({"peroxide"})
AMMONIACAL = frozenset({"ammonia", "ammonium", "7", "quat"})
GASSED_BY_ACID = frozenset({"sulfite", "EUH031", "EUH032"})
ACIDS = frozenset({"1", "2", "3"})
FLUORIDE = frozenset({"15"})
THIOGLYCOLATE = frozenset({"20"})
OXIDISERS = frozenset({"104", "H270", "H271", "H272"})
WATER_REACTIVE = frozenset({"107", "21", "EUH014", "H260", "H261"})
CURED_BY_WATER = frozenset({"107", "water-sensitive"})
WATERY = frozenset({WATER})
FLAMMABLE = frozenset({"H220", "H221", "H222", "H223", "H224", "H225", "H226", "H228", "H242", "H250"})
SOLVENTS = frozenset({"4", "13", "14", "16", "19", "28", "29"})
ALCOHOLS = frozenset({"4"})


def between(a: Substance, b: Substance, left: frozenset[str], right: frozenset[str]) -> bool:
    """Return whether one of two substances has a trait of the left set and the other one of the right."""
    one, other = traits(a), traits(b)
    return bool((one & left and other & right) or (other & left and one & right))


def burns(of: Substance) -> bool:
    """Return whether its label says that it burns; where no label is known, solvents without water do."""
    found = traits(of)
    if labels(of):
        return bool(found & FLAMMABLE)
    return bool(found & SOLVENTS) and WATER not in found


def known_weak(of: Substance) -> bool:
    """Return whether it is no concentrate: water-based, and its label has statements but not corrosive."""
    return WATER in traits(of) and bool(labels(of)) and "H314" not in labels(of)
