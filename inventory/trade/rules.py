"""Every rule on the order of work and on surfaces, by its id: its grade, its code, where it is expressed."""

from dataclasses import dataclass
from functools import cache

from .reading import rows
from .surface_rules import surface_rules


@dataclass(frozen=True)
class Rule:
    """A rule as the trade says it; `by` names the table or function, `why` the reason for a function."""

    id: str
    rule: str
    grade: str
    code: str
    by: str
    why: str
    mark: str


@cache
def rules() -> tuple[Rule, ...]:
    """Return the rules of order, then those of surfaces, one for each surface that a line names."""
    return (*(Rule(**row) for row in rows("rules")), *_of_surfaces())


def _of_surfaces() -> list[Rule]:
    return [
        Rule(f"{one.id}:{key}", f"{one.trait} on {key}", one.grade, one.code, "surfaces", "", one.mark)
        for one in surface_rules()
        for key in sorted(one.surfaces)
    ]
