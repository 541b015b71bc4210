"""What two substances do to each other: own rules and the label net first, then the chart.

Trap: a blank cell is "nothing found", never "safe". Trap: what a product holds already never fires against
itself; only pairs across two products count.
"""

from functools import lru_cache

from safety.reactions.chart import by_chart
from safety.reactions.own_rules import by_rules
from safety.reactions.values import IN_WORDS, Pair, Substance

NOTHING = "Nothing found in the rules and the chart for {} with {}; that is not safe, only not known."


@lru_cache(maxsize=8192)  # the check asks for the same two on the shelf, in the bay and on the car
def meet(a: Substance, b: Substance) -> tuple[Pair, ...]:
    """Return all that is known of two substances meeting; () is nothing found. Raises UnknownGroup."""
    if a == b:
        return ()
    return (*by_rules(a, b), *by_chart(a, b))


def gravest_first(pairs: tuple[Pair, ...]) -> tuple[Pair, ...]:
    """Return pairs with those that are refused in one vessel first, an own rule before the chart's cell."""
    return tuple(sorted(pairs, key=lambda pair: (not pair.grave, _by_chart(pair), _rank(pair))))


def _by_chart(pair: Pair) -> bool:
    return pair.rule[0].isdigit()


def _rank(pair: Pair) -> int:
    return min(list(IN_WORDS).index(code) for code in pair.codes)
