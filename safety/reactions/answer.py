"""Every pair of several substances, each answered once: what a script reads, and a person."""

from dataclasses import dataclass
from itertools import combinations
from typing import Any

from safety.reactions.chart import SOURCE
from safety.reactions.meeting import NOTHING, gravest_first, meet
from safety.reactions.saying import source
from safety.reactions.values import Pair, Substance, ordered

SEARCHED = f"Own rules S1 to S19, statements of labels; {SOURCE}"


@dataclass(frozen=True)
class Met:
    """Two substances, and all that was found of them, gravest first; () is nothing found, never safe."""

    a: str
    b: str
    pairs: tuple[Pair, ...]

    @property
    def codes(self) -> tuple[str, ...]:
        """Return all that may happen."""
        return ordered({code for pair in self.pairs for code in pair.codes})

    @property
    def says(self) -> str:
        """Return every sentence, once."""
        if not self.pairs:
            return NOTHING.format(self.a, self.b)
        return " ".join(dict.fromkeys(pair.says for pair in self.pairs))

    @property
    def sources(self) -> str:
        """Return every source with its mark in words, or what was searched in vain."""
        return source(list(self.pairs)) if self.pairs else SEARCHED

    def as_json(self) -> dict[str, Any]:
        """Return the pair as a script reads it; `mark` as in the tables, null where nothing was found."""
        return {
            "a": self.a,
            "b": self.b,
            "codes": list(self.codes),
            "source": "; ".join(dict.fromkeys(pair.source for pair in self.pairs)) or SEARCHED,
            "mark": ", ".join(dict.fromkeys(pair.mark for pair in self.pairs)) or None,
            "says": self.says,
        }


def every_pair(of: list[Substance]) -> tuple[Met, ...]:
    """Return each unordered pair in the order given; raises UnknownGroup."""
    return tuple(Met(a.name, b.name, gravest_first(meet(a, b))) for a, b in combinations(of, 2))
