"""The lines of a label beside its hazards: mix, days and who, maker, what to wear, size by capacity. Pure."""

from safety.label_content.bottle import Bottle
from safety.print.label_sizes import first_for, rule_for
from safety.print.words import say

# of one part and of several parts of product
MIXED = ("{product} part + {water} water", "{product} parts + {water} water")
MIXED_BY_WEIGHT = (
    "{product} part + {water} water by weight",
    "{product} parts + {water} water by weight",
)


def signal(found: str | None, language: str) -> str | None:
    """Return the signal word in a language."""
    return say(found, language) if found else None


def mix_of(bottle: Bottle) -> tuple[str, ...]:
    """Return the parts of product and of water."""
    # "1:10" is one part in ten to some and one part and ten to others: say which.
    product, water = bottle.parts
    if not bottle.filled and not water:
        return ()
    if not water:
        return (say("undiluted", bottle.language),)
    one, several = MIXED_BY_WEIGHT if bottle.by_weight else MIXED
    return (say(one if product == 1 else several, bottle.language, product=product, water=water),)


def days_of(bottle: Bottle) -> tuple[str, ...]:
    """Return the lots, and when it was mixed, by whom, when it was opened."""
    language, found = bottle.language, []
    if bottle.mixed_on:
        pattern = "mixed {day} by {who}" if bottle.mixed_by else "mixed {day}"
        found.append(say(pattern, language, day=bottle.mixed_on, who=bottle.mixed_by))
    elif bottle.mixed_by:
        found.append(say("mixed by {who}", language, who=bottle.mixed_by))
    if bottle.opened_on:
        found.append(say("opened {day}", language, day=bottle.opened_on))
    return (*(say("lot {lot}", language, lot=lot) for lot in bottle.lots), *found)


def supplier(bottle: Bottle) -> str:
    """Return the maker's name and telephone, as far as they are known."""
    return " · ".join(part for part in (bottle.maker, bottle.telephone) if part)


def reachable(bottle: Bottle) -> str:
    """Return the maker's name and telephone where a rule asks for both: what is not known says so."""
    unknown = say("not known here", bottle.language)
    if not bottle.maker:
        return f"{say('Maker and tel.', bottle.language)} {unknown}"
    return f"{bottle.maker} · {bottle.telephone or f'tel. {unknown}'}"


def wear(bottle: Bottle) -> tuple[str, ...]:
    """Return what the sheet says to wear, in one sentence."""
    facts = bottle.facts
    if facts is None:
        return ()
    worn = [part for part in (facts.wear_eyes, facts.wear_hands, facts.wear_breath, facts.wear_body) if part]
    return (f"{say('Wear:', bottle.language)} {', '.join(worn)}.",) if worn else ()


def sizes_of(bottle: Bottle) -> dict[str, object]:
    """Return what the capacity asks of the label: in the EU the table's row, elsewhere nothing."""
    if bottle.regime != "EU" or not bottle.capacity_ml:
        return {}
    rule = rule_for(bottle.capacity_ml)
    return {
        "side_mm": rule.side,
        "side_if_possible_mm": rule.side_if_possible,
        "x_height_mm": rule.x_height,
        "first": first_for(rule).name,
        "first_why": rule.says,
    }
