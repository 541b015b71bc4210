"""What a stage's signature posts: needs that were not scanned, as planned, from the bay's open bottles.

Traced products are scanned, never posted; what is missing stays open and is named when the job is closed.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime, tzinfo

from .acts import Act
from .mixes import gross
from .reserve import Need, OnShelf, Taken, dies_at, lasts, serves


@dataclass(frozen=True)
class StageNeed:
    """One need of a stage: what is still unrecorded, as concentrate, and what people call it."""

    need: Need
    step: str
    named: str
    traced: bool = False


@dataclass(frozen=True)
class StagePlan:
    """A stage that can be signed: its name, its unsigned steps, their open needs, the bay's open bottles."""

    stage: str
    steps: tuple[str, ...]
    needs: tuple[StageNeed, ...] = ()
    bottles: tuple[OnShelf, ...] = ()


@dataclass(frozen=True)
class Signed:
    """What to write: uses as planned; which needs they settle; what was not scanned or not found, by name."""

    acts: tuple[Act, ...]
    settled: tuple[str, ...]
    unscanned: tuple[str, ...]
    missing: tuple[str, ...]


def plan_stage(plan: StagePlan, job: str, at: datetime, zone: tzinfo) -> Signed:
    """Return what signing a stage at an instant writes; a need is settled only where all of it was found."""
    left = {bottle.code: bottle for bottle in plan.bottles if not bottle.sealed and not bottle.held}
    acts: list[Act] = []
    settled, unscanned, missing = [], [], []
    for each in plan.needs:
        if each.traced:
            unscanned.append(each.named)
            continue
        taken, short = _take(each.need, left, zone)
        acts += [_use(one, left, each, job, at) for one in taken]
        (missing.append(each.named) if short else settled.append(each.need.id))
    return Signed(tuple(acts), tuple(settled), _once(unscanned), _once(missing))


def _once(names: Sequence[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(names))


def _take(need: Need, left: dict[str, OnShelf], zone: tzinfo) -> tuple[list[Taken], int]:
    fit = [bottle for bottle in left.values() if serves(need, bottle) and lasts(bottle, need, zone)]
    short, taken = need.amount, []
    for bottle in sorted(fit, key=lambda bottle: (dies_at(bottle, zone), bottle.code)):
        if not short:
            break
        amount = min(short, bottle.concentrate)
        taken.append(Taken(need.id, bottle.code, amount, opens=False))
        short -= amount
    return taken, short


def _use(taken: Taken, left: dict[str, OnShelf], need: StageNeed, job: str, at: datetime) -> Act:
    bottle = left[taken.container]
    amount = min(bottle.content, gross(taken.amount, bottle.parts))
    left[taken.container] = replace(bottle, content=bottle.content - amount)
    facts: dict[str, object] = {"assumed": True, "measured": False}
    return Act("use", at, source=bottle.code, amount=amount, job=job, step=need.step, facts=facts)
