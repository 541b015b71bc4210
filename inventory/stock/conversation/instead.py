"""The way out of a stop: which bottle to take instead, and the keys for it."""

from inventory.stock.rules.lines import NEAT
from inventory.stock.rules.use_by import over, terms

from . import words
from .answers import Key
from .facts import Bottle, Facts


def instead(bottle: Bottle, facts: Facts, away: str) -> tuple[str, tuple[Key, ...]]:
    """Return the way out: away with this one, and the bottle to take, first expired first."""
    other = instead_of(bottle, facts)
    if other is None:
        return f"{away}. There is no other of it here that may be used.", ()
    where = f" from {other.place_name}" if other.place_name else ""
    return f"{away}, or take {words.short(other.code)}{where}.", (
        Key(f"Use {words.short(other.code)} instead", other.code, main=True),
    )


def instead_of(bottle: Bottle, facts: Facts) -> Bottle | None:
    """Return the usable bottle of the same product and mix that dies first, an open one before a sealed."""
    fit = [
        each
        for each in facts.bottles.values()
        if each.code != bottle.code
        and each.product
        and each.product == bottle.product
        and each.shelf.parts in (NEAT, bottle.shelf.parts)
        and each.content
        and each.state in {"open", "sealed"}
        and not each.shelf.held
        and not over(each.shelf.dates, facts.zone, facts.at)
    ]

    def dies(each: Bottle) -> tuple[float, bool, str]:
        ends = terms(each.shelf.dates, facts.zone)
        return (ends[0].at.timestamp() if ends else float("inf"), each.state == "sealed", each.code)

    return min(fit, key=dies, default=None)


def label_key(*codes: str, main: bool = False) -> Key:
    """Return the key that prints the labels of bottles in one strip."""
    many = len(codes) > 1
    return Key(
        f"Print {len(codes)} labels" if many else "Print its label",
        main=main,
        page="labels",
        about=",".join(codes),
    )
