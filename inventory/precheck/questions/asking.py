"""What a question is: a function over a case, the topics it reads, and the findings it returns."""

from collections.abc import Callable
from dataclasses import dataclass

from .case import Case
from .facts import TOPICS

GRADES = ("stop", "ask", "tell")


@dataclass(frozen=True)
class Finding:
    """One cause, one finding: what is so, why (with the numbers), what to do, whose word it is.

    `about` names codes, the thing itself first; a step's code says when it matters. `of` names the products
    (and steps, for what is worn throughout) that raise it, where others beside them do not; () where all do.
    """

    code: str
    grade: str
    says: str
    because: str
    do: str
    source: str
    about: tuple[str, ...]
    of: tuple[str, ...] = ()


@dataclass(frozen=True)
class Question:
    """A question of the check; only its topics are loaded for it."""

    topics: frozenset[str]
    ask: Callable[[Case], list[Finding]]


def question(*topics: str) -> Callable[[Callable[[Case], list[Finding]]], Question]:
    """Make a question of a function, over the topics that it names."""
    assert set(topics) <= set(TOPICS), topics
    return lambda ask: Question(frozenset(topics), ask)
