"""What a row of new bottles must say before the ledger is asked; a sentence and its column otherwise."""

from typing import TYPE_CHECKING

from inventory.spreadsheets.resources.columns import Amiss
from inventory.spreadsheets.resources.known import Known
from inventory.spreadsheets.rules.table import Bounds

if TYPE_CHECKING:
    from inventory.spreadsheets.resources.stock import StockRow

ASKED = "Type the day it was opened, or “unknown”: then half of its open life ago is written as an estimate."
DATES = ("expires_on", "best_before_on", "made_on")


def check_new(thing: "StockRow", known: Known) -> None:
    """Fill in what follows from the rest, and refuse what is missing or contradicts; raises Amiss."""
    if thing.product is None:
        raise Amiss(product="Say what is in it. A new bottle has a product.")
    if not thing.content:
        raise Amiss(content="Nothing is in it. Give its content, or leave the row out.")
    if thing.place is None:
        raise Amiss(place="Say where it stands.")
    _full(thing, known)
    _opened(thing, known)
    _lot(thing, known)
    _codes(thing, known)
    thing.noun = thing.noun or ("box" if thing.box else thing.product.noun)


def _full(thing: "StockRow", known: Known) -> None:
    assert thing.product is not None
    assert thing.content is not None
    packs = known.packs_of.get(thing.product.pk, [])
    if thing.full is None:
        usual = [pack.amount for pack in packs if pack.usual and pack.amount >= thing.content]
        thing.full = min(usual, default=thing.content)
    if thing.content > thing.full:
        raise Amiss(content="It would hold more than when it is full. Check the two figures.")
    thing.pack = next((pack for pack in packs if pack.amount == thing.full), None)


def _opened(thing: "StockRow", known: Known) -> None:
    if thing.sealed is None:
        raise Amiss(sealed="Say whether it is sealed: yes or no.")
    if thing.sealed and thing.opened_on is not None:
        raise Amiss(
            opened_on="It is sealed, so it was not opened. Empty this cell, or write no under sealed."
        )
    if not thing.sealed and thing.opened_on is None:
        raise Amiss(opened_on=ASKED)
    if isinstance(thing.opened_on, str) or thing.opened_on is None:
        return
    if thing.opened_on > known.today:
        raise Amiss(opened_on=f"{thing.opened_on.isoformat()} is still to come. Check the day.")
    if thing.made_on and thing.opened_on < thing.made_on:
        raise Amiss(opened_on=f"That is before it was made, {thing.made_on.isoformat()}. Check the two days.")


def _lot(thing: "StockRow", known: Known) -> None:
    assert thing.product is not None
    if len(thing.lot) > 40:
        raise Amiss(lot="A lot number has at most 40 characters. Shorten it.")
    if thing.made_on and thing.made_on > known.today:
        raise Amiss(made_on=f"{thing.made_on.isoformat()} is still to come. Check the day.")
    if not thing.lot:
        return
    key = (thing.product.pk, thing.lot)
    lot = known.lots.setdefault(key, {})
    for name in DATES:
        booked, given = lot.get(name), getattr(thing, name)
        if booked and given and booked != given:
            raise Amiss(
                **{name: f"Lot {thing.lot} has {booked.isoformat()} elsewhere. Read number and date again."}
            )
        lot[name] = booked or given


def _codes(thing: "StockRow", known: Known) -> None:
    if thing.code and thing.code in known.taken:
        raise Amiss(code=f"{thing.code} was on another bottle before. Take the next label.")
    if thing.code and thing.count > 1 and not thing.box:
        raise Amiss(count="One code is for one bottle. Give each a row of its own, or track the box as one.")
    known.bottles += 1 if thing.box else thing.count
    if known.bottles > Bounds().rows:
        raise Amiss(count=f"With this row the file brings more than {Bounds().rows} bottles. Split it.")
