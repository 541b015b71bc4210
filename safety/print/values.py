"""What a label or a poster says, ready to be drawn: every decision has been taken before.

Texts are whole and already in the reader's words; nothing here is looked up, shortened or judged.
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class LabelContent:
    """One label, every word of it whole: what does not fit is refused, never dropped.

    use_by: a written day ("26 Nov 2026"), use_by_says what stands before it; notice: bold, before all else;
    precautions: P-statements; supplier: the maker's name and telephone; advice: bold, the last line (where to
    stick it, where the full label is); fill_says: what stands over the boxes that a date is written in, ""
    where there are none; hole: a strip is kept for the hole of a tie-on tag.
    side_mm, side_if_possible_mm: the least side of a diamond, and the side it has where there is room (0: the
    larger text goes first); x_height_mm: the least height of a small x. first: the smallest size to try, and
    first_why in a sentence. form, regime, language: what was asked for.
    """

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
    precautions: tuple[str, ...] = ()
    supplier: str = ""
    advice: str = ""
    fill_says: str = ""
    hole: bool = False
    side_mm: float = 10.0
    side_if_possible_mm: float = 0.0
    x_height_mm: float = 1.2
    first: str = "medium"
    first_why: str = ""
    form: str = "secondary"
    regime: str = "EU"
    language: str = "en"


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
    first_aid: str = ""
    volume_m3: int | None = None
    air_m3_h: int | None = None


@dataclass(frozen=True)
class Danger:
    """One pictogram in plain words, with the products and codes it stands for.

    lines: who does what, a line a danger, the heading's own first: no product is named under another's.
    """

    pictogram: str
    heading: str
    products: tuple[str, ...]
    lines: tuple[str, ...]
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

    def said(self) -> dict[str, object]:
        """Return the product for scripts."""
        return {
            "name": self.name,
            "pictograms": list(self.pictograms),
            "signal_word": self.signal_word,
            "statements": list(self.statements),
            "notice": self.notice or None,
        }


@dataclass(frozen=True)
class Masthead:
    """What every sheet carries at its head and foot. issue: which paper this is and until when it holds."""

    name: str
    url: str
    issue: str
    language: str = "en"
    read_at_m: float = 2.0
    binder_at: str = ""


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
    language: str = "en"


@dataclass(frozen=True)
class CardSection:
    """One part of a card: its title and its sentences."""

    title: str
    lines: tuple[Line, ...]


@dataclass(frozen=True)
class CardContent:
    """One product on one side of A4; about: maker and sheet, in a sentence."""

    masthead: Masthead
    about: str
    product: PosterProduct
    sections: tuple[CardSection, ...]
    equipment: tuple[Equipment, ...]


@dataclass(frozen=True)
class CabinetContent:
    """What stands in one place: names, diamonds, words, and what of it must never meet."""

    masthead: Masthead
    about: tuple[str, ...]
    signal_word: str | None
    products: tuple[PosterProduct, ...]
    never: tuple[NeverPair, ...]
    notes: tuple[str, ...] = ()


@dataclass(frozen=True)
class Chemical:
    """One line of the shop's list: the name as on its sheet, the maker, the sheet's day, the places."""

    name: str
    maker: str
    sheet: str
    places: str
    signal_word: str | None = None


@dataclass(frozen=True)
class ChemicalsContent:
    """A shop's list of hazardous chemicals."""

    masthead: Masthead
    about: str
    rows: tuple[Chemical, ...]
    notes: tuple[str, ...] = ()
