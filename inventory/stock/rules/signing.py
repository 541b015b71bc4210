"""What a stage's signature posts: needs that were not scanned, as planned, from the bay's open bottles.

Traced products are scanned, never posted; what is missing stays open and is named when the job is closed.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime, tzinfo

from inventory.units import Dimension, show

from . import one_lot
from .acts import Act
from .lines import Refused
from .mixes import gross
from .reserve import Need, OnShelf, Taken, dies_at, lasts, serves


@dataclass(frozen=True)
class StageNeed:
    """One need of a stage: what is still unrecorded, as concentrate, and what people call it.

    `dimension` is what it is measured in; `signed`: its step is signed already.
    """

    need: Need
    step: str
    named: str
    traced: bool = False
    dimension: str = Dimension.VOLUME
    signed: bool = False


@dataclass(frozen=True)
class StagePlan:
    """A stage that can be signed: its name, its unsigned steps, their open needs, the bay's open bottles.

    `system`: the units in which the shop reads.
    """

    stage: str
    steps: tuple[str, ...]
    needs: tuple[StageNeed, ...] = ()
    bottles: tuple[OnShelf, ...] = ()
    system: str = "metric"


@dataclass(frozen=True)
class Signed:
    """What to write: uses as planned; which needs they settle; what was not scanned or not found, by name."""

    acts: tuple[Act, ...]
    settled: tuple[str, ...]
    unscanned: tuple[str, ...]
    missing: tuple[str, ...]


class Given:
    """What steps were given while their needs are booked one after the other."""

    def __init__(self) -> None:
        self._had: dict[tuple[str, str], one_lot.Batch] = {}

    def before(self, each: StageNeed) -> StageNeed:
        """Return a need that knows what its step was given just now."""
        need = each.need
        just_now = self._had.get((each.step, need.product or need.kind), one_lot.NOTHING)
        return replace(each, need=replace(need, had=need.had | just_now))

    def note(self, each: StageNeed, bottle: OnShelf) -> None:
        """Keep that a need's step was given of a bottle; what was asked for by name binds no kind."""
        step = each.step
        for thing in (bottle.product,) if each.need.product else (bottle.product, bottle.kind):
            self._had[step, thing] = self._had.get((step, thing), one_lot.NOTHING) | bottle.batch


def plan_stage(plan: StagePlan, job: str, at: datetime, zone: tzinfo) -> Signed:
    """Return what signing a stage at an instant writes; a need is settled only where all of it was found.

    Raises Refused where a step would be booked out of two lots.
    """
    left = {bottle.code: bottle for bottle in plan.bottles if not bottle.sealed and not bottle.held}
    acts: list[Act] = []
    settled, unscanned, missing = [], [], []
    given = Given()
    for each in plan.needs:
        if each.traced:
            unscanned.append(each.named)
            continue
        taken, short = _take(given.before(each), left, zone, plan.system)
        for one in taken:
            given.note(each, left[one.container])
        acts += [_use(one, left, each, job, at) for one in taken]
        (missing.append(each.named) if short else settled.append(each.need.id))
    return Signed(tuple(acts), tuple(settled), _once(unscanned), _once(missing))


def _once(names: Sequence[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(names))


def _take(each: StageNeed, left: dict[str, OnShelf], zone: tzinfo, system: str) -> tuple[list[Taken], int]:
    need = each.need
    fit = [bottle for bottle in left.values() if serves(need, bottle) and lasts(bottle, need, zone)]
    queue = sorted(fit, key=lambda bottle: (dies_at(bottle, zone), bottle.code))
    short, taken = need.amount, []
    for bottle in of_its_lot(each, queue, system):
        if not short:
            break
        amount = min(short, bottle.concentrate)
        taken.append(Taken(need.id, bottle.code, amount, opens=False))
        short -= amount
    return taken, short


def of_its_lot(each: StageNeed, queue: Sequence[OnShelf], system: str, do: str = "Scan") -> Sequence[OnShelf]:
    """Return the bottles that a need may be booked from, in their order; raises Refused for two lots."""
    need = each.need
    if not need.one_lot:
        return queue
    fit = one_lot.of_one_lot(queue, need.amount, need.had)
    got, usable = (sum(bottle.concentrate for bottle in some) for some in (fit, queue))
    if one_lot.apart(need.amount, got, usable, need.had):
        needed, held = (show(base, each.dimension, system) for base in (need.amount, got))
        refusal = one_lot.refusal(each.named, needed, held, need.had, do=do, signed=each.signed)
        raise Refused(refusal, code=one_lot.TWO_LOTS)
    return fit


def _use(taken: Taken, left: dict[str, OnShelf], need: StageNeed, job: str, at: datetime) -> Act:
    bottle = left[taken.container]
    amount = min(bottle.content, gross(taken.amount, bottle.parts))
    left[taken.container] = replace(bottle, content=bottle.content - amount)
    facts: dict[str, object] = {"assumed": True, "measured": False}
    return Act("use", at, source=bottle.code, amount=amount, job=job, step=need.step, facts=facts)
