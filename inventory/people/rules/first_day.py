"""What a new person is shown on the first day: hazards here, sheets, spill, eyewash, equipment."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

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


@dataclass(frozen=True)
class Here:
    """A hazardous product in a place, as its confirmed sheet has it."""

    name: str
    word: str
    dangers: tuple[str, ...]
    worn: tuple[str, ...] = ()
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


def sections(house: House, rooms: Sequence[Room]) -> tuple[Section, ...]:
    """Return what the sheet says, part by part; a part about which nothing is known says so."""
    return (
        Section("Where it is dangerous", tuple(_where(rooms)) or (NOTHING,)),
        Section("What the dangerous ones do", tuple(_dangers(rooms)) or ("None is known.",)),
        Section("What is worn", tuple(_worn(house, rooms))),
        Section("Data sheets", tuple(_sheets(house))),
        Section("Eyes and skin", tuple(_eyes(house, rooms))),
        Section("Spill and fire", tuple(_spill(rooms))),
        Section("Who is called", tuple(_called(house))),
        Section("Until this is signed", (BEFORE,)),
    )


def _where(rooms: Iterable[Room]) -> list[str]:
    """Return by room the products by name, the grave ones first and by themselves."""
    lines = []
    for room in rooms:
        grave = sorted(one.name for one in room.products if one.grave)
        milder = sorted(one.name for one in room.products if not one.grave)
        said = (f"dangerous: {', '.join(grave)}" * bool(grave), f"milder: {', '.join(milder)}" * bool(milder))
        if room.products:
            lines.append(f"{room.name}. {_capital('; '.join(part for part in said if part))}.")
    return lines


def _dangers(rooms: Iterable[Room]) -> list[str]:
    """Return what each of the grave ones does, in full, once."""
    grave = {one.name: one for room in rooms for one in room.products if one.grave}
    return [f"{name}. {_full(one)}" for name, one in sorted(grave.items())]


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _full(one: Here) -> str:
    own = ["Holds a fluoride."] * one.fluoride + ["Holds isocyanates."] * one.isocyanate
    return " ".join((*([f"{one.word}."] if one.word else []), *one.dangers, *own))


def _worn(house: House, rooms: Iterable[Room]) -> list[str]:
    grave = {one.name: one for room in rooms for one in room.products if one.grave and one.worn}
    lines = [f"{name}: {'; '.join(one.worn)}." for name, one in sorted(grave.items())]
    if house.worn:
        lines.append(f"It lies here: {'; '.join(house.worn)}.")
    return lines or ["Nobody has said yet what is worn here: ask before the first bottle is opened."]


def _sheets(house: House) -> list[str]:
    binder = f"Printed: {house.binder_at}." if house.binder_at else ""
    online = f"On any phone in the shop, without a password: {house.sheets_at}" if house.sheets_at else ""
    return [line for line in (binder, online) if line] or ["Nobody has said where they are: ask the owner."]


def _eyes(house: House, rooms: Iterable[Room]) -> list[str]:
    places = [f"Eyewash of {room.name}: {room.eyewash}." for room in rooms if room.eyewash]
    bottles = [f"Eyewash bottle: {where}." for where in house.bottles]
    lines = [EYES, *places, *bottles]
    if any(one.fluoride for room in rooms for one in room.products):
        lines += [GEL, *(f"Gel: {where}." for where in house.gel)]
    return lines + [f"First aid of {room.name}: {room.first_aid}." for room in rooms if room.first_aid]


def _spill(rooms: Sequence[Room]) -> list[str]:
    kits = [f"Spill kit of {room.name}: {room.spill_kit}." for room in rooms if room.spill_kit]
    own = {one.name: one.spill for room in rooms for one in room.products if one.grave and one.spill}
    fire = [f"Extinguisher of {room.name}: {room.extinguisher}." for room in rooms if room.extinguisher]
    return [SPILL, *kits, *(f"{name}: {text}" for name, text in sorted(own.items())), *fire]


def _called(house: House) -> list[str]:
    poison = [f"Poison centre: {house.poison_centre}."] if house.poison_centre else []
    return [f"Emergency: {house.emergency_number}.", *poison, "The owner, of whatever happened."]
