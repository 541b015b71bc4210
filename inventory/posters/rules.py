"""When a poster is out of date, and why, in sentences. Pure.

A snapshot is what stood on it: {"place": {fact: text}, "products": {code: {"name", "sheet"}}} where `sheet` is the
revision day of the sheet that was used, or empty. Amounts never put a poster out of date.
"""

from collections.abc import Iterable
from typing import Any

Snapshot = dict[str, Any]
FACTS = {
    "name": "the name of the place",
    "task": "what is done here",
    "ventilation": "the ventilation",
    "eyewash": "the place of the eyewash",
    "extinguisher": "the place of the extinguisher",
    "spill_kit": "the place of the spill kit",
    "emergency_number": "the emergency number",
    "poison_centre": "the poison centre’s number",
    "binder_at": "the place of the binder",
    "address": "the address",
}


def changes(printed: Snapshot | None, now: Snapshot, here: Iterable[tuple[str, str]]) -> list[str]:
    """Return why a printed poster no longer holds, each a clause; `here` are (code, name) that stand in the place."""
    if printed is None:
        return ["it was never printed"] if now["products"] else []
    return [*_products(printed, now), *_sheets(printed, now), *_facts(printed, now), *_arrived(printed, now, here)]


def _products(printed: Snapshot, now: Snapshot) -> list[str]:
    old, new = printed["products"], now["products"]
    added = [f"{new[code]['name']} is admitted now" for code in new if code not in old]
    return added + [f"{old[code]['name']} is no longer admitted" for code in old if code not in new]


def _sheets(printed: Snapshot, now: Snapshot) -> list[str]:
    old, new = printed["products"], now["products"]
    both = [code for code in new if code in old and new[code]["sheet"] != old[code]["sheet"]]
    return [f"{new[code]['name']} has another data sheet, {new[code]['sheet'] or 'none'}" for code in both]


def _facts(printed: Snapshot, now: Snapshot) -> list[str]:
    return [f"{says} changed" for fact, says in FACTS.items() if printed["place"].get(fact) != now["place"].get(fact)]


def _arrived(printed: Snapshot, now: Snapshot, here: Iterable[tuple[str, str]]) -> list[str]:
    known = set(printed["products"]) | set(now["products"])
    return [f"a product that is not on it stands there, {name}" for code, name in here if code not in known]


def in_one_sentence(place: str, reasons: list[str]) -> str:
    """Return the notice that the site shows, or nothing where the poster holds."""
    if not reasons:
        return ""
    more = f", and {len(reasons) - 1} more" if len(reasons) > 1 else ""
    return f"The poster of {place} is out of date: {reasons[0]}{more}."
