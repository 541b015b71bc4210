"""The chart: cell by cell what two groups do to each other. A cell that is absent says nothing at all.

Source: EPA-600/2-80-076 (Hatayama et al., April 1980), figure 6, as transcribed; doubtful cells say so.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from itertools import product

from safety.hazards.tables import rows
from safety.reactions.groups import chart_groups, groups
from safety.reactions.values import MARKS, Pair, Substance, in_words, ordered

SOURCE = "EPA-600/2-80-076, figure 6"
WITH_NOTHING = "107"  # its row in the chart is one sentence: it goes with nothing
REACTS = "reacts with water, so it goes with nothing"
COLUMN = "chart, column 107"


@dataclass(frozen=True)
class Cell:
    """What one cell of the chart says."""

    codes: tuple[str, ...]
    mark: str


@cache
def cells() -> dict[frozenset[str], Cell]:
    """Return the chart by pair of groups."""
    return {
        frozenset((row["group_a"], row["group_b"])): Cell(ordered(set(row["codes"].split(","))), row["mark"])
        for row in rows("reactivity_chart")
    }


def by_chart(a: Substance, b: Substance) -> Iterator[Pair]:
    """Yield one pair for each cell that two substances meet in; column 107 speaks once."""
    met = {frozenset(each) for each in product(chart_groups(a), chart_groups(b))}
    for groups_met in sorted(met, key=_order):
        if groups_met in cells():
            yield _pair(a, b, groups_met)
    if others := sorted((met_with for each in met if (met_with := _beside_107(each))), key=_number):
        yield _column(a, b, others)


def _pair(a: Substance, b: Substance, met: frozenset[str]) -> Pair:
    low, high = sorted(met, key=_number)
    cell = cells()[met]
    note = f" {MARKS[cell.mark][0].upper()}{MARKS[cell.mark][1:]}." if cell.mark == "doubtful" else ""
    pair, number = f"{groups()[low].name} with {groups()[high].name}", f"{low}-{high}"
    says = f"The chart gives {in_words(cell.codes)} for {pair}.{note}"
    return Pair(a.name, b.name, cell.codes, f"{SOURCE}, cell {number}", cell.mark, says, number, about=pair)


def _column(a: Substance, b: Substance, others: list[str]) -> Pair:
    names = ", ".join(groups()[each].name for each in others)
    says = f"The chart lets water-reactive substances meet nothing, so not {names}."
    return Pair(a.name, b.name, ordered({"GF", "GT"}), COLUMN, "M", says, WITH_NOTHING, about=REACTS)


def _beside_107(met: frozenset[str]) -> str:
    return next(iter(met - {WITH_NOTHING})) if WITH_NOTHING in met and len(met) == 2 else ""


def _number(group: str) -> tuple[bool, int, str]:
    return (not group.isdigit(), int(group) if group.isdigit() else 0, group)


def _order(met: frozenset[str]) -> list[tuple[bool, int, str]]:
    return sorted(_number(each) for each in met)
