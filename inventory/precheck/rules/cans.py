"""May a bottle be tipped into a waste can or bucket: against all that went into it since it was emptied.

What must not meet in one vessel is refused here, always. Two parts of a kit are no exception: in a can they
meet at no maker's ratio.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from safety.findings import GRADES, Finding
from safety.reactions.groups import WATER, traits
from safety.reactions.values import Substance
from safety.reactions.vessel import in_one_vessel, thinned


@dataclass(frozen=True)
class Tipped:
    """What was in a bottle: a product by its code, and whether it was mixed with water."""

    code: str
    what: Substance
    watered: bool = False

    @property
    def in_can(self) -> Substance:
        """The substance as the can has it, with its water."""
        return replace(self.what, water_based=True) if self.watered else self.what


def tip(new: Tipped, there: Iterable[Tipped], can: str) -> Finding | None:
    """Return what is said of tipping it in, the gravest pair first; None is nothing found, never safe."""
    others = sorted(set(there), key=lambda one: one.what.name)
    pairs = [(each.what.name, one) for each in others if (one := _judged(new, each))]
    harmful = sorted(
        (pair for pair in pairs if pair[1].grade != "tell"), key=lambda pair: GRADES.index(pair[1].grade)
    )
    if not harmful:
        return None
    (named, first), *rest = harmful
    because = " ".join([f"{named} is in {can}.", first.because, *(one.says for _, one in rest)])
    return replace(first, because=because, do=_way_out(first.grade, can, named))


def _judged(new: Tipped, each: Tipped) -> Finding | None:
    if new.code != each.code:
        return in_one_vessel(new.in_can, each.in_can)
    return None if new.watered == each.watered or WATER in traits(new.what) else thinned(new.what)


def _way_out(grade: str, can: str, named: str) -> str:
    other = f"Take another can, or empty and rinse {can} and scan its code to say so"
    return f"{can} holds {named}. {other}{'' if grade == 'stop' else '; YES tips it in all the same'}."
