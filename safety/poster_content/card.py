"""What goes on the card of one product, in the order of TRGS 555: area and task, dangers, protection and
rules, malfunction and spill, first aid, waste. The headings are from memory: check before citing them.
"""

from collections.abc import Sequence
from datetime import date

from safety.hazards.facts import SheetFacts
from safety.poster_content.dates import year_after
from safety.poster_content.events import FIRE, SPILL, first_aid, own_words
from safety.poster_content.judged import Judged, gravest_first, lowered, product
from safety.poster_content.never import never_together
from safety.poster_content.place import BURNS, equipment
from safety.print.values import CardContent, CardSection, Line, Masthead, PlaceFacts
from safety.print.words import ENGLISH, SHEETS_SPEAK, say, written

NEVER_DRAIN = (
    "Never into a drain, a sink or the household bin. Rests and soaked cloths into the closed, labelled "
    "container; see section 13 of its data sheet."
)
NEVER_DRAIN_BUT = (
    "Never into a drain, a sink or the household bin. Rests and soaked cloths into the closed, labelled "
    "container at: {where}. See section 13 of its data sheet."
)
CLOTHS = "Soaked cloths can catch fire by themselves: closed metal can, emptied daily."
CLEAN = "No smoking, eating or drinking where it is used. Wash hands before breaks and at the end."
BOTTLE = "Keep it in its labelled bottle, shut."
FAULT = "Something leaks, smells or a fan stops: stop work, leave, tell the owner."


def card_content(
    name: str,
    facts: SheetFacts | None,
    *,
    regime: str,
    url: str,
    printed_on: date,
    maker: str = "",
    sheet_of: date | None = None,
    shop: PlaceFacts,
    places: Sequence[PlaceFacts] = (),
    waste_at: str = "",
    others: Sequence[str] = (),
    language: str = ENGLISH,
) -> CardContent:
    """Return everything that the card of one product says. Raises UnknownLanguage.

    shop: its name and numbers; places: where the product is admitted; others: what is admitted beside it, so
    that “never with” names it; sheet_of: the day of its confirmed sheet.
    """
    judged = gravest_first([(name, facts)], regime)
    until = written(year_after(printed_on), language)
    issue = say(
        "{name}, {day} · replace after {until} or when its data sheet changes.",
        language, name=name, day=written(printed_on, language), until=until,
    )  # fmt: skip
    if language != ENGLISH:
        issue = f"{issue} {say(SHEETS_SPEAK, language)}"
    return CardContent(
        masthead=Masthead(name, url, issue, language, 1.0, shop.binder_at),
        about=about(maker, sheet_of, language),
        product=product(judged[0], regime, language),
        equipment=equipment(judged, PlaceFacts(""), language),
        sections=sections(judged, shop, places, waste_at, others, language),
    )


# words with a blank, and the field of a place that fills it
Things = tuple[tuple[str, str], ...]


def about(maker: str, sheet_of: date | None, language: str) -> str:
    """Return who makes it and of which day its sheet is."""
    if sheet_of is None:
        words = "By {maker}. No data sheet." if maker else "No data sheet."
        return say(words, language, maker=maker)
    words = "By {maker}. Data sheet of {day}." if maker else "Data sheet of {day}."
    return say(words, language, maker=maker, day=written(sheet_of, language))


def sections(
    judged: Sequence[Judged],
    shop: PlaceFacts,
    places: Sequence[PlaceFacts],
    waste_at: str,
    others: Sequence[str],
    language: str,
) -> tuple[CardSection, ...]:
    """Return the six parts in their order; the drawing puts diamonds and signs into the second and third."""
    parts = (
        ("Area and task", area(places, language)),
        ("Dangers", ()),
        ("Protection and rules", rules(judged, others, language)),
        ("Malfunction and spill", malfunction(judged, places, language)),
        ("First aid", aid(judged, shop, places, language)),
        ("Waste", waste(judged, waste_at, language)),
    )
    return tuple(CardSection(say(title, language), tuple(lines)) for title, lines in parts)


