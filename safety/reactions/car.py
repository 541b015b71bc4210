"""One after the other on one car: acid and iron remover, bleach and acid …; ended by a rinse that is signed.

Ordinary work is not stopped: iron remover after an alkaline wash, a solvent after iron remover, a coating
after panel wipe, an acid wheel clean that was rinsed before the iron remover.
"""

from safety.findings import Finding
from safety.reactions.families import (
    ACIDS,
    ALCOHOLS,
    AMMONIACAL,
    BLEACH,
    CURED_BY_WATER,
    FLUORIDE,
    GASSED_BY_ACID,
    PEROXIDE,
    THIOGLYCOLATE,
    between,
)
from safety.reactions.groups import traits
from safety.reactions.meeting import meet
from safety.reactions.saying import both, finding
from safety.reactions.values import EVERYWHERE, Pair, Substance

STOP, WAIT = "reaction.car", "reaction.car_wait"
SOUR = ACIDS | FLUORIDE
RINSED_APART = (
    (BLEACH, ACIDS | THIOGLYCOLATE | AMMONIACAL),
    (PEROXIDE, THIOGLYCOLATE),
    (ACIDS, GASSED_BY_ACID),
)
RINSE = "Rinse car and floor with water to a clear drain, and sign the rinse."
FLASH = "Wait until the wipe has flashed off and the panel is dry, then coat."


def on_one_car(a: Substance, b: Substance, rinsed: bool = False) -> Finding | None:
    """Return what is said of two products used one after the other on a car, in either order.

    `rinsed`: a rinse between them to a clear drain was signed. None is nothing that stops or waits.
    """
    if a == b:
        return None
    if not rinsed and (why := rinsed_apart(a, b)):
        says = f"{both(a, b)} follow one another on this car without a rinse."
        return finding(STOP, "stop", says, why, RINSE, (a, b))
    wait = tuple(pair for pair in meet(a, b) if pair.rule == "S16")
    if wait and between(a, b, CURED_BY_WATER, ALCOHOLS):
        says = f"{both(a, b)} meet on the panel where the wipe has not flashed off."
        return finding(WAIT, "tell", says, wait, FLASH, (a, b))
    return None


def rinsed_apart(a: Substance, b: Substance) -> tuple[Pair, ...]:
    """Return what two products between which a rinse must lie do to each other; () where none must."""
    if a == b or not follows(a, b):
        return ()
    grave = tuple(pair for pair in meet(a, b) if pair.where == EVERYWHERE and pair.grave)
    return grave or (_hidden_acid(a, b),)


def follows(a: Substance, b: Substance) -> bool:
    """Return whether a rinse must lie between two products: own rules S1 to S3, S5, S8 and the label's EUH.

    Two iron removers are one chemistry, though one of them may hold the free acid.
    """
    irons = [bool(traits(each) & THIOGLYCOLATE) for each in (a, b)]
    sour = between(a, b, SOUR, THIOGLYCOLATE) and not all(irons)
    return sour or any(between(a, b, left, right) for left, right in RINSED_APART)


def _hidden_acid(a: Substance, b: Substance) -> Pair:
    says = "What holds a fluoride is mostly acid, and iron remover with acid may give off toxic gas."
    about = "a fluoride, taken for an acid, and iron remover"
    return Pair(a.name, b.name, ("GT",), "house rule S5, for fluorides", "M", says, "S5", about=about)
