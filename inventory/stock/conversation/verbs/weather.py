"""Weather: what the instruments in a bay read, in one line or value by value off the card on the wall."""

from datetime import datetime, timedelta
from decimal import Decimal

from inventory.codes import AIR, HUMIDITY, PANEL

from ..answers import Heard, Key
from ..facts import PlaceFacts
from ..lines import Said
from ..measured import ORDER, Measured, in_degrees
from ..state import State
from ..turn import Turn

NAME = "weather"
LIKE = "Say it like this: air 21.4 panel 19 humidity 52."
LIKE_US = "Say it like this: air 70 F panel 66 F humidity 52."
COLDEST, HOTTEST, HOTTEST_PANEL = Decimal(-40), Decimal(60), Decimal(120)
# Values of one reading belong together: air and a panel move on meanwhile (our own figure, no source).
WITHIN = timedelta(minutes=10)
UNMEASURED = Key("Panel not measured", "panel not measured")
Values = dict[str, str | None]


def read(turn: Turn) -> Heard:
    """Take what was said of a reading, keep it once it is whole, else say what is missing."""
    slots = turn.state.slots
    place = turn.facts.places.get(slots.get("place") or turn.state.place or turn.facts.station_at)
    if place is None:
        return turn.unknown("Measured where? No bay is in hand.", "Scan the bay, or a car that is in it.")
    return _refused(turn) or _taken(turn, place)


def go_on(turn: Turn) -> Heard | None:
    """Take one more value of the reading under way; what is no value of it ends it."""
    said, values = turn.said, turn.state.slots["values"]
    if said.measured:
        return read(turn)
    if said.number is not None:
        return turn.again(
            f"{said.number} of what?", f"Scan it off the card, or type {_typed(turn)}.", *_keys(values)
        )
    if said.command == "done":
        return turn.again("The reading is not whole yet.", _now(values), *_keys(values))
    return None


def too_late(state: State, said: Said, at: datetime) -> bool:
    """Say whether a reading under way is too old to be finished, so that this line begins anew.

    An UNDO or a NO still means the reading and never the act before it; an emergency waits for nothing.
    """
    if state.verb != NAME or said.command in {"undo", "no", "emergency"}:
        return False
    return at - datetime.fromisoformat(state.slots["begun"]) > WITHIN


def left(state: State, heard: Heard) -> bool:
    """Say whether a reading was under way that is neither kept by this line nor under way any more."""
    kept = any(effect["does"] == NAME for effect in heard.effects)
    return state.verb == NAME and heard.state.verb != NAME and not kept


def dropped(place: PlaceFacts | None, values: Values, *, late: bool) -> str:
    """Return how a reading is let go, and why it was not kept."""
    begun = f"The reading begun in {place.name}" if place else "The reading that was begun"
    minutes = int(WITHIN.total_seconds() // 60)
    why = f"after {minutes} minutes without" if late else "without"
    return f"{begun} is dropped {why} {' and '.join(_missing(values))}."


def _refused(turn: Turn) -> Heard | None:
    for one in turn.said.measured:
        if (kept := one.kept) is None:
            continue
        if one.quantity == HUMIDITY and not 0 < kept <= 100:
            return turn.unknown(f"Humidity lies above 0 and up to 100 %, not {kept}.", _way_out(turn))
        if one.quantity != HUMIDITY and turn.facts.shop.system == "us" and not one.unit:
            return _which_degrees(turn, one)
        if one.quantity == AIR and not COLDEST <= kept <= HOTTEST:
            return _no_bay(turn)
        if one.quantity == PANEL and not COLDEST <= kept <= HOTTEST_PANEL:
            return _no_bay(turn)
    return None


def _no_bay(turn: Turn) -> Heard:
    if turn.facts.shop.system == "us":
        return turn.unknown("No bay is like that: air -40 to 140 °F, a panel to 248 °F.", LIKE_US)
    return turn.unknown("No bay is like that: air -40 to 60 °C, a panel to 120 °C.", LIKE)


def _which_degrees(turn: Turn, one: Measured) -> Heard:
    said = f"{one.quantity} {one.amount}"
    return turn.unknown(
        f"Is {said} in °F or in °C?",
        f"Say {said} F or {said} C, or scan it off the card.",
        *(Key(f"{one.amount} °{unit}", f"{said} {unit}") for unit in ("F", "C")),
    )


def _taken(turn: Turn, place: PlaceFacts) -> Heard:
    slots = turn.state.slots
    said = {one.quantity: None if one.kept is None else str(one.kept) for one in turn.said.measured}
    values: Values = slots.get("values", {}) | said
    # A line that says the rest may leave the panel out, as it may stay unmeasured.
    if not _missing(values) or {AIR, HUMIDITY} <= said.keys():
        return _kept(turn, place, values)
    begun = slots.get("begun", turn.facts.at.isoformat())
    # A sentence, not a question: of scans that waited for a badge, what was kept in the end is what is said.
    return turn.tell(
        f"{place.name}: {_so_far(turn, values)}.", _now(values), *_keys(values),
        verb=NAME, waits="values", slots={"place": place.code, "begun": begun, "values": values},
    )  # fmt: skip


def _keys(values: Values) -> tuple[Key, ...]:
    return () if PANEL in values else (UNMEASURED,)


def _kept(turn: Turn, place: PlaceFacts, values: Values) -> Heard:
    effect = {
        "does": "weather", "place": place.code, "at": turn.facts.at.isoformat(),
        "air_c": values[AIR], "panel_c": values.get(PANEL), "humidity": values[HUMIDITY],
    }  # fmt: skip
    return turn.recorded(
        f"{place.name}: {_so_far(turn, {PANEL: None, **values})}.",
        "The check of a coat counts it for two hours.",
        Key("Undo", "UNDO"),
        effects=(effect,),
        state=turn.state.idle(),
        what=f"the reading in {place.name}",
    )


def _so_far(turn: Turn, values: Values) -> str:
    return ", ".join(_said(turn, quantity, values[quantity]) for quantity in ORDER if quantity in values)


def _said(turn: Turn, quantity: str, value: str | None) -> str:
    if value is None:
        return f"{quantity} not measured"
    if quantity == HUMIDITY:
        return f"humidity {value} %"
    return f"{quantity} {in_degrees(value, turn.facts.shop.system)}"


def _missing(values: Values) -> list[str]:
    return ["the panel" if each == PANEL else each for each in ORDER if each not in values]


def _now(values: Values) -> str:
    return f"Now {', then '.join(_missing(values))}."


def _typed(turn: Turn) -> str:
    missing = next(each for each in ORDER if each not in turn.state.slots["values"])
    unit = " F" if missing != HUMIDITY and turn.facts.shop.system == "us" else ""
    return f"{missing} {turn.said.number}{unit}"


def _way_out(turn: Turn) -> str:
    return LIKE_US if turn.facts.shop.system == "us" else LIKE
