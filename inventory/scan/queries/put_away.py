"""What is said of putting the bottle in hand, or what comes, where it goes.

And what is said of pouring it onto what a bottle held that nobody rinsed.
"""

from collections.abc import Iterable
from dataclasses import replace

from django.db.models import Q

from inventory.models import Container, KitPart, Pack, Place, Product, Shop
from inventory.precheck import queries as precheck
from inventory.precheck.rules.put_away import JUDGED
from inventory.stock.conversation import Said, State
from inventory.stock.conversation.facts import Facts, Found
from inventory.stock.conversation.verbs.pouring import BONDING, GASSING, WATERED
from safety.findings import Finding
from safety.flammables.containers import ASKS
from safety.flammables.decanting import decanting
from safety.reactions.vessel import in_one_vessel, thinned

KEEP_DRY = "Nothing with water goes into it: thin it with what its label names, or fill it neat."
NEVER_CLOSED = (
    "Fill it neat, or thin it with what its label names. Where its maker wants water: YES, and use it up; "
    "never close a bottle that holds both."
)


def put_away(
    shop: Shop, state: State, said: Said, facts: Facts, meant: Iterable[Container]
) -> tuple[Found, ...]:
    """Return the findings; () where nothing is put anywhere."""
    place = _goes_to(state, said, facts)
    if state.verb == "receive":
        return (*_arriving(shop, state, facts, place), *_in_its_pack(shop, state))
    if place is None:
        return ()
    bottle = next((row for row in meant if row.code == state.bottle and row.product), None)
    if bottle is None or bottle.product is None or bottle.place_id == place.pk:
        return ()
    return _found(precheck.putting_away(place, bottle.product, bottle.content, bottle))


def poured_on(state: State, said: Said, meant: Iterable[Container]) -> tuple[Found, ...]:
    """Return what is said of pouring onto what an unrinsed bottle held, and of pouring water onto it.

    () where nothing is poured.
    """
    if state.verb != "fill":
        return ()
    rows = {row.code: row for row in meant}
    target = rows.get(said.code) or rows.get(str(state.slots.get("target", "")))
    source = rows.get(str(state.slots.get("source", "")))
    if target is None or source is None or source.product is None:
        return ()
    watered = _watered(source.product) if _takes_water(state, source, target) else ()
    if target.product is None or target.product_id == source.product_id:
        return watered
    if target.rinsed and not target.content:
        return watered
    of = precheck.substances([source.product, target.product])
    kit = _of_one_kit(source.product, target.product)
    found = in_one_vessel(of[source.product.code], of[target.product.code], kit_parts=kit)
    return (*watered, *_found((found,) if found else ()))


def _takes_water(state: State, source: Container, target: Container) -> bool:
    """Say whether water goes in: as the ratio says, else as the mix that a scanned bottle had before."""
    said = state.slots.get("parts")
    return bool(said[1] if said else source.parts_water or target.parts_water)


def _watered(product: Product) -> tuple[Found, ...]:
    """Stop what gives off gas that harms or hardens with water; ask where gas only presses a lid."""
    found = thinned(precheck.substances([product])[product.code])
    if found is None:
        return ()
    if found.grade == "stop":
        return _found((replace(found, code=WATERED, do=KEEP_DRY),))
    return _found((replace(found, code=GASSING, do=NEVER_CLOSED),))


def bonded(state: State, said: Said, meant: Iterable[Container]) -> tuple[Found, ...]:
    """Return what is told before something that lights is poured; () where nothing is filled."""
    begins = said.command == "fill" or (state.verb == "fill" and state.waits == "source")
    code = said.code if said.kind == "container" else state.bottle
    source = next((row for row in meant if row.code == code and row.product and row.content), None)
    if not begins or source is None or source.product is None or source.parts_water:
        return ()
    sheet = precheck.sheets_of([source.product]).get(source.product.sheet_id or 0)
    category, aerosol = precheck.burns_as(sheet.hazards if sheet else None)
    told = () if aerosol else decanting(source.product.name, category, sheet.flash_point_c if sheet else None)
    return _found(replace(one, code=BONDING) for one in told)


def _goes_to(state: State, said: Said, facts: Facts) -> Place | None:
    moving = said.kind == "place" and bool(state.bottle) and not state.verb
    told = said.kind == "place" and state.verb in {"move", "receive"}
    code = said.code if moving or told else ""
    if said.command == "bring_back":
        code = facts.station_place
    if said.command == "yes" and state.verb in {"move", "receive"}:
        code = str(state.slots.get("place", ""))
    if state.verb == "receive" and not code:
        code = str(state.delivery.get("place", "")) or facts.station_place
    rows = (
        Place.objects.filter(code=code, kind__in=JUDGED).select_related("shop", "within__within")
        if code
        else ()
    )
    return next(iter(rows), None)


def _in_its_pack(shop: Shop, state: State) -> tuple[Found, ...]:
    """Say where a pack that comes is too large for what burns in it, wherever it goes; US and Canada only."""
    if shop.regime not in ASKS or not state.slots.get("pack"):
        return ()
    packs = list(Pack.objects.filter(pk=state.slots["pack"], product__shop=shop).select_related("product"))
    return _found(one for pack in packs for one in precheck.packs_too_large(shop, pack.product, packs))


def _arriving(shop: Shop, state: State, facts: Facts, place: Place | None) -> tuple[Found, ...]:
    if place is None:
        return ()
    named = facts.packs.get(str(state.slots.get("of", "")), ())
    pack = next((each for each in named if each.id == state.slots.get("pack")), None)
    rows = Product.objects.filter(shop=shop, code=pack.product.code) if pack else ()
    product = next(iter(rows), None)
    if pack is None or product is None:
        return ()
    amount = pack.amount * max(1, int(state.slots.get("count", 1))) * max(1, pack.per_case)
    return _found(precheck.putting_away(place, product, amount, None))


def _of_one_kit(one: Product, other: Product) -> bool:
    """Two parts of one kit are meant to react."""
    both = Q(pack__product=one, product=other) | Q(pack__product=other, product=one)
    return KitPart.objects.filter(both).exists()


def _found(findings: Iterable[Finding]) -> tuple[Found, ...]:
    return tuple(Found(one.code, one.grade, one.says, one.do, one.about) for one in findings)
