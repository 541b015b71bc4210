"""May a container stand where it is put: beside what is there already, and within what may burn there?

One finding says it: the gravest pair first, the others counted in its reason; the sums of what burns apart,
and whether the container itself is too large for what it holds.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from safety.findings import Finding, gravest_first
from safety.flammables.containers import container_size
from safety.flammables.totals import totals
from safety.flammables.values import Held, Vessel
from safety.reactions.bay import in_one_bay
from safety.reactions.shelf import in_one_place
from safety.reactions.values import Substance

# Where things stand within each other's reach; a store or a bay is a room.
TOGETHER = {"cabinet", "shelf", "tray"}
CABINET, BAY = "cabinet", "bay"
# Where things are together for a while: what leaves must be able to leave, so what would stop asks.
PASSING = {"waste", "van"}
JUDGED = TOGETHER | PASSING | {BAY}


@dataclass(frozen=True)
class Putting:
    """A container on its way to a place: what is there already, and what burns in its fire area, it included.

    `in_reach` stands on another shelf or tray of the same cabinet; `in_cabinet` is () outside a cabinet.
    `area` names the fire area, "" where the place belongs to none; `typed_litres` is the shop's own limit.
    `vessel` is the container itself, None where nobody knows what it is made of; the rules that size it go by
    the label's regime, those that sum by the country's.
    """

    kind: str
    what: Substance
    there: tuple[Substance, ...] = ()
    in_reach: tuple[Substance, ...] = ()
    in_cabinet: tuple[Held, ...] = ()
    in_area: tuple[Held, ...] = ()
    area: str = ""
    regime: str = "EU"
    typed_litres: float | None = None
    vessel: Vessel | None = None
    vessel_regime: str = "EU"


def put_away(putting: Putting) -> tuple[Finding, ...]:
    """Return what is said of putting a container there; () is nothing found, which is not safe."""
    sized = container_size(putting.vessel, putting.vessel_regime) if putting.vessel else ()
    return gravest_first([*_beside(putting), *_burning(putting), *sized])


def _beside(putting: Putting) -> list[Finding]:
    if putting.kind not in JUDGED:
        return []
    judge = in_one_bay if putting.kind == BAY else in_one_place
    others = sorted({each for each in putting.there if each != putting.what}, key=lambda each: each.name)
    found = gravest_first(one for each in others if (one := judge(putting.what, each)))
    found = gravest_first([*found, *_never_in_one_cabinet(putting)])
    if putting.kind in PASSING:
        found = tuple(replace(one, grade="ask") if one.grade == "stop" else one for one in found)
    return [_once(found)] if found else []


def _never_in_one_cabinet(putting: Putting) -> list[Finding]:
    """Return the stops alone: a tray of its own is the way out of what asks, never of what stops."""
    others = sorted({each for each in putting.in_reach if each != putting.what}, key=lambda each: each.name)
    found = [one for each in others if (one := in_one_place(putting.what, each))]
    return [one for one in found if one.grade == "stop"]


def _once(found: Iterable[Finding]) -> Finding:
    first, *rest = found
    return replace(first, because=" ".join([first.because, *(one.says for one in rest)]))


def _burning(putting: Putting) -> list[Finding]:
    found: list[Finding] = []
    if putting.in_cabinet:
        found += totals(putting.in_cabinet, putting.regime, True, typed_litres=putting.typed_litres)
    if putting.area:
        found += totals(putting.in_area, putting.regime, False, typed_litres=putting.typed_litres)
    # What is only told of a fire area stands on its page; at a scan, what asks is enough.
    return [one for one in found if one.grade != "tell"]
