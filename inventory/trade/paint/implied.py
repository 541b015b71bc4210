"""What a step cuts at least, by what it takes: nobody takes compound to paint and cuts nothing."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache

from inventory.trade.naming import row
from inventory.trade.reading import rows

from .removal import usual_cuts
from .values import FINISH

NONE = ""


@dataclass(frozen=True)
class Cutting:
    """A step that reaches the paint: the grade that it says, and what it takes, kinds by the product's name.

    `all_over`: it is not limited to some panels.
    """

    step: str
    says: str
    takes: Mapping[str, str]
    all_over: bool = True


@dataclass(frozen=True)
class Counted:
    """The grade that counts; where it is more than the step says, `because_of` names what it takes."""

    grade: str
    says: str = ""
    because_of: str = ""

    def sentence(self, step: str) -> str:
        """Return why more counts than was said, "" where what was said counts."""
        if not self.because_of:
            return ""
        names = usual_cuts()
        said = f" says {names[self.says].name}, and" if self.says else ""
        return f"{step}{said} takes {self.because_of}: it counts as {names[self.grade].name}."


def counted(steps: Iterable[Cutting]) -> dict[str, Counted]:
    """Return by step of one job the grade that counts, of those that cut.

    The whole of a correction stands on the step that cuts: a polish that only refines it takes nothing more.
    """
    listed = list(steps)
    found = {one.step: _of(one) for one in listed}
    hardest = max((_rank(found[one.step].grade) for one in listed if one.all_over), default=0)
    return {
        step: one
        for step, one in found.items()
        if one.grade and not (one.grade == FINISH and one.because_of and hardest > _rank(FINISH))
    }


def _of(step: Cutting) -> Counted:
    harder = {name: _implied().get(kind, NONE) for name, kind in step.takes.items()}
    least = max(harder.values(), key=_rank, default=NONE)
    if _rank(least) <= _rank(step.says):
        return Counted(step.says, step.says)
    return Counted(least, step.says, row(sorted(name for name, grade in harder.items() if grade == least)))


@cache
def _implied() -> dict[str, str]:
    return {one["takes"]: one["grade"] for one in rows("cuts") if one["takes"]}


def _rank(grade: str) -> int:
    return [NONE, *usual_cuts()].index(grade)
