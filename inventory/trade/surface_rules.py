"""Which traits a surface does not bear: always, or while it is younger than a wait."""

from dataclasses import dataclass
from functools import cache

from .reading import listed, rows

GRADES = ("stop", "ask", "tell")


@dataclass(frozen=True)
class SurfaceRule:
    """A line of the table. `wait` names a wait of the product, `under_days` an age without one."""

    id: str
    surfaces: frozenset[str]
    trait: str
    grade: str
    code: str
    wait: str
    under_days: int | None
    dried: str
    because: str
    do: str
    mark: str

    @property
    def dated(self) -> bool:
        """Whether it holds only up to an age of the surface."""
        return bool(self.wait) or self.under_days is not None


@cache
def surface_rules() -> tuple[SurfaceRule, ...]:
    """Return the rules, stops before asks, as they stand in the table."""
    found = [
        SurfaceRule(
            **{key: value for key, value in row.items() if key not in ("surface", "under_days")},
            surfaces=frozenset(listed(row["surface"])),
            under_days=int(row["under_days"]) if row["under_days"] else None,
        )
        for row in rows("surface_rules")
    ]
    return tuple(sorted(found, key=lambda rule: GRADES.index(rule.grade)))


def always(traits: frozenset[str], grade: str) -> frozenset[str]:
    """Return the surfaces that these traits must never touch ("stop") or touch after asking ("ask")."""
    found = (rule for rule in surface_rules() if rule.grade == grade and not rule.dated)
    return frozenset(key for rule in found if rule.trait in traits for key in rule.surfaces)
