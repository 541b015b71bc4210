"""What the rules say of a small container, of one for immediate use, and which label stock stands what. Pure.

Every answer carries its source and mark: S the source was read, S2 a faithful copy, M from memory, P common
practice without a source.
"""

from dataclasses import dataclass
from functools import cache

from safety.hazards.classes import read_hazard
from safety.hazards.elements import elements
from safety.hazards.facts import SheetFacts, supplemental
from safety.hazards.tables import rows

SURE = {
    "S": "read in the source",
    "S2": "read in a faithful copy",
    "M": "from memory",
    "P": "common practice, no source",
    "S, in part M": "read in the source, in part from memory",
}


@dataclass(frozen=True)
class Ruling:
    """One answer in a sentence, where it comes from, and how sure that is (`mark`)."""

    says: str
    source: str
    mark: str

    @property
    def sure(self) -> str:
        """Return the mark in words."""
        return SURE.get(self.mark, self.mark)


@dataclass(frozen=True)
class ImmediateUse:
    """Whether a container that is emptied within the shift may go without a label, on which terms.

    exempt: without any words; names_content: its content must still be named on it; caution goes with both.
    """

    exempt: bool
    names_content: bool
    ruling: Ruling
    caution: str


CAUTION = (
    "Never set it down unattended, never hand it on, never leave it for the next shift: what is left then "
    "needs its label. Acids, coatings and solvents get one at once (our rule)."
)
IMMEDIATE = {
    "US": ImmediateUse(
        True,
        False,
        Ruling(
            "Needs no label if the person who fills it uses it up within the same shift.",
            "29 CFR 1910.1200(f)(8)",
            "M",
        ),
        CAUTION,
    ),
    "CA": ImmediateUse(
        False,
        True,
        Ruling(
            "Needs no full workplace label for one person within one shift; its content must still be named "
            "on it.",
            "provincial workplace law (WHMIS)",
            "S2",
        ),
        CAUTION,
    ),
    "EU": ImmediateUse(
        False,
        True,
        Ruling(
            "Brief or often changing contents are exempt only where other means protect equally, such as "
            "written instructions and training. Until yours are written down, label it.",
            "Directive 92/58/EEC, Annex III",
            "S2",
        ),
        CAUTION,
    ),
}
NO_RULE = ImmediateUse(
    False, True, Ruling("Has no rule of its own for immediate use: label it.", "UN GHS Rev 10", "M"), CAUTION
)


def immediate_use(regime: str) -> ImmediateUse:
    """Return what a regime says of a container for immediate use within the shift."""
    return IMMEDIATE.get(regime, NO_RULE)


class NotSmall(ValueError):
    """A container that is too large for the small form, or whose size is not known."""


@dataclass(frozen=True)
class Small:
    """What a small container's label carries: codes of statements, P-statements or not, or the name alone."""

    statements: tuple[str, ...]
    precautions: bool
    identifier_only: bool
    outer_package: bool
    ruling: Ruling


SMALL_UP_TO_ML = {"US": 100, "CA": 100, "EU": 125}
US_SMALLEST_ML = 3
# CLP Annex I, 1.5.2. Not for the public: bottles that a shop fills for its own people.
DROPPED_TO_125_ML = {
    "Flam. Liq.": ("2", "3"),
    "Ox. Liq.": ("2", "3"),
    "Ox. Sol.": ("2", "3"),
    "Press. Gas": ("",),
    "Press. Gas (Comp.)": ("",),
    "Press. Gas (Liq.)": ("",),
    "Press. Gas (Diss.)": ("",),
    "Press. Gas (Ref. Liq.)": ("",),
    "Flam. Sol.": ("1", "2"),
    "Self-heat.": ("2",),
    "Skin Irrit.": ("2",),
    "Eye Irrit.": ("2", "2A", "2B"),
    "Aquatic Acute": ("1",),
    "Aquatic Chronic": ("1", "2"),
}
DROPPED_NOT_PUBLIC = {"Acute Tox.": ("4",), "STOT SE": ("2", "3"), "STOT RE": ("2",)}


def small(facts: SheetFacts, regime: str, capacity_ml: float | None, public: bool = False) -> Small:
    """Return what a small container's label carries. Raises NotSmall, UnknownHazard.

    public: the container is given to the public, whom the EU spares fewer statements.
    """
    if regime not in SMALL_UP_TO_ML:
        raise NotSmall(f"{regime} has no form for small containers: take the full one.")
    most = SMALL_UP_TO_ML[regime]
    if capacity_ml is None:
        raise NotSmall("How much it holds is not known: the small form needs a size in ml.")
    if capacity_ml > most:
        raise NotSmall(
            f"It holds {capacity_ml:g} ml; the small form ends at {most} ml in {regime}. Take the full one."
        )
    if regime == "EU":
        return _eu(facts, public)
    if regime == "CA":
        says = "Up to 100 ml hazard and precautionary statements may be left out."
        return Small((), False, False, False, Ruling(says, "SOR/2015-17 s. 5.4", "S"))
    if capacity_ml <= US_SMALLEST_ML:
        says = "Up to 3 ml the identifier is enough where a label would interfere with its use."
        return Small((), False, True, False, Ruling(says, "29 CFR 1910.1200(f)(12)", "S2"))
    says = (
        "Up to 100 ml, and only where no pull-out, fold-back or tag is feasible: identifier, pictograms, "
        "signal word, maker’s name and telephone, and that the full label is on the outer package."
    )
    return Small((), False, False, True, Ruling(says, "29 CFR 1910.1200(f)(12)", "S2"))


def _eu(facts: SheetFacts, public: bool) -> Small:
    kept = [hazard for hazard in facts.hazards if not _spared(hazard, public)]
    found = elements([*kept, *supplemental(facts)], "EU")
    # Which P-statement belongs to which class is not known here: they go only where no class keeps its own.
    says = "Up to 125 ml H and P may be left out for the milder classes, never for the others."
    return Small(
        found.statements + found.supplemental,
        bool(kept),
        False,
        False,
        Ruling(says, "CLP Annex I, 1.5.2", "S, in part M"),
    )


def _spared(hazard: str, public: bool) -> bool:
    of = read_hazard(hazard).of
    spared = DROPPED_TO_125_ML if public else DROPPED_TO_125_ML | DROPPED_NOT_PUBLIC
    return of.category in spared.get(of.name, ())


@dataclass(frozen=True)
class LabelStock:
    """A kind of label, what it stands ("yes", "short", "no"), and what it is for."""

    stock: str
    printed_by: str
    washing: str
    solvent: str
    acid: str
    use_it_for: str
    mark: str


@cache
def label_stock() -> tuple[LabelStock, ...]:
    """Return which label stock stands what (common practice, no source)."""
    return tuple(
        LabelStock(
            row["stock"],
            row["print"],
            row["washing"],
            row["solvent"],
            row["acid"],
            row["use_it_for"],
            row["mark"],
        )
        for row in rows("label_stock")
    )
