"""What is worn against a product: what its own sheet says, else what its hazard classes ask for."""

from collections.abc import Iterable, Mapping
from functools import cache

from safety.hazards.tables import rows

ITEMS = ("gloves", "goggles", "face_shield", "apron")
SOURCE = (
    "the product's data sheet, section 8; where it says nothing, P280 as its classes call for it "
    "(CLP Annex I; which items: from memory)"
)
# Which items guard a part of the body, and the words by which a sheet names each.
PARTS: dict[str, dict[str, tuple[str, ...]]] = {
    "hands": {"gloves": ("",)},
    "eyes": {
        "goggles": ("glass", "goggle", "eye"),
        "face_shield": ("shield", "visor"),
    },
    "body": {"apron": ("apron", "suit", "overall", "clothing")},
}
NOTHING = frozenset({"", "none", "-", "not needed", "not required"})


@cache
def _table() -> tuple[tuple[str, str, frozenset[str], bool], ...]:
    return tuple(
        (row["hazard"], row["statement"], frozenset(row["items"].split()), row["stops"] == "yes")
        for row in rows("equipment_needed")
    )


def grave(hazards: Iterable[str]) -> bool:
    """Say whether what is missing against these classes stops a step; takes our own two words, too."""
    return any(stops for one in hazards for _, stops in _asked(one))


def worn_against(hazards: Iterable[str], sheet_says: Mapping[str, str]) -> tuple[str, ...]:
    """Return the items that a product asks for, in the order of ITEMS.

    hazards: "Skin Corr. 1B H314" as on the sheet, and "fluoride" or "isocyanate"; sheet_says: what the sheet
    wants worn, by hands, eyes, body. A part of the body about which the sheet says nothing that is
    understood is guarded as its classes ask.
    """
    by_class = {item for one in hazards for items, _ in _asked(one) for item in items}
    found: set[str] = set()
    for part, items in PARTS.items():
        named = _named(items, sheet_says.get(part, ""))
        found |= named or (by_class & set(items))
    return tuple(item for item in ITEMS if item in found)


def _asked(hazard: str) -> list[tuple[frozenset[str], bool]]:
    return [
        (items, stops)
        for begins, statement, items, stops in _table()
        if hazard.startswith(begins) and (not statement or statement in hazard)
    ]


def _named(items: Mapping[str, tuple[str, ...]], text: str) -> set[str]:
    said = text.strip().strip(".").lower()
    if said in NOTHING:
        return set()
    return {item for item, words in items.items() if any(word in said for word in words)}
