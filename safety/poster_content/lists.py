"""What goes on lists: what stands in one place, and a shop's hazardous chemicals.

The second is the list that 29 CFR 1910.1200(e)(1)(i) asks for, by the name that the sheet bears.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date

from safety.hazards.facts import SheetFacts
from safety.poster_content.judged import Judged, Named, gravest_first, product, word_of
from safety.poster_content.never import met, never_together
from safety.print.values import CabinetContent, Chemical, ChemicalsContent, Masthead, PlaceFacts
from safety.print.words import ENGLISH, say, written


@dataclass(frozen=True)
class Kept:
    """A product that a shop keeps: sheet_of is the day of its confirmed sheet, places their names."""

    name: str
    facts: SheetFacts | None
    maker: str = ""
    sheet_of: date | None = None
    places: tuple[str, ...] = ()


def masthead(name: str, shop: PlaceFacts, url: str, on: date, language: str) -> Masthead:
    """Return the head and foot of a list, read at 1 m."""
    issue = say("{name}, as of {day}.", language, name=name, day=written(on, language))
    return Masthead(name, url, issue, language, 1.0, shop.binder_at)


def cabinet_content(
    place: PlaceFacts,
    products: Sequence[Named],
    *,
    regime: str,
    url: str,
    printed_on: date,
    not_admitted: Sequence[str] = (),
    language: str = ENGLISH,
) -> CabinetContent:
    """Return what stands in a place, the gravest first. Only pairs that both stand there are named."""
    judged = gravest_first(products, regime)
    count = len(judged)
    words = "1 product stands here" if count == 1 else "{count} products stand here"
    none = say("Nothing with a data sheet stands here.", language)
    where = ", ".join(part for part in (place.shop, place.address) if part)
    off_list = "Not on the list of this place: {names}."
    return CabinetContent(
        masthead=masthead(place.name, place, url, printed_on, language),
        about=(say(words, language, count=count) if count else none, where),
        signal_word=word_of(judged, language),
        products=tuple(product(one, regime, language) for one in judged),
        never=never_together(only_each_other(judged), language),
        notes=(say(off_list, language, names=", ".join(not_admitted)),) if not_admitted else (),
    )


def only_each_other(judged: Sequence[Judged]) -> list[Judged]:
    """Return products whose sheets keep only what they say of one another."""
    names = [name for name, _, _ in judged]
    found: list[Judged] = []
    for name, facts, parts in judged:
        kept = tuple(pair for pair in met(name, facts, names) if pair[0] in names)
        found.append((name, replace(facts, never_with=kept) if facts else None, parts))
    return found


def chemicals_content(
    shop: PlaceFacts,
    products: Sequence[Kept],
    *,
    regime: str,
    url: str,
    printed_on: date,
    language: str = ENGLISH,
) -> ChemicalsContent:
    """Return the list by name. What has no sheet stands on it; what is not classified is named below it."""
    listed = [one for one in products if one.facts is None or not one.facts.not_classified]
    left_out = [one.name for one in products if one not in listed]
    count = len(listed)
    words = "1 product" if count == 1 else "{count} products"
    harmless = "Left out, as their sheets say they are not classified as hazardous: {names}."
    return ChemicalsContent(
        masthead=masthead(shop.shop, shop, url, printed_on, language),
        about=say(words, language, count=count),
        rows=tuple(
            chemical(one, regime, language) for one in sorted(listed, key=lambda one: one.name.lower())
        ),
        notes=(say(harmless, language, names=", ".join(sorted(left_out))),) if left_out else (),
    )


def chemical(one: Kept, regime: str, language: str) -> Chemical:
    """Return one line of the list."""
    none = say("none yet", language)
    return Chemical(
        name=one.name,
        maker=one.maker or say("maker not given", language),
        sheet=written(one.sheet_of, language) if one.sheet_of else none,
        places=", ".join(one.places),
        signal_word=word_of(gravest_first([(one.name, one.facts)], regime), language),
    )
