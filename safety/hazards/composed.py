"""What a sheet's section 3 gives, held against what its section 2 says. Pure.

The sheet's own classes lead: its maker may have tested the whole, or know an ingredient that section 3 does
not name. What differs is shown, never settled here.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from safety.hazards.classes import Hazard, UnknownHazard, read_hazard
from safety.hazards.facts import LabelParts, SheetFacts, label_parts
from safety.hazards.mixtures.fields import MixtureError
from safety.hazards.mixtures.reading import read_mixture
from safety.hazards.mixtures.rules import classify
from safety.hazards.mixtures.values import Because
from safety.hazards.mixtures.written import outcome


@dataclass(frozen=True)
class Composed:
    """The classes that a composition gives, and what of section 2 it does not, or the other way round."""

    parts: LabelParts
    needs_review: tuple[str, ...]
    because: tuple[Because, ...]
    hazards: tuple[str, ...]
    only_sheet: tuple[str, ...]
    only_composition: tuple[str, ...]


def composed(facts: SheetFacts, regime: str) -> Composed | None:
    """Return what the composition of a sheet gives in a regime, None where nobody typed one in that reads."""
    if facts.composition is None:
        return None
    try:
        mixture = read_mixture(facts.composition)
        sheet = [read_hazard(one) for one in facts.hazards]
    except (MixtureError, UnknownHazard):
        return None
    found = classify(mixture, regime)
    given = [read_hazard(one) for one in found.hazards]
    coded = tuple(one for one in found.supplemental if one.startswith("EUH"))
    bare = SheetFacts(
        hazards=found.hazards,
        statements=coded,
        sentences=tuple(one for one in found.supplemental if one not in coded),
        not_classified=not found.hazards,
    )
    return Composed(
        label_parts(bare, regime, with_codes=True),
        found.needs_review,
        found.because,
        found.hazards,
        tuple(str(one) for one in lacking(sheet, given, regime)),
        tuple(str(one) for one in lacking(given, sheet, regime)),
    )


def beyond(sheet: list[Hazard], given: list[Hazard], regime: str) -> tuple[str, ...]:
    """Return a reason for each health or environment class of section 2 that the composition does not give.

    Then the sheet rests on a test or on an ingredient that it does not name, and no dilution can be reckoned.
    """
    return tuple(
        f"Section 2 of the sheet says {one}, which its composition does not give."
        for one in lacking(sheet, given, regime)
        if not physical(one)
    )


def lacking(these: list[Hazard], those: list[Hazard], regime: str) -> list[Hazard]:
    """Return which of these the others do not reach: no such outcome, or a milder category of it.

    A physical hazard that the others have no word on is passed over: it needs a test, never a sum.
    """
    reached = {outcome(one): severity(one) for one in gravest(those)}
    if any(one.of.name == "Skin Corr." for one in those):
        # What burns skin burns eyes: H314 says both.
        reached |= {outcome(one): "1" for one in these if one.of.group == "eye"}
    known = [
        one
        for one in these
        if regime in one.of.regimes and not (physical(one) and outcome(one) not in reached)
    ]
    return [one for one in known if reached.get(outcome(one), "9") > severity(one)]


def physical(hazard: Hazard) -> bool:
    """Return whether a hazard is physical: fire, pressure, metals."""
    return hazard.codes[0].startswith("H2")


def severity(hazard: Hazard) -> str:
    """Return the number of a category without its letter: 1A, 1B and plain 1 make the same label."""
    return hazard.of.category[:1] or "1"


def gravest(hazards: Iterable[Hazard]) -> list[Hazard]:
    """Return the hazards with only the gravest category of each outcome; of equals the first."""
    best: dict[tuple[str, ...], Hazard] = {}
    for one in hazards:
        known = best.setdefault(outcome(one), one)
        if severity(one) < severity(known):
            best[outcome(one)] = one
    return list(best.values())
