"""What is in the can that is meant, and what is said of tipping the bottle in hand into it.

One query where DISCARD is said, up to six where a can is meant, whatever it holds.
"""

from collections.abc import Iterable
from dataclasses import replace

from inventory.models import Container, Place, Shop
from inventory.precheck import queries as precheck
from inventory.stock.conversation import Said, State
from inventory.stock.conversation.facts import Facts, Found

TIPPING = {"", "move", "discard"}


def with_cans(facts: Facts, shop: Shop, state: State, said: Said, meant: Iterable[Container]) -> Facts:
    """Add whether there are cans, where something is discarded, and what holds of the one that is meant."""
    if said.command == "discard" or state.verb == "discard":
        here = Place.objects.filter(shop=shop, kind=Place.Kind.CAN).exists()
        facts = replace(facts, cans=here)
    code = said.code if said.kind == "place" else str(state.slots.get("place", ""))
    place = facts.places.get(code)
    if place is None or not place.can:
        return facts
    [can] = precheck.cans(shop, [code])
    bottle = next((row for row in meant if row.code == state.bottle and row.product), None)
    found = None
    if bottle is not None and bottle.product and bottle.content and state.verb in TIPPING:
        found = precheck.tipping(can, bottle.product, watered=bool(bottle.parts_water))
    heard = Found(found.code, found.grade, found.says, found.do, found.about) if found else None
    known = {**facts.places, code: replace(place, holds=can.names)}
    return replace(facts, places=known, tipped=(heard,) if heard else ())
