"""What a label or a poster says, ready to be drawn: every decision has been taken before.

Texts are whole and already in the reader's words; nothing here is looked up, shortened or judged.
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class LabelContent:
    """One label. `use_by` is a written day ("26 Nov 2026"), `use_by_says` what stands before it."""

    name: str
    code: str
    use_by: str = ""
    use_by_says: str = "Use by"
    because: str = ""
    pictograms: tuple[str, ...] = ()
    signal_word: str | None = None
    statements: tuple[str, ...] = ()
    facts: tuple[str, ...] = ()
    notice: str = ""


@dataclass(frozen=True)
class PlaceFacts:
    """What a shop says about one of its places, as it stands on the wall."""

    name: str
    task: str = ""
    shop: str = ""
    address: str = ""
    eyewash: str = ""
    extinguisher: str = ""
    spill_kit: str = ""
    emergency_number: str = ""
    poison_centre: str = ""
    ventilation: str = ""
    binder_at: str = ""


@dataclass(frozen=True)
class Danger:
    """One pictogram in plain words, with the products and codes it stands for.

    says: the products as they are written under it, shortened where they are many.
    """

    pictogram: str
    heading: str
    also: str
    products: tuple[str, ...]
    says: str
    codes: tuple[str, ...]


@dataclass(frozen=True)
class Equipment:
    """One sign before the work starts: eyes, hands, breath, body (blue) or flame (red, prohibition)."""

    sign: str
    word: str
    lines: tuple[str, ...]


@dataclass(frozen=True)
class NeverPair:
    """Two things that must not meet, and what happens if they do."""

    one: str
    other: str
    why: str


@dataclass(frozen=True)
class Line:
    """A sentence; strong where it must not be missed."""

    text: str
    strong: bool = False


@dataclass(frozen=True)
class FirstAid:
    """What to do, in one far-legible line (`lead`) and the sentences below it."""

    title: str
    lead: str
    lines: tuple[Line, ...] = ()


@dataclass(frozen=True)
class PosterProduct:
    """One product of the place, with its label elements in full."""

    name: str
    pictograms: tuple[str, ...] = ()
    signal_word: str | None = None
    statements: tuple[str, ...] = ()
    wear: tuple[str, ...] = ()
    notice: str = ""


@dataclass(frozen=True)
class PosterContent:
    """Everything that one place's poster says. Days are written out; `read_at_m` in metres."""

    place: PlaceFacts
    signal_word: str | None
    dangers: tuple[Danger, ...]
    equipment: tuple[Equipment, ...]
    never: tuple[NeverPair, ...]
    first_aid: tuple[FirstAid, ...]
    mishaps: tuple[FirstAid, ...]
    products: tuple[PosterProduct, ...]
    unknown: tuple[str, ...]
    regime: str
    url: str
    version: int
    printed_on: str
    replace_after: str
    read_at_m: float = 2.0
    caution: str = "The product's own label and data sheet, local codes and licensed practice come first."
