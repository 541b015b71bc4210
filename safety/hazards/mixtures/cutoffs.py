"""Classes that one ingredient alone gives a mixture, from a percentage on; they are never summed.

Sources: safety/tables/mixture_cutoffs.csv, row by row. In the EU an ingredient's own limits replace its rows
(CLP Art 10). Elsewhere such a limit is no rule, but it says that the ingredient still acts below the cut-off,
and such a class stands on knowledge (SOR/2015-17 s. 2.5(1)): that is asked, never passed over.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache

from safety.hazards.classes import Hazard
from safety.hazards.mixtures import limits
from safety.hazards.mixtures.limits import Of, own_limits, reaches
from safety.hazards.mixtures.values import Because, Found, Ingredient, Limit, Mixture
from safety.hazards.mixtures.written import gravity, named, outcome, read
from safety.hazards.tables import rows

SOURCE_OF_REVIEW = "SOR/2015-17 s. 2.5(1)"


@dataclass(frozen=True)
class Cutoff:
    """One row of the table: from (included) to below (excluded) percent, which class the mixture gets."""

    start: float
    below: float | None
    gives: str
    source: str
    mark: str


@cache
def cutoffs(name: str, category: str, regime: str, gas: bool) -> tuple[Cutoff, ...]:
    """Return the rows of a class for a regime; category 1A or 1B falls back on the rows of 1."""
    found = tuple(
        Cutoff(
            float(row["from"]),
            float(row["below"]) if row["below"] else None,
            row["gives"],
            row["source"],
            row["mark"],
        )
        for row in rows("mixture_cutoffs")
        if row["class"] == name
        and row["category"] == category
        and regime in row["regimes"].split()
        and row["state"] in ("", "gas" if gas else "other")
    )
    return found or (cutoffs(name, category[:1], regime, gas) if len(category) > 1 else ())


def of_single_ingredients(mixture: Mixture, regime: str, *asked: Of) -> Found:
    """Return what single ingredients give the mixture of the classes asked for."""
    because: list[Because] = []
    for one in mixture.ingredients:
        carried = named(one) if one.percent else set()
        for of in asked:
            if of.name not in carried:
                continue
            because += reasons(one, regime, of, mixture.form == "gas")
    return Found(tuple(reason.hazard for reason in because), tuple(because))


def reasons(one: Ingredient, regime: str, of: Of, gas: bool) -> Iterator[Because]:
    """Yield why an ingredient classes the mixture: by its own limits, and by the table where they are silent.

    A limit speaks for its own category: one for Repr. 2 leaves Repr. 1 of the same ingredient to the table.
    """
    own = own_limits(one, regime, of)
    yield from by_own_limits(one, own)
    decided = {kind(read(limit.hazard)) for limit in own}
    for hazard in one.hazards or ():
        if of.covers(hazard):
            found = by_table(one, hazard, regime, gas)
            yield from (reason for reason in found if kind(read(reason.hazard)) not in decided)


def kind(hazard: Hazard) -> tuple[str, str]:
    """Return class and category, sub-categories counted as their category."""
    return hazard.of.name, hazard.of.category[:1]


def by_own_limits(one: Ingredient, own: Iterable[Limit]) -> Iterator[Because]:
    """Yield the gravest of the ingredient's own limits that its percentage reaches."""
    reached = [limit for limit in own if reaches(one.percent, limit.from_percent)]
    if reached:
        limit = min(reached, key=lambda limit: (gravity(read(limit.hazard)), -limit.from_percent))
        rule = "one ingredient reaches its own limit for the class"
        numbers = {"ingredient": one.name, "percent": one.percent, "own_limit": limit.from_percent}
        yield Because(limit.hazard, rule, limits.SOURCE, "S", numbers)


def by_table(one: Ingredient, hazard: Hazard, regime: str, gas: bool) -> Iterator[Because]:
    """Yield the row of the table that the ingredient's percentage reaches."""
    for row in cutoffs(hazard.of.name, hazard.of.category, regime, gas):
        if not reaches(one.percent, row.start) or (row.below is not None and reaches(one.percent, row.below)):
            continue
        rule = f"one ingredient of {hazard} reaches {row.start:g} %"
        numbers = {"ingredient": one.name, "percent": one.percent, "limit": row.start}
        yield Because(row.gives or str(hazard), rule, row.source, row.mark, numbers)


def known_to_act(mixture: Mixture, regime: str, hazards: Iterable[str]) -> Found:
    """Return, outside the EU, who reaches a limit that the EU knows for a graver class than was found.

    Asked of every class when all are found, so that no family can forget it.
    """
    if regime in limits.WITH_OWN_LIMITS:
        return Found()
    found = [read(text) for text in hazards]
    said: dict[tuple[str, tuple[str, ...]], str] = {}
    for one in mixture.ingredients:
        for limit in sorted(one.limits, key=lambda limit: limit.hazard):
            hazard = limits.read_limit(limit)
            if hazard is None or not one.percent or not reaches(one.percent, limit.from_percent):
                continue
            if regime in hazard.of.regimes and not any(covers(other, hazard) for other in found):
                said.setdefault((one.name, outcome(hazard)), _asked(one, gravest_reached(one, hazard)))
    return Found(needs_review=tuple(said.values()))


def gravest_reached(one: Ingredient, like: Hazard) -> Limit:
    """Return the gravest of an ingredient's own limits of one outcome that its percentage reaches."""
    alike = [
        (gravity(hazard), limit.from_percent, limit.hazard, limit)
        for limit in one.limits
        if (hazard := limits.read_limit(limit))
        and outcome(hazard) == outcome(like)
        and reaches(one.percent, limit.from_percent)
    ]
    return min(alike, key=lambda known: known[:3])[3]


def covers(found: Hazard, asked: Hazard) -> bool:
    """Return whether a class that was found says at least what another one does."""
    if found.of.name == "Skin Corr." and asked.of.name in ("Skin Irrit.", "Eye Irrit.", "Eye Dam."):
        return True
    if found.of.name == "Eye Dam." and asked.of.name == "Eye Irrit.":
        return True
    return outcome(found) == outcome(asked) and gravity(found) <= gravity(asked)


def _asked(one: Ingredient, limit: Limit) -> str:
    return (
        f"{one.name} ({one.percent:g} %) is below the cut-off, yet the EU classes it {limit.hazard} "
        f"from {limit.from_percent:g} %: if it is known to act, it counts ({SOURCE_OF_REVIEW})."
    )
