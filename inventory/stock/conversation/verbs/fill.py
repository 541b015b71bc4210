"""Fill: out of one container into others at a mix ratio, each to the brim unless an amount was said.

A product kept by weight (a powder, a paste) is mixed by weight: product and water are both weighed, and a
bottle takes a gram for each of its millilitres, since water weighs that and most of the mix is water.
"""

from dataclasses import replace
from typing import Any

from inventory.stock.rules.acts import Act
from inventory.stock.rules.lines import NEAT
from inventory.stock.rules.use_by import terms
from inventory.units import AmountError, dilution, pour_in_words, show_mix

from .. import words
from ..answers import Heard, Key
from ..facts import Bottle
from ..guards import USING, first_objection
from ..instead import label_key
from ..objections import Taking
from ..turn import Turn
from .pouring import WATERED, bonding, gassing

# in a litre
MICROLITRES = 1_000_000
NAME = "fill"
RATIOS = (Key("1:10", "1:10"), Key("1:4", "1:4"), Key("Another ratio", "1:…"), Key("Neat", "neat"))
# An answer about the drum holds for every bottle filled from it, an answer about an amount does not.
LASTING = {"past_estimate", "starves"}


def begin(turn: Turn) -> Heard:
    """FILL: the bottle in hand is what is poured from."""
    source = turn.bottle
    if source is None or not source.content:
        return turn.ask(
            "Fill from what?", "Scan the drum or bottle that is poured from.", verb=NAME, waits="source"
        )
    for grade_of in (first_objection(Taking(source, 0), turn.facts, (), USING),):
        if grade_of and grade_of.grade == "stop":
            return turn.stop(grade_of.says, grade_of.next, *grade_of.keys)
    if source.shelf.parts != NEAT:
        return _targets(turn, source, (1, 0))
    says = f"Fill from {words.name(source)}: at which ratio?"
    by = ", by weight" if _weighed(source) else ""
    next = f"Type it as 1:10, product to water{by}, or scan a bottle that had this mix before."
    return turn.ask(says, f"{next}{bonding(turn)}", *RATIOS, verb=NAME, waits="ratio", source=source.code)


def _targets(turn: Turn, source: Bottle, parts: tuple[int, int]) -> Heard:
    says = f"{words.name(source)} {show_mix(*parts)}: scan the bottles to fill."
    return turn.ask(
        says,
        f"Each is filled up. To fill less: type the amount first.{bonding(turn)}",
        verb=NAME,
        waits="target",
        source=source.code,
        parts=list(parts),
    )


def _weighed(source: Bottle) -> bool:
    return source.product is not None and source.product.dimension == "mass"


def go_on(turn: Turn) -> Heard | None:
    """Take the source, the ratio, an amount for each, and one bottle after another."""
    said, slots = turn.said, turn.state.slots
    bottle = turn.facts.bottles.get(said.code) if said.kind == "container" else None
    if turn.state.waits == "source":
        return begin(replace(turn, state=replace(turn.state, bottle=said.code))) if bottle else None
    source = turn.facts.bottles[slots["source"]]
    if said.ratio:
        return _targets(turn, source, said.ratio)
    if said.command == "done":
        return turn.tell("Done filling.", "Scan the next thing.")
    if bottle is None:
        return _each(turn, source) if said.amount else None
    if bottle.content >= bottle.full and bottle.refillable:
        return None  # A full one is scanned to be used: filling is over.
    if turn.state.waits == "ratio":
        if bottle.product != source.product or bottle.code == source.code:
            return turn.again("At which ratio? Type it as 1:10, then scan the bottles.", "", *RATIOS)
        slots = {**slots, "parts": list(bottle.shelf.parts)}
    return settle(turn, {**slots, "target": bottle.code})


def _each(turn: Turn, source: Bottle) -> Heard:
    # A mix is neither as heavy nor as light as its product, so grams are read as grams, never by density.
    by = replace(source.product, density_mg_per_l=None) if source.product and _weighed(source) else None
    try:
        each = words.read_amount(turn.said.text, by, turn.facts.shop)
    except AmountError as refusal:
        return turn.again(str(refusal))
    waiting = replace(turn.state, slots={**turn.state.slots, "each": each})
    said = words.amount(each, by, turn.facts.shop)
    return replace(turn.again(f"{said} into each: scan the bottles to fill."), state=waiting)


def settle(turn: Turn, slots: dict[str, Any]) -> Heard:
    """Fill one bottle, or say why not."""
    source, target = turn.facts.bottles[slots["source"]], turn.facts.bottles[slots["target"]]
    parts = (int(slots["parts"][0]), int(slots["parts"][1]))
    if refusal := _cannot(turn, source, target, parts, slots):
        if _wants_rinsing(source, target, parts):
            # RINSE means this one, so it is the one in hand.
            return replace(refusal, state=turn.state.idle(bottle=target.code))
        # The next bottle can still be filled.
        return replace(refusal, state=replace(turn.state, verb=NAME, waits="target", slots=_kept(slots)))
    full = _takes(source, target, parts)
    if full is None and "each" not in slots:
        says = f"How many grams of {words.name(source)} fill {words.name(target)} is not known."
        return turn.ask(says, "Weigh it, and type the grams.", verb=NAME, waits="target", **_kept(slots))
    full = target.full if full is None else full
    total = min(int(slots.get("each", full)), max(0, full - target.content))
    product, water = dilution(total, *parts)
    if asked := gassing(turn, slots, NAME):
        return asked
    objection = first_objection(Taking(source, product), turn.facts, slots.get("answered", ()), USING)
    if objection and objection.grade == "stop":
        return turn.stop(objection.says, objection.next, *objection.keys)
    if objection:
        return turn.ask(
            objection.says,
            objection.next,
            *objection.keys,
            verb=NAME,
            waits="yes",
            **{**slots, "asked": objection.code},
        )
    return _record(turn, slots, source, target, (product, water))


