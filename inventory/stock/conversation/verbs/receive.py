"""Receive: what, how many, lot, date, and once a delivery where to; asked where the symbol does not say."""

from dataclasses import replace
from typing import Any

from .. import words
from ..answers import Heard, Key
from ..turn import Turn
from .printed import DATE_KEYS, choose, read_date
from .received import NAME, settle
from .symbols import from_case, from_symbol, pack_of, read_out

NO_LOT = Key("Lot not given", "NO LOT")


def begin(turn: Turn) -> Heard:
    """RECEIVE: a new delivery starts."""
    fresh = replace(turn, state=replace(turn.state, bottle="", delivery={}))
    return fresh.ask(
        "Receive what?",
        "Scan the bar code of the first bottle, or our code of the product.",
        verb=NAME,
        waits="pack",
    )


def scanned(turn: Turn) -> Heard:
    """A maker's symbol, or our code of a product, begins a receipt; no bottle is in hand any more."""
    turn = replace(turn, state=replace(turn.state, bottle=""))
    pack = pack_of(turn, turn.said.code or turn.said.packs[0].gtin or "")
    if pack is None:
        return _nobody_knows(turn)
    slots: dict[str, Any] = {"of": turn.said.code or pack.gtin, "pack": pack.id}
    if len(turn.said.packs) > 1:
        return _which_reading(turn, slots)
    return _next(
        turn, slots | (from_symbol(turn.said.packs[0], pack) if turn.said.packs else from_case(pack))
    )


def unfinished(turn: Turn) -> Heard | None:
    """Hold back a line that would begin something else while a receipt is half said: nothing gets lost."""
    state, said = turn.state, turn.said
    pack = pack_of(turn, state.slots["of"], state.slots["pack"]) if state.slots.get("of") else None
    if state.verb != NAME or pack is None or not (said.command or said.code or said.packs):
        return None
    missing = _MISSING[state.waits]
    return turn.again(
        f"{pack.product.name} is not received yet: {missing} is missing.", "Say it first, or NO to let it go."
    )


def _nobody_knows(turn: Turn) -> Heard:
    if turn.said.code:
        return turn.unknown(
            "That product has no pack size yet.",
            "An owner types one on its page. It is set aside until then.",
            set_aside=True,
        )
    gtin = (turn.said.packs[0].gtin or "").lstrip("0")
    says = f"No product here has the number {gtin}. It is set aside."
    page = Key("Make the product", page="new_product", about=turn.said.packs[0].gtin or "")
    return turn.unknown(
        says,
        "Go on with the next bottle; an owner makes the product, then scan this one again.",
        page,
        set_aside=True,
    )


def _which_reading(turn: Turn, slots: dict[str, Any]) -> Heard:
    pack = pack_of(turn, slots["of"], slots["pack"])
    assert pack is not None
    read = [from_symbol(reading, pack) for reading in turn.said.packs]
    keys = tuple(Key(read_out(each), str(number)) for number, each in enumerate(read, 1))
    return turn.ask(
        " ".join(turn.said.asks), "Type 1 or 2.", *keys, verb=NAME, waits="reading", read=read, **slots
    )


def go_on(turn: Turn) -> Heard | None:
    """Take what is missing, one line at a time."""
    return _WAITS[turn.state.waits](turn) if turn.state.waits in _WAITS else None


def _next(turn: Turn, slots: dict[str, Any]) -> Heard:
    """Ask for the first thing that is missing, else settle."""
    pack = pack_of(turn, slots["of"], slots["pack"])
    assert pack is not None
    named, noun = pack.product.name, pack.product.noun
    if "count" not in slots:
        keys = tuple(Key(str(number), str(number)) for number in (1, 6, 12))
        return turn.ask(
            f"{named}: how many?",
            "Type the number, or scan each one and then DONE.",
            *keys,
            verb=NAME,
            waits="count",
            **slots,
        )
    if "lot" not in slots:
        many = words.counted(slots["count"], noun)
        return turn.ask(
            f"{many} of {named}: which lot?", "Type it as printed.", NO_LOT, verb=NAME, waits="lot", **slots
        )
    if pack.product.dated and "dates" not in slots:
        return turn.ask(
            f"{named}: which date is printed on it?",
            "Type it with its word: use by 03/2027, best before …, made ….",
            *DATE_KEYS,
            verb=NAME,
            waits="date",
            **slots,
        )
    if not (place := slots.get("place") or turn.state.delivery.get("place") or turn.facts.station_place):
        return turn.ask(
            f"Where does the {named} go?",
            "Scan the place, once for this delivery.",
            verb=NAME,
            waits="place",
            **slots,
        )
    return settle(turn, {**slots, "place": place})


