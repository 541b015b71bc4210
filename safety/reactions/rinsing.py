"""What must not stay on a car: it is rinsed to a clear drain before the next product and before it leaves.

Common practice, no source; what each of them must not meet is in the rules that the car's module names.
"""

from safety.reactions.car import SOUR
from safety.reactions.families import BLEACH, THIOGLYCOLATE
from safety.reactions.groups import traits
from safety.reactions.values import Substance


def wants_rinse(of: Substance) -> bool:
    """Return whether it is an acid, holds a fluoride, or is an iron remover or bleach."""
    return bool(traits(of) & (SOUR | THIOGLYCOLATE | BLEACH))
