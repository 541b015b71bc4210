"""Weather: what the instruments in a bay read, typed or scanned as one line."""

from decimal import Decimal

from ..answers import Heard, Key
from ..turn import Turn

LIKE = "Say it like this: air 21.4 panel 19 humidity 52."
COLDEST, HOTTEST, HOTTEST_PANEL = Decimal(-40), Decimal(60), Decimal(120)


def read(turn: Turn) -> Heard:
    """Keep a reading for the place where the person is, else for the station's own."""
    assert turn.said.weather is not None
    air, panel, humidity = (Decimal(each) if each else None for each in turn.said.weather)
    assert air is not None
    assert humidity is not None
    place = turn.facts.places.get(turn.state.place or turn.facts.station_at)
    if place is None:
        return turn.unknown("Measured where? No bay is in hand.", "Scan the bay, or a car that is in it.")
    if not 0 < humidity <= 100:
        return turn.unknown(f"Humidity lies above 0 and up to 100 %, not {humidity}.", LIKE)
    if not COLDEST <= air <= HOTTEST or (panel is not None and not COLDEST <= panel <= HOTTEST_PANEL):
        return turn.unknown("No bay is like that: air -40 to 60 °C, a panel to 120 °C.", LIKE)
    effect = {
        "does": "weather", "place": place.code, "at": turn.facts.at.isoformat(),
        "air_c": str(air), "panel_c": None if panel is None else str(panel), "humidity": str(humidity),
    }  # fmt: skip
    on_it = "panel not measured" if panel is None else f"panel {panel} °C"
    return turn.recorded(
        f"{place.name}: air {air} °C, {on_it}, humidity {humidity} %.",
        "The check of a coat counts it for two hours.",
        Key("Undo", "UNDO"),
        effects=(effect,),
        state=turn.state.idle(),
        what=f"the reading in {place.name}",
    )
