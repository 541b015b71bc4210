"""How often a rule was passed by a word: people override what warns too often, so the owner sees which do.

Source: systematic review, JMIR Med Inform 2020;8(7):e15653 (46 to 96 % of alerts overridden where there are
many); a rule overridden more than one time in five is reported.
"""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

TOO_OFTEN = 0.2
ENOUGH_TO_SAY = 5

# A thing shown or passed: the rule's code, the grade, and what made it one thing (a job, what it is about).
Seen = tuple[str, str, str]


@dataclass(frozen=True)
class Rate:
    """A rule at one grade: how often it was shown, and how often a word passed it."""

    code: str
    grade: str
    shown: int
    passed: int

    @property
    def share(self) -> float:
        """The part that a word passed, 0 to 1."""
        return self.passed / self.shown if self.shown else 0.0

    @property
    def percent(self) -> int:
        """The same in percent, rounded."""
        return round(100 * self.share)

    @property
    def too_often(self) -> bool:
        """Whether it is passed more than one time in five, once it was shown often enough to say so."""
        return self.shown >= ENOUGH_TO_SAY and self.share > TOO_OFTEN


def rates(shown: Iterable[Seen], passed: Iterable[Seen]) -> list[Rate]:
    """Return the rate of each rule at each grade, those passed too often first, then the most shown.

    What was passed was shown, whether or not its showing was kept.
    """
    passing = set(passed)
    all_shown = set(shown) | passing
    times = Counter((code, grade) for code, grade, _ in all_shown)
    words = Counter((code, grade) for code, grade, _ in passing)
    found = [Rate(code, grade, count, words[code, grade]) for (code, grade), count in times.items()]
    return sorted(found, key=lambda one: (not one.too_often, -one.shown, one.code, one.grade))
