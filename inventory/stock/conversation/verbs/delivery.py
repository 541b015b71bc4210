"""Damaged, wrong, short: what came but not as ordered is written on the order's line, not on the shelf."""

from collections.abc import Callable

from .. import words
from ..answers import Heard, Key
from ..facts import OpenLine, PackFacts
from ..turn import Turn

_ASKS = {"damaged": "are damaged", "wrong": "are not what was ordered"}
_KEEPS = {"damaged": "damaged", "wrong": "wrong"}


def trouble(kind: str) -> Callable[[Turn], Heard]:
    """Return the beginning of DAMAGED or WRONG."""

    def begin(turn: Turn) -> Heard:
        found = _line(turn)
        if found is None:
            return _no_order(turn)
        keys = tuple(Key(str(number), str(number)) for number in (1, 2, 3))
        return turn.ask(
            f"How many of {found[0].product.name} {_ASKS[kind]}?",
            "Type the number. They are not put on the shelf.",
            *keys,
            verb=kind,
            waits="number",
        )

    return begin


def on(turn: Turn) -> Heard | None:
    """Take the number."""
    found, kind = _line(turn), turn.state.verb
    if not turn.said.number or found is None:
        return turn.again("How many? Type a number from 1.") if turn.said.words else None
    pack, line = found
    effect = {"does": "order_line", "id": line.id, _KEEPS[kind]: turn.said.number}
    says = f"{turn.said.number} of {pack.product.name} {kind}: written on order {words.short(line.order)}."
    return turn.recorded(
        says,
        f"Tell {line.supplier}. They are still owed.",
        Key("Undo", "UNDO"),
        effects=(effect,),
        what=f"{turn.said.number} of {pack.product.name} {kind}",
    )


def short(turn: Turn) -> Heard:
    """SHORT: the rest of the line will not come."""
    found = _line(turn)
    if found is None:
        return _no_order(turn)
    pack, line = found
    effect = {"does": "order_line", "id": line.id, "closed_short": True}
    says = f"{line.received} of {line.packs} of {pack.product.name} came; the rest is no longer awaited."
    return turn.recorded(
        says,
        f"Order {words.short(line.order)} with {line.supplier}.",
        Key("Undo", "UNDO"),
        effects=(effect,),
        what=f"that {pack.product.name} came short",
    )


def done(turn: Turn) -> Heard:
    """DONE: the delivery is over."""
    if not turn.state.delivery:
        return turn.tell("Nothing is under way.", "Scan the next thing.")
    return turn.tell("This delivery is done.", "The next one asks again where it goes.", delivery={})


def against(turn: Turn) -> Heard:
    """An order's code: what comes now is counted on it first."""
    supplier = turn.facts.orders.get(turn.said.code)
    if supplier is None:
        return turn.unknown(
            f"{turn.said.text} is no placed order of this shop.",
            "Scan what came; older orders are found by themselves.",
        )
    return turn.ask(
        f"Receive order {words.short(turn.said.code)} from {supplier}: what came?",
        "Scan the first bottle or case.",
        verb="receive",
        waits="pack",
    )


def _line(turn: Turn) -> tuple[PackFacts, OpenLine] | None:
    delivery = turn.state.delivery
    packs = turn.facts.packs.get(delivery.get("of", ""), ())
    pack = next((pack for pack in packs if pack.id == delivery.get("pack")), None)
    if pack is None or not pack.orders:
        return None
    chosen = next((line for line in pack.orders if line.order == delivery.get("order")), pack.orders[0])
    return pack, chosen


def _no_order(turn: Turn) -> Heard:
    return turn.stop(
        "No placed order awaits what came last, so there is no line to write it on.",
        "Receive a bottle of it first, or tell the supplier.",
    )
