"""The way out of a stop: which bottle to take instead, and the keys for it."""

from dataclasses import replace

from inventory.stock.rules import one_lot
from inventory.stock.rules.lines import NEAT
from inventory.stock.rules.use_by import over, terms

from . import words
from .answers import Key
from .facts import Bottle, Facts
from .objections import Taking


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


def next_bottle(taking: Taking, facts: Facts) -> Bottle | None:
    """Return the bottle that gives what this one did not hold; of its lot where the step keeps to one."""
    bottle, product, step = taking.bottle, taking.bottle.product, taking.step
    if product is None or not one_lot.binds(product.kind, product.mixes_lots):
        return instead_of(bottle, facts)
    if one_lot.stands(facts.two_lots_allowed, step, product.code, product.kind):
        return instead_of(bottle, facts)
    had = bottle.shelf.batch | facts.step_had.get((step, product.code), one_lot.NOTHING)
    of_it = {code: one for code, one in facts.bottles.items() if one_lot.joins(one.shelf.batch, had)}
    return instead_of(bottle, replace(facts, bottles=of_it))


def label_key(*codes: str, main: bool = False) -> Key:
    """Return the key that prints the labels of bottles in one strip."""
    many = len(codes) > 1
    return Key(
        f"Print {len(codes)} labels" if many else "Print its label",
        main=main,
        page="labels",
        about=",".join(codes),
    )
