"""What a label is made of: what the shelf knows of a bottle, and its sheet's elements in words. Pure."""

from dataclasses import dataclass

from safety.hazards.classes import UnknownHazard
from safety.hazards.elements import Elements
from safety.hazards.facts import Note, SheetFacts, joined, label_parts
from safety.hazards.precautions import Precaution, choose, read
from safety.hazards.precautions import wording as in_words
from safety.hazards.statements import UnknownStatement, wording
from safety.print.words import ENGLISH, said_or_same, say


@dataclass(frozen=True)
class Bottle:
    """What goes on a bottle's label, in the reader's words; days are written ("26 Nov 2026").

    name: the product; sheet_name: its name as on its data sheet; facts: what its sheet (or the classification
    of its mix) says, None where there is none; has_hazards False: a thing that needs no sheet, like a towel.
    parts: of product and of water, by_weight or by volume. size: what it holds, as shown ("500 ml");
    capacity_ml: the same as a number, None if not known.
    maker, telephone: of the maker, "" if not known. more: facts that are printed as they are.
    """

    name: str
    code: str
    facts: SheetFacts | None = None
    regime: str = "EU"
    language: str = "en"
    has_hazards: bool = True
    parts: tuple[int, int] = (1, 0)
    by_weight: bool = False
    filled: bool = False
    capacity_ml: float | None = None
    size: str = ""
    lots: tuple[str, ...] = ()
    opened_on: str = ""
    mixed_on: str = ""
    mixed_by: str = ""
    use_by: str = ""
    use_by_says: str = ""
    because: str = ""
    maker: str = ""
    telephone: str = ""
    sheet_name: str = ""
    more: tuple[str, ...] = ()


@dataclass(frozen=True)
class Texts:
    """The elements of a sheet in the words of one regime and language."""

    elements: Elements
    statements: tuple[str, ...]
    precautions: tuple[str, ...]
    notice: str


def texts_of(bottle: Bottle) -> Texts:
    """Return the words of a bottle's elements. Nothing is ever silently “not classified”."""
    language, regime = bottle.language, bottle.regime
    if not bottle.has_hazards:
        return Texts(Elements(), (), (), "")
    parts = label_parts(bottle.facts, regime)
    facts = bottle.facts or SheetFacts()
    found = parts.elements
    codes = found.statements + found.supplemental if facts.hazards else facts.statements
    hazards = tuple(code for code in codes if not code.startswith("P"))
    try:
        statements = sentences(hazards, regime, language) + facts.sentences
    except (UnknownStatement, UnknownHazard) as odd:
        return Texts(Elements(), (), (), say("{odd} Treat as hazardous, ask the owner.", language, odd=odd))
    written = [code for code in facts.statements if code.startswith("P")]
    called_for = choose(facts.hazards, regime).printed if written else ()
    precautions = tuple(spoken(read(code, called_for), regime, language) for code in written)
    plain = said_or_same(parts.plain, language)
    if found.left_out:
        left = ", ".join(found.left_out)
        plain = say("No class in {regime}: {hazards}.", language, regime=regime, hazards=left)
    notice = joined(note_in(parts.note, language), plain)
    return Texts(found, () if bottle.facts is None else statements, precautions, notice)


def note_in(note: Note, language: str) -> str:
    """Return what is said of a mix; its reasons are known in English alone and stand on the bottle's page."""
    if language == ENGLISH or not note.words:
        return str(note)
    return say(note.short, language) if note.short else say(note.words, language, **dict(note.fills))


def sentences(codes: tuple[str, ...], regime: str, language: str) -> tuple[str, ...]:
    """Return the sentences of statements; raise UnknownStatement."""
    return tuple(wording(code, regime, language) for code in codes)


def spoken(one: Precaution, regime: str, language: str) -> str:
    """Return a P-statement in words, as written where the table lacks its words: it is never dropped."""
    try:
        return in_words(one, regime, language)
    except UnknownStatement:
        return str(one)
