"""A few invented products as reactivity sees them, and the short way to name a substance by its words."""

from safety.reactions.groups import groups
from safety.reactions.values import Substance


def of(words: str, name: str = "") -> Substance:
    """A substance from groups, tags and statements, as in `of("104 EUH031")`."""
    given = set(words.split())
    known = given & set(groups())
    return Substance(name or words, frozenset(known), frozenset(given - known))


BLEACH = Substance("Brightwell mould bleach", frozenset({"hypochlorite", "106"}), frozenset({"EUH031"}))
RIM_ACID = Substance("Kerbline rim acid", frozenset({"1", "106"}), frozenset({"H314", "H290"}))
BIFLUORIDE = Substance("Kerbline rim white", frozenset({"1", "15", "ammonium", "106"}), frozenset({"H314"}))
CITRIC = Substance("Sourdew water spot remover", frozenset({"3", "106"}), frozenset({"H319"}))
IRON = Substance("Rustfall iron remover", frozenset({"20", "ammonium", "106"}), frozenset({"H302", "H317"}))
SOUR_IRON = Substance("Rustfall gel", frozenset({"3", "20", "106"}), frozenset({"H301"}))
ALKALINE = Substance("Morning foam", frozenset({"10", "106"}), frozenset({"H315"}))
STRONG_ALKALI = Substance("Truckwash alkali", frozenset({"10", "106"}), frozenset({"H314"}))
WIPE = Substance("Clearday panel wipe", frozenset({"4"}), frozenset({"H225"}), hazards=("Flam. Liq. 2 H225",))
TAR = Substance("Blackspot tar remover", frozenset({"16", "29"}), frozenset({"H226", "H304"}))
COATING = Substance("Tidewall coating", frozenset({"107", "29"}), frozenset({"H226"}))
OTHER_COATING = Substance("Saltmarsh coating", frozenset({"107", "13"}), frozenset({"H225"}))
SHAMPOO = Substance("Plainday shampoo", frozenset({"106"}), frozenset({"H319"}))
WATER = Substance("water", frozenset({"106"}))
PEROXIDE = Substance(
    "Oxalis upholstery brightener", frozenset({"peroxide", "106"}), hazards=("Ox. Liq. 2 H272",)
)
HARDENER = Substance("Glasswing hardener", frozenset({"18"}), frozenset({"EUH204", "H334"}))
TOWELS = Substance("Blue towels", frozenset({"101"}))
