"""What is asked of a guard, and what it answers."""

from collections.abc import Callable
from dataclasses import dataclass

from .answers import Key
from .facts import Bottle, Facts, JobFacts


@dataclass(frozen=True)
class Taking:
    """So much out of a bottle, for a car or the shop, in base units.

    `who` takes it; `planned`: the step plans so much of it; `answered`: what a YES has answered in this use.
    """

    bottle: Bottle
    amount: int
    job: JobFacts | None = None
    step: str = ""
    who: str = ""
    planned: bool = True
    answered: frozenset[str] = frozenset()


@dataclass(frozen=True)
class Objection:
    """A reason not to, or to ask first."""

    code: str
    grade: str
    says: str
    next: str
    keys: tuple[Key, ...] = ()


Guard = Callable[[Taking, Facts], Objection | None]
