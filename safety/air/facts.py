"""The facts of a task, worked out once: what every check reads."""

from dataclasses import dataclass
from datetime import date

from safety.air.contaminants import Contaminant, contaminants
from safety.air.cure import CureGas, given_off
from safety.air.exposure import Judged, index, judge
from safety.air.figures import Figures, figures
from safety.air.fire import Fire, fire
from safety.air.limits import idlh
from safety.air.protection import exposed, hazard_ratio
from safety.air.respirators import enough, why_not
from safety.air.values import Task

NOT_KNOWN = "the exposure is not known"


@dataclass(frozen=True)
class Facts:
    """A task with its figures. `mask_fails` says why the worn respirator is not enough, "" where it is."""

    task: Task
    contaminants: tuple[Contaminant, ...]
    nose: tuple[Judged, ...]
    room: tuple[Judged, ...]
    index: float | None
    figures: Figures
    fire: Fire
    hazard_ratio: float
    at_idlh: tuple[str, ...]
    mask_fails: str
    enough: tuple[str, ...]

    @property
    def known(self) -> bool:
        """Return whether volume, air flow and every amount are known."""
        return all(one.nose is not None for one in self.contaminants)

    def cure_of(self, one: Contaminant) -> tuple[CureGas, ...]:
        """Return what a gram of a contaminant gives off while it cures."""
        return given_off(one.name, one.emission.cas, 1.0)


def facts_of(task: Task, on: date) -> Facts:
    """Return the facts, by the limits in force on a day."""
    found = contaminants(task, on)
    nose = judge(found, task.minutes, "nose", task.measured)
    total = index(found, task.measured)
    ratio = hazard_ratio(nose, total)
    met = exposed(found, {one.name: idlh(one.emission, on) for one in found}, task.regime, task.measured)
    known = all(one.nose is not None for one in found)
    return Facts(
        task=task, contaminants=found, nose=nose, room=judge(found, task.minutes, "room"), index=total,
        figures=figures(task, found, on), fire=fire(found, on), hazard_ratio=ratio,
        at_idlh=tuple(one.name for one in met if one.at_idlh),
        mask_fails=why_not(task.respirator, task.regime, ratio, met) if known else NOT_KNOWN,
        enough=enough(task.regime, ratio, met) if known else (),
    )  # fmt: skip
