"""What a new person is shown on the first day: hazards here, sheets, spill, eyewash, equipment.

It speaks the languages of `safety/tables/words.csv`; what a sheet or the shop wrote stays as it was written.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from safety.print.words import ENGLISH, SHEETS_SPEAK, from_memory, said_or_same, say

TITLE = "The first day here"
GEL = (
    "A fluoride on the skin: rinse at once; with the gel at hand 5 minutes are enough, else go on for 15. "
    "Rub the gel in and renew it until help takes over. Always to hospital, also without pain. Eyes: water "
    "only, no gel."
)
EYES = "Something in the eye: rinse at once for 15 minutes with the lids open, lenses out, then call."
SPILL = (
    "Warn the others, flames off, doors open. Gloves on before anything else. What you do not know, leave."
)
NOTHING = "No hazardous product stands or is admitted here."
BEFORE = "No acid, no fluoride and no respirator alone before this sheet is signed."
NOT_WORN = "Nobody has said yet what is worn here: ask before the first bottle is opened."
NO_SHEETS = "Nobody has said where they are: ask the owner."
AS_WRITTEN = "Names and places stand as this shop wrote them."
FROM_MEMORY = "Translated from memory, not yet read by a native speaker of the trade: what is unclear, ask."


@dataclass(frozen=True)
class Here:
    """A hazardous product in a place, as its confirmed sheet has it.

    word: the signal word in English; worn: a part of the body (Hands) and what its sheet names for it.
    """

    name: str
    word: str
    dangers: tuple[str, ...]
    worn: tuple[tuple[str, str], ...] = ()
    spill: str = ""
    fluoride: bool = False
    isocyanate: bool = False

    @property
    def grave(self) -> bool:
        """Whether it is named first."""
        return self.fluoride or self.isocyanate or self.word == "Danger"


@dataclass(frozen=True)
class Room:
    """A place where people work, what is dangerous in it, and where its rescue stands."""

    name: str
    products: tuple[Here, ...] = ()
    eyewash: str = ""
    spill_kit: str = ""
    extinguisher: str = ""
    first_aid: str = ""


@dataclass(frozen=True)
class House:
    """What holds for all rooms: who is called, where sheets and gel are, what is worn."""

    name: str
    emergency_number: str
    poison_centre: str = ""
    binder_at: str = ""
    sheets_at: str = ""
    gel: tuple[str, ...] = ()
    bottles: tuple[str, ...] = ()
    worn: tuple[str, ...] = field(default=())


@dataclass(frozen=True)
class Section:
    """A heading and its lines, on screen and on paper alike."""

    title: str
    lines: tuple[str, ...]


def notes(language: str) -> tuple[str, ...]:
    """Return what a reader has to know of the language: what is not in it, and who has not read it yet."""
    if language == ENGLISH:
        return ()
    known = [say(SHEETS_SPEAK, language), say(AS_WRITTEN, language)]
    return (*known, say(FROM_MEMORY, language)) if from_memory(language) else tuple(known)


def sections(house: House, rooms: Sequence[Room], language: str = ENGLISH) -> tuple[Section, ...]:
    """Return what the sheet says, part by part; a part about which nothing is known says so."""
    parts = (
        ("Where it is dangerous", _where(rooms, language) or [say(NOTHING, language)]),
        ("What the dangerous ones do", _dangers(rooms, language) or [say("None is known.", language)]),
        ("What is worn", _worn(house, rooms, language)),
        ("Data sheets", _sheets(house, language)),
        ("Eyes and skin", _eyes(house, rooms, language)),
        ("Spill and fire", _spill(rooms, language)),
        ("Who is called", _called(house, language)),
        ("Until this is signed", [say(BEFORE, language)]),
    )
    return tuple(Section(say(title, language), tuple(lines)) for title, lines in parts)


def _where(rooms: Iterable[Room], language: str) -> list[str]:
    """Return by room the products by name, the grave ones first and by themselves."""
    return [_in_room(room, language) for room in rooms if room.products]


def _in_room(room: Room, language: str) -> str:
    grave = ", ".join(sorted(one.name for one in room.products if one.grave))
    milder = ", ".join(sorted(one.name for one in room.products if not one.grave))
    words = "{room}. Dangerous: {grave}." if grave else "{room}. Milder: {milder}."
    if grave and milder:
        words = "{room}. Dangerous: {grave}; milder: {milder}."
    return say(words, language, room=room.name, grave=grave, milder=milder)


def _grave(rooms: Iterable[Room]) -> list[Here]:
    """Return each of the grave ones once, by name."""
    return [
        one
        for _, one in sorted({one.name: one for room in rooms for one in room.products if one.grave}.items())
    ]


def _dangers(rooms: Iterable[Room], language: str) -> list[str]:
    """Return what each of the grave ones does, in full, once."""
    return [f"{one.name}. {_full(one, language)}" for one in _grave(rooms)]


def _full(one: Here, language: str) -> str:
    word = [f"{said_or_same(one.word, language)}."] * bool(one.word)
    fluoride = [say("Holds a fluoride.", language)] * one.fluoride
    isocyanate = [say("Holds isocyanates.", language)] * one.isocyanate
    return " ".join((*word, *one.dangers, *fluoride, *isocyanate))


def _worn(house: House, rooms: Iterable[Room], language: str) -> list[str]:
    lines = [f"{one.name}: {_by_part(one, language)}." for one in _grave(rooms) if one.worn]
    if house.worn:
        lines.append(say("It lies here: {where}.", language, where="; ".join(house.worn)))
    return lines or [say(NOT_WORN, language)]


def _by_part(one: Here, language: str) -> str:
    return "; ".join(f"{say(part, language).lower()}: {text}" for part, text in one.worn)


def _sheets(house: House, language: str) -> list[str]:
    known = (
        ("Printed: {where}.", house.binder_at),
        ("On any phone in the shop, without a password: {where}", house.sheets_at),
    )
    said = [say(words, language, where=where) for words, where in known if where]
    return said or [say(NO_SHEETS, language)]


def _of_rooms(words: str, rooms: Iterable[Room], thing: str, language: str) -> list[str]:
    """Return where a thing of each room stands, as far as somebody entered it."""
    known = [(room.name, getattr(room, thing)) for room in rooms]
    return [say(words, language, room=room, where=where) for room, where in known if where]


def _eyes(house: House, rooms: Sequence[Room], language: str) -> list[str]:
    lines = [say(EYES, language), *_of_rooms("Eyewash of {room}: {where}.", rooms, "eyewash", language)]
    if house.bottles:
        lines.append(say("Eyewash bottle: {where}.", language, where="; ".join(house.bottles)))
    if any(one.fluoride for room in rooms for one in room.products):
        gel = [say("Gel: {where}.", language, where="; ".join(house.gel))] if house.gel else []
        lines += [say(GEL, language), *gel]
    return lines + _of_rooms("First aid of {room}: {where}.", rooms, "first_aid", language)


def _spill(rooms: Sequence[Room], language: str) -> list[str]:
    kits = _of_rooms("Spill kit of {room}: {where}.", rooms, "spill_kit", language)
    own = [f"{one.name}: {one.spill}" for one in _grave(rooms) if one.spill]
    fire = _of_rooms("Extinguisher of {room}: {where}.", rooms, "extinguisher", language)
    return [say(SPILL, language), *kits, *own, *fire]


def _called(house: House, language: str) -> list[str]:
    lines = [say("Emergency: {number}.", language, number=house.emergency_number)]
    if house.poison_centre:
        lines.append(f"{say('Poison centre: {number}', language, number=house.poison_centre)}.")
    return [*lines, say("The owner, of whatever happened.", language)]
