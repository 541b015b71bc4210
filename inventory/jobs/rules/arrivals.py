"""What is said of a car as it arrives, and what of it cannot be so."""

from collections import defaultdict
from collections.abc import Iterable

from inventory.trade.residues import NOTHING, words_of

# Of the whole car, and no panel's name
CAR = ""


def at_odds(said: Iterable[tuple[str, str]]) -> dict[str, str]:
    """Return a sentence for each panel that bears nothing and something; `said` is (residue, panel's name).

    A panel may differ from the rest of its car: there its own word goes over the car's.
    """
    found: dict[str, list[str]] = defaultdict(list)
    for residue, panel in said:
        found[panel].append(residue)
    return {
        panel: _both(panel or "whole car", [one for one in residues if one != NOTHING])
        for panel, residues in found.items()
        if NOTHING in residues and set(residues) != {NOTHING}
    }


def _both(where: str, others: list[str]) -> str:
    on_it = " and ".join(dict.fromkeys(words_of(one) for one in others))
    return f"The {where} cannot bear nothing and {on_it}. Keep what is so, and empty the other row."