def _count(turn: Turn) -> Heard | None:
    slots, said = dict(turn.state.slots), turn.said
    seen = int(slots.get("seen", 1))
    if said.number:
        return _next(turn, {**slots, "count": said.number})
    if said.command == "done":
        return _next(turn, {**slots, "count": seen})
    if said.packs and said.packs[0].gtin == slots["of"]:
        heard = turn.ask(
            f"{seen + 1} ×",
            "Scan the next one, then DONE, or type the number.",
            Key("That is all", "DONE", main=True),
            verb=NAME,
            waits="count",
            **{**slots, "seen": seen + 1},
        )
        return heard
    if said.words and not said.packs:
        return turn.again("How many? Type a number from 1.", "Or scan each one and then DONE.")
    return None


def _lot(turn: Turn) -> Heard | None:
    said, slots = turn.said, turn.state.slots
    if said.command == "no_lot" or said.text.lower() == "none":
        return _next(turn, {**slots, "lot": ""})
    if said.packs and said.packs[0].gtin == slots["of"]:
        reading = said.packs[0]
        return (
            _next(turn, {**slots, "lot": reading.lot})
            if reading.lot
            else turn.again("That is the product's number. Which lot is printed on it?", "", NO_LOT)
        )
    if not said.words or (said.packs and said.packs[0].gtin in turn.facts.packs):
        return None
    if len(said.text) > 40:
        return turn.again("A lot has at most 40 characters. Which lot is printed on it?", "", NO_LOT)
    return _next(turn, {**slots, "lot": said.text})


def _date(turn: Turn) -> Heard | None:
    said, slots = turn.said, turn.state.slots
    if said.command == "no_date" or said.text.lower() == "none":
        return _next(turn, {**slots, "dates": {}})
    if not said.words:
        return None
    return read_date(turn, lambda dates: _next(turn, {**slots, "dates": dates}))


def _which_date(turn: Turn) -> Heard | None:
    slots = {name: value for name, value in turn.state.slots.items() if name not in {"readings", "meaning"}}
    return choose(turn, lambda dates: _next(turn, {**slots, "dates": dates}))


def _reading(turn: Turn) -> Heard | None:
    slots = dict(turn.state.slots)
    read = slots.pop("read")
    if turn.said.number is None or not 1 <= turn.said.number <= len(read):
        return turn.again("Which of them stands on the pack? Type 1 or 2.") if turn.said.words else None
    return _next(turn, slots | read[turn.said.number - 1])


def _place(turn: Turn) -> Heard | None:
    if turn.said.kind != "place" or turn.said.code not in turn.facts.places:
        return None
    place = turn.facts.places[turn.said.code]
    if place.can:
        return turn.again(f"{place.name} is a can: nothing is kept in it.", "Scan the place where it goes.")
    return _next(turn, {**turn.state.slots, "place": place.code})


def _first_pack(turn: Turn) -> Heard | None:
    return scanned(turn) if turn.said.packs or turn.said.kind == "product" else None


_MISSING = {
    "count": "how many",
    "lot": "the lot",
    "date": "the date",
    "which_date": "the date",
    "reading": "which reading",
    "place": "the place",
}
_WAITS = {
    "pack": _first_pack,
    "count": _count,
    "lot": _lot,
    "date": _date,
    "which_date": _which_date,
    "reading": _reading,
    "place": _place,
}
