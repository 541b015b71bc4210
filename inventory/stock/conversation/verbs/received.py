"""What a receipt writes: a line a bottle (a kit brings several, a bin is one), and the orders it answers."""

from collections import Counter
from dataclasses import replace
from datetime import date
from typing import Any

from inventory.stock.rules.acts import Act, LotFacts, NewBottle
from inventory.stock.rules.receipts import allocate

from .. import words
from ..answers import STOP, Heard, Key
from ..facts import PackFacts, PlaceFacts, ProductFacts
from ..guards import YES
from ..turn import Turn
from .move import not_on_poster, put_beside, told
from .symbols import pack_of

NAME = "receive"

# What it is, how much is in it, the pack it came as.
Arriving = tuple[ProductFacts, int, "int | None"]


def settle(turn: Turn, slots: dict[str, Any]) -> Heard:
    """Write it, or ask first: a date that is over, a product that no poster of the place lists."""
    pack, place = pack_of(turn, slots["of"], slots["pack"]), turn.facts.places[slots["place"]]
    assert pack is not None
    over = [
        day
        for name, day in slots.get("dates", {}).items()
        if name != "made_on" and date.fromisoformat(day) < turn.today
    ]
    if over and "arrived_dead" not in slots.get("answered", ()):
        died = words.day(date.fromisoformat(over[0]), turn.today)
        says = f"{pack.product.name} was good until {died}. Receive it all the same?"
        return turn.ask(
            says,
            "Send it back rather: NO. It cannot be used.",
            Key("No, send it back", "NO", main=True),
            Key("Yes, receive it", YES),
            verb=NAME,
            waits="yes",
            **{**slots, "asked": "arrived_dead"},
        )
    if question := not_on_poster(pack.product, place, slots):
        return turn.ask(
            *question,
            Key("Yes, put it there", YES),
            Key("No", "NO", main=True),
            verb=NAME,
            waits="yes",
            **{**slots, "asked": "not_admitted"},
        )
    if objection := put_beside(turn, slots, NAME):
        return _elsewhere(turn, slots, objection)
    return _record(turn, slots, pack, place)


def _elsewhere(turn: Turn, slots: dict[str, Any], objection: Heard) -> Heard:
    """Keep what was read of a delivery that may not stand here: another place is scanned for it."""
    if objection.answer.grade != STOP:
        return objection
    kept = {name: value for name, value in slots.items() if name not in {"place", "answered"}}
    state = replace(
        turn.state, verb=NAME, waits="place", slots=kept, delivery={**turn.state.delivery, "place": ""}
    )
    answer = replace(objection.answer, next=f"{objection.answer.next} Scan the place where it goes instead.")
    return replace(objection, state=state, answer=answer)


def _record(turn: Turn, slots: dict[str, Any], pack: PackFacts, place: PlaceFacts) -> Heard:
    """Write the bottles, count them on the orders, and remember the delivery."""
    count, lot = int(slots["count"]), _lot(slots)
    bottles: list[Arriving] = [(pack.product, pack.amount, pack.id)] * count + [
        (product, amount, None) for product, amount in pack.parts for _ in range(count)
    ]
    if pack.product.keeping == "bin":
        bottles[:count] = [(pack.product, pack.amount * count, pack.id)]
    acts = tuple(_act(turn, slots, product, amount, id, lot, place) for product, amount, id in bottles)
    packs = max(1, count // pack.per_case) if pack.per_case > 1 else count
    given = allocate(packs, pack.orders, first=turn.state.delivery.get("order", ""))
    effects = tuple({"does": "order_line", "id": line.id, "received": n} for line, n in given)
    delivery = {**turn.state.delivery, "place": place.code, "of": slots["of"], "pack": pack.id}
    heard = turn.recorded(
        f"Received {_counted(bottles, pack, count)}{_printed(lot, turn)}, into {place.name}.",
        " ".join([*told(turn), _orders_said(given, packs, pack) + "Labels come in one strip."]),
        *_keys(pack),
        acts=acts,
        effects=effects,
        what=f"the receipt of {_counted(bottles, pack, count)}",
        state=replace(turn.state.idle(), bottle="", delivery=delivery),
        labels=True,
    )
    return heard


def _act(
    turn: Turn,
    slots: dict[str, Any],
    product: ProductFacts,
    amount: int,
    pack: int | None,
    lot: LotFacts,
    place: PlaceFacts,
) -> Act:
    new = NewBottle(product.code, amount, noun=product.noun, pack=pack, lot=lot)
    facts: dict[str, object] = {"answered": slots["answered"]} if slots.get("answered") else {}
    return Act("receive", turn.facts.at, new=new, amount=amount, place=place.code, facts=facts)


def _lot(slots: dict[str, Any]) -> LotFacts:
    days = {name: date.fromisoformat(day) for name, day in slots.get("dates", {}).items()}
    return LotFacts(slots.get("lot", ""), **days)


def _counted(bottles: list[Arriving], pack: PackFacts, count: int) -> str:
    if pack.product.keeping == "bin":
        return f"{words.counted(count, pack.product.noun)} of {pack.product.name}"
    kinds = Counter((product.name, product.noun) for product, _, _ in bottles)
    return " and ".join(f"{words.counted(many, noun)} of {name}" for (name, noun), many in kinds.items())


def _printed(lot: LotFacts, turn: Turn) -> str:
    number = f", lot {lot.number}" if lot.number else ", lot not given"
    for word, day in (("use by", lot.expires_on), ("best before", lot.best_before_on), ("made", lot.made_on)):
        if day:
            return f"{number}, {word} {words.day(day, turn.today)}"
    return number


def _orders_said(given: list[tuple[Any, int]], packs: int, pack: PackFacts) -> str:
    said = [
        f"Order {words.short(line.order)} with {line.supplier}: {line.received + n} of {line.packs} came."
        for line, n in given
    ]
    extra = packs - sum(n for _, n in given)
    if extra and pack.orders:
        said.append(f"{extra} more than ordered.")
    return "".join(f"{each} " for each in said)


def _keys(pack: PackFacts) -> tuple[Key, ...]:
    trouble = (
        (Key("Some damaged", "DAMAGED"), Key("Some wrong", "WRONG"), Key("Too few came", "SHORT"))
        if pack.orders
        else ()
    )
    return (*trouble, Key("Undo", "UNDO"))
