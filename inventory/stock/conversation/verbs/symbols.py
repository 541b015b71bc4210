"""What a maker's symbol or a case says, so that it need not be asked."""

from typing import Any

from inventory.codes import Reading

from ..facts import PackFacts
from ..turn import Turn


def from_case(pack: PackFacts) -> dict[str, Any]:
    """Return how many a case brings, so that it is not asked."""
    return {"count": pack.per_case} if pack.per_case > 1 else {}


def from_symbol(reading: Reading, pack: PackFacts) -> dict[str, Any]:
    """Return what a maker\'s symbol says of count, lot and dates."""
    slots = from_case(pack)
    if reading.count:
        slots["count"] = reading.count
    if reading.lot:
        slots["lot"] = reading.lot
    dates = {
        name: day.isoformat()
        for name in ("expires_on", "best_before_on", "made_on")
        if (day := getattr(reading, name))
    }
    return slots | ({"dates": dates} if dates else {})


def read_out(slots: dict[str, Any]) -> str:
    """Return one reading of a symbol as a key says it."""
    return ", ".join([f"lot {slots.get('lot', 'not given')}", *slots.get("dates", {}).values()])


def pack_of(turn: Turn, of: str, id: int | None = None) -> PackFacts | None:
    """Return the pack that a number or a product's code names, the usual one unless its id is given."""
    packs = turn.facts.packs.get(of, ())
    return next((pack for pack in packs if id in (None, pack.id)), None)
