"""What a confirmed data sheet says, as plain values: what labels, posters and checks are made from."""

from dataclasses import dataclass, field
from typing import Any

from safety.hazards.classes import UnknownHazard, read_hazard
from safety.hazards.elements import Elements, elements
from safety.hazards.statements import UnknownStatement, is_national, wording

ACIDS = ("Skin Corr.", "Met. Corr.")
NO_SHEET = "No data sheet yet: treat as hazardous, ask the owner."
NOT_TYPED = "Its sheet is here, its hazards are not typed in yet: treat as hazardous, ask the owner."
NOT_CLASSIFIED = "Not classified as hazardous; see its sheet."


@dataclass(frozen=True)
class Measured:
    """What was measured on a mix of `parts` (of product, of water by volume); None was not measured."""

    parts: tuple[int, int]
    ph: float | None = None
    flash_point_c: float | None = None


@dataclass(frozen=True)
class Note:
    """A sentence of ours about a mix, with what fills its blanks.

    short: what is said in another language, where what fills it is only known in English.
    """

    words: str = ""
    fills: tuple[tuple[str, object], ...] = ()
    short: str = ""

    def __str__(self) -> str:
        return self.words.format(**dict(self.fills))


NO_NOTE = Note()


@dataclass(frozen=True)
class SheetFacts:
    """One confirmed version of a sheet. never_with: (with what, why).

    composition: sections 3 and 9 as the document of a mixture, None where nobody typed section 3 in.
    note: of a mix, what its label says first about how its classes were found.
    sentences: what a mixture's label must say that has no code, like how much is of unknown toxicity.
    """

    hazards: tuple[str, ...] = ()
    statements: tuple[str, ...] = ()
    not_classified: bool = False
    holds_fluoride: bool = False
    holds_isocyanate: bool = False
    wear_eyes: str = ""
    wear_hands: str = ""
    wear_breath: str = ""
    wear_body: str = ""
    ventilation: str = ""
    aid_eyes: str = ""
    aid_skin: str = ""
    aid_breath: str = ""
    aid_swallowed: str = ""
    fire: str = ""
    spill: str = ""
    never_with: tuple[tuple[str, str], ...] = ()
    sentences: tuple[str, ...] = ()
    note: Note = NO_NOTE
    mixes: tuple[Measured, ...] = ()
    composition: dict[str, Any] | None = field(default=None, hash=False)


@dataclass(frozen=True)
class LabelParts:
    """The elements of one product with its texts; notice where the sheet cannot carry a label.

    note: what is said of a mix before it.
    """

    elements: Elements
    statements: tuple[str, ...]
    plain: str = ""
    note: Note = NO_NOTE

    @property
    def notice(self) -> str:
        """Both in English."""
        return joined(str(self.note), self.plain)


def is_grave(facts: SheetFacts) -> bool:
    """Return whether missing this sheet's facts can maim: acids and corrosives, fluorides, isocyanates."""
    corrosive = any(hazard.strip().startswith(ACIDS) for hazard in facts.hazards)
    return corrosive or facts.holds_fluoride or facts.holds_isocyanate


def label_parts(facts: SheetFacts | None, regime: str, with_codes: bool = False) -> LabelParts:
    """Return what a label says of a product. Nothing is ever silently “not classified”.

    with_codes puts the code before each text ("H225 Highly flammable…").
    """
    if facts is None:
        return LabelParts(Elements(), (), NO_SHEET)
    try:
        found = elements([*facts.hazards, *supplemental(facts)], regime)
        codes = found.statements + found.supplemental
        if not facts.hazards:
            codes = facts.statements
        texts = tuple(said(code, regime, with_codes) for code in codes if not code.startswith("P"))
        texts += facts.sentences
    except (UnknownHazard, UnknownStatement) as odd:
        return LabelParts(Elements(), (), f"{odd} Treat as hazardous, ask the owner.")
    if facts.hazards:
        left = f"No class in {regime}: {', '.join(found.left_out)}." if found.left_out else ""
        return LabelParts(found, texts, left, facts.note)
    plain = NOT_CLASSIFIED if facts.not_classified else NOT_TYPED
    return LabelParts(Elements(), texts, plain, facts.note)


def joined(*sentences: str) -> str:
    """Return the sentences that are there as one notice."""
    return " ".join(one for one in sentences if one)


def supplemental(facts: SheetFacts) -> list[str]:
    """Return the EUH statements that the sheet prints beside its classes."""
    classes = {code for hazard in facts.hazards for code in read_hazard(hazard).codes}
    return [text for text in facts.statements if text.startswith("EUH") and text not in classes]


def said(code: str, regime: str, with_codes: bool) -> str:
    """Return a statement's text, with its code before it if asked."""
    text = wording(code, regime)
    shown = code.partition(" ")[0]
    return f"{shown} {text}" if with_codes and not is_national(shown) else text