def _takes(source: Bottle, target: Bottle, parts: tuple[int, int]) -> int | None:
    """Return how much fills a bottle: a gram a millilitre where most of it is water, else by density."""
    if parts[1] or source.shelf.parts[1] or source.product is None or not _weighed(source):
        return target.full
    density = source.product.density_mg_per_l
    return None if density is None else target.full * density // MICROLITRES


def _cannot(
    turn: Turn, source: Bottle, target: Bottle, parts: tuple[int, int], slots: dict[str, Any]
) -> Heard | None:
    named = words.name(target)
    if target.code == source.code:
        return turn.stop("That is the bottle it is poured from.", "Scan the one to fill.")
    if target.state == "gone":
        return turn.stop(f"{named} was booked out of the shop.", "Scan another one.")
    if not target.refillable:
        return turn.stop(f"{named} is a maker's bottle. Nothing goes back into it.", "Take a refillable one.")
    if target.shelf.held:
        return turn.stop(f"{named} is held: {target.shelf.held}.", "Take another one.")
    if watered := next((one for one in turn.facts.poured_on if one.code == WATERED), None):
        return turn.stop(watered.says, watered.do)
    wants_rinsing = _wants_rinsing(source, target, parts)
    harm = next((one for one in turn.facts.poured_on if one.grade == "stop"), None)
    if wants_rinsing and harm:
        return turn.stop(f"{named} is not rinsed. {harm.says}", "Take a new bottle.")
    if wants_rinsing:
        last = (
            f"{target.product.name} {show_mix(*target.shelf.parts)}" if target.product else "something else"
        )
        return turn.stop(
            f"{named} last held {last}.",
            "RINSE it first, then fill it. Or take a new bottle.",
            Key("Rinse it", "RINSE"),
        )
    if target.content >= target.full:
        return turn.stop(f"{named} is full already.", "Scan the next one.")
    if source.product and source.product.dimension not in {"volume", "mass"} and parts[1]:
        return turn.stop(
            f"{source.product.name} is counted, so no ratio says how much of it goes in.",
            f"Dissolve it as its label says, then USE what went in from {words.short(source.code)}.",
        )
    return None


def _wants_rinsing(source: Bottle, target: Bottle, parts: tuple[int, int]) -> bool:
    """Say whether something else, or another mix of it, is left in the bottle."""
    mixed = source.shelf.parts if source.shelf.parts != NEAT else parts
    fresh = not target.content and target.rinsed
    return not fresh and (target.product != source.product or target.shelf.parts != mixed)


def _kept(slots: dict[str, Any]) -> dict[str, Any]:
    kept = {name: value for name, value in slots.items() if name not in {"target", "asked", "answered"}}
    return kept | {"answered": [code for code in slots.get("answered", ()) if code in LASTING]}


def _record(
    turn: Turn, slots: dict[str, Any], source: Bottle, target: Bottle, poured: tuple[int, int]
) -> Heard:
    product, water = poured
    parts = (int(slots["parts"][0]), int(slots["parts"][1]))
    acts = []
    if product > source.content:
        acts.append(Act("count", turn.facts.at, target=source.code, amount=product))
    facts: dict[str, object] = {"answered": slots["answered"]} if slots.get("answered") else {}
    acts.append(
        Act(
            "fill",
            turn.facts.at,
            source=source.code,
            target=target.code,
            amount=product,
            added=product + water,
            parts=parts,
            facts=facts,
        )
    )
    pour = pour_in_words(product, water, _dimension(source)) if water else f"{turn.of(source, product)}"
    says = f"Filled {words.short(target.code)}: {pour}. {_dies(turn, source, target, parts)}"
    state = replace(turn.state, bottle=target.code, verb=NAME, waits="target", slots=_kept(slots))
    left = max(source.content - product, 0)
    has = f"has {turn.of(source, left)} left" if left else "is empty"
    next = f"{words.short(source.code)} {has}. Scan the next bottle to fill, or the next thing."
    return turn.recorded(
        says,
        next,
        label_key(target.code),
        Key("Undo", "UNDO"),
        acts=tuple(acts),
        state=state,
        what=f"the filling of {target.noun} {words.short(target.code)}",
    )


def _dimension(source: Bottle) -> str:
    return "mass" if _weighed(source) else "volume"


def _dies(turn: Turn, source: Bottle, target: Bottle, parts: tuple[int, int]) -> str:
    dates = source.shelf.dates
    mixed = replace(
        dates,
        opened_at=dates.opened_at or turn.facts.at,
        mixed_at=turn.facts.at if parts[1] else dates.mixed_at,
    )
    before = terms(target.shelf.dates, turn.facts.zone) if target.content else []
    ends = sorted([*terms(mixed, turn.facts.zone), *before], key=lambda term: term.at)
    return f"Use by {words.until(ends[0], turn.facts)}." if ends else "No date limits it."