def area(places: Sequence[PlaceFacts], language: str) -> list[Line]:
    """Return where it is used and for what."""
    if not places:
        return [
            Line(say("Not admitted to any place yet.", language)),
            Line(say("For the task as its data sheet and its label say.", language)),
        ]
    where = "; ".join(f"{place.name} ({place.task})" if place.task else place.name for place in places)
    return [Line(say("Used in: {places}.", language, places=where))]


def rules(judged: Sequence[Judged], others: Sequence[str], language: str) -> list[Line]:
    """Return what must not meet it, and the rules that hold for all."""
    name, facts, parts = judged[0]
    beside: list[Judged] = [(other, None, parts) for other in others if other != name]
    pairs = never_together([(name, facts, parts), *beside], language)
    never = [
        Line(say("Never with {other}: {why}.", language, other=pair.other, why=pair.why), strong=True)
        for pair in pairs
    ]
    return [*never, Line(say(CLEAN, language)), Line(say(BOTTLE, language))]


def malfunction(judged: Sequence[Judged], places: Sequence[PlaceFacts], language: str) -> list[Line]:
    """Return what to do when something fails, burns or is spilt, and where the things for it are."""
    found = [
        Line(say(FAULT, language)),
        joined("Spill", SPILL, own_words(judged, "spill", language), language),
        joined("Fire", FIRE, own_words(judged, "fire", language), language),
    ]
    where = where_are(
        (("Kit: {where}", "spill_kit"), ("Extinguisher: {where}", "extinguisher")), places, language
    )
    return [*found, *where]


def where_are(things: Things, places: Sequence[PlaceFacts], language: str) -> list[Line]:
    """Return on one line where things stand, as far as somebody entered it."""
    known = [(words, where) for words, field in things if (where := located(places, field))]
    said = " · ".join(say(words, language, where=where) for words, where in known)
    return [Line(said, strong=True)] if said else []


def joined(title: str, first: str, own: Sequence[Line], language: str) -> Line:
    """Return a title, the common first words and the sheet's own in one paragraph."""
    said = " ".join([lowered(say(first, language)), *(line.text for line in own)])
    return Line(f"{say(title, language)}: {said}", any(line.strong for line in own))


def located(places: Sequence[PlaceFacts], field: str) -> str:
    """Return where a thing is, by place where the places differ."""
    known = [(place.name, getattr(place, field)) for place in places if getattr(place, field)]
    where = dict.fromkeys(text for _, text in known)
    return "; ".join(where) if len(where) < 2 else "; ".join(f"{name}: {text}" for name, text in known)


def aid(
    judged: Sequence[Judged], shop: PlaceFacts, places: Sequence[PlaceFacts], language: str
) -> list[Line]:
    """Return the four routes, each in its own line, then whom to call and where the eyewash is."""
    found: list[Line] = []
    for route in first_aid(judged, language):
        said = " ".join(line.text for line in route.lines)
        strong = any(line.strong for line in route.lines)
        found.append(Line(f"{route.title}: {lowered(route.lead)}. {said}", strong))
    found += where_are(
        (("Eyewash: {where}", "eyewash"), ("First aid: {where}", "first_aid")), places, language
    )
    found.append(Line(numbers(shop, language), strong=True))
    return found


def numbers(shop: PlaceFacts, language: str) -> str:
    """Return whom to call."""
    call = say("Call: number not entered yet, ask the owner", language)
    if shop.emergency_number:
        call = say("Call {number}", language, number=shop.emergency_number)
    if not shop.poison_centre:
        return f"{call}."
    return f"{call}. {say('Poison centre: {number}', language, number=shop.poison_centre)}."


def waste(judged: Sequence[Judged], waste_at: str, language: str) -> list[Line]:
    """Return where rests go; the general words are common practice, no source."""
    found = [Line(say(NEVER_DRAIN_BUT if waste_at else NEVER_DRAIN, language, where=waste_at))]
    if any(set(parts.elements.pictograms) & set(BURNS) for _, _, parts in judged):
        found.append(Line(say(CLOTHS, language), strong=True))
    return found
