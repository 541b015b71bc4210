"""What goes on a place's poster: facts of the place and of the sheets in, one content out. Pure.

Lead lines of first aid are the common first measures (after the P-statements P305+P351+P338, P303+P361+P353,
P304+P340, P301+P330+P331, from memory); the sheets' own words stand below them, the gravest product first.
"""

from collections.abc import Iterable, Sequence
from datetime import date

from safety.hazards import plain
from safety.hazards.facts import LabelParts, SheetFacts, is_grave, label_parts
from safety.print.values import (
    Danger,
    Equipment,
    FirstAid,
    Line,
    NeverPair,
    PlaceFacts,
    PosterContent,
    PosterProduct,
)

Named = tuple[str, SheetFacts | None]
Judged = tuple[str, SheetFacts | None, LabelParts]

ROUTES = (
    ("Eyes", "aid_eyes", "Rinse, lids open", "Rinse at least 15 minutes. Lenses out, keep rinsing. Call."),
    ("Skin", "aid_skin", "Clothes off, rinse", "Wash with plenty of water. Call if it hurts or reddens."),
    (
        "Breath",
        "aid_breath",
        "Out to fresh air",
        "Sit up, rest. Call if breathing is hard, even if it passes.",
    ),
    ("Swallowed", "aid_swallowed", "Do not make sick", "Rinse the mouth. Call, bottle in hand."),
)
WEAR = (("eyes", "Eyes"), ("hands", "Hands"), ("breath", "Breath"), ("body", "Body"))
FLUORIDE = "Fluoride: rub in calcium gluconate gel after rinsing, then hospital, even without pain."
BURNS = ("GHS02", "GHS03")


def poster_content(
    place: PlaceFacts,
    products: Sequence[Named],
    *,
    regime: str,
    url: str,
    version: int,
    printed_on: date,
    replace_after: date | None = None,
    read_at_m: float = 2.0,
) -> PosterContent:
    """Return everything the poster says. Products without a confirmed sheet stand there with a warning."""
    judged = gravest_first(products, regime)
    return PosterContent(
        place=place,
        signal_word=word_of(judged),
        dangers=dangers(judged),
        equipment=equipment(judged, place),
        never=never_together(judged),
        first_aid=first_aid(judged, place),
        mishaps=mishaps(judged, place),
        products=tuple(product(one, regime) for one in judged),
        unknown=tuple(name for name, facts, _ in judged if facts is None),
        regime=regime,
        url=url,
        version=version,
        printed_on=written(printed_on),
        replace_after=written(replace_after or year_after(printed_on)),
        read_at_m=read_at_m,
    )


def written(day: date) -> str:
    """Return a day in words: 25 November 2026."""
    return f"{day.day} {day:%B %Y}"


def year_after(day: date) -> date:
    """Return the same day a year later, 28 February for a leap day."""
    try:
        return day.replace(year=day.year + 1)
    except ValueError:
        return day.replace(year=day.year + 1, day=28)


def gravest_first(products: Iterable[Named], regime: str) -> list[Judged]:
    """Return products with their label parts: unknown ones first among equals of the gravest."""
    judged = [(name, facts, label_parts(facts, regime)) for name, facts in products]
    return sorted(judged, key=lambda one: (rank(one), one[0].lower()))


def rank(one: Judged) -> int:
    """Return the place of a product on the sheet; what is unknown ranks with what burns."""
    _, facts, parts = one
    if facts is None or (not parts.elements.statements and not facts.not_classified):
        return plain.gravity(("H314",))
    return plain.gravity(parts.elements.statements)


def word_of(judged: Sequence[Judged]) -> str | None:
    """Return the gravest signal word of the place."""
    words = {parts.elements.signal_word for _, _, parts in judged}
    return "Danger" if "Danger" in words else "Warning" if "Warning" in words else None


def dangers(judged: Sequence[Judged]) -> tuple[Danger, ...]:
    """Return one entry a pictogram in plain words, the gravest first."""
    found: dict[str, list[tuple[str, str, str, tuple[str, ...]]]] = {}
    for name, _, parts in judged:
        for heading, pictogram, codes in plain.meant(parts.elements.pictograms, parts.elements.statements):
            key = heading if heading in plain.APART else pictogram
            found.setdefault(key, []).append((heading, pictogram, name, codes))
    order = [heading for heading, _, _ in plain.GROUPS]
    made = [danger(sorted(hits, key=lambda hit: order.index(hit[0]))) for hits in found.values()]
    return tuple(sorted(made, key=lambda one: order.index(one.heading)))


def danger(hits: list[tuple[str, str, str, tuple[str, ...]]]) -> Danger:
    """Return the danger of one group of hits, gravest first."""
    headings = list(dict.fromkeys(heading for heading, _, _, _ in hits))
    products = tuple(dict.fromkeys(name for _, _, name, _ in hits))
    return Danger(
        pictogram=hits[0][1],
        heading=headings[0],
        also=", ".join(part[0].lower() + part[1:] for part in headings[1:]),
        products=products,
        says=some(products),
        codes=tuple(dict.fromkeys(code for _, _, _, codes in hits for code in codes)),
    )


def grouped(pairs: Iterable[tuple[str, str]], everyone: int, most: int = 3) -> tuple[str, ...]:
    """Return texts with the products they belong to; without names where all say the same."""
    by_text: dict[str, list[str]] = {}
    for name, text in pairs:
        if text.strip():
            by_text.setdefault(text.strip().rstrip("."), []).append(name)
    if len(by_text) == 1 and len(next(iter(by_text.values()))) == everyone:
        return (f"{next(iter(by_text))}.",)
    return tuple(f"{some(names, most)}: {lowered(text)}." for text, names in by_text.items())


def some(names: Sequence[str], most: int = 5) -> str:
    """Return names in a row; beyond the most, how many more (each product's own line has it in full)."""
    rest = len(names) - most
    # Naming one more takes no more room than saying “and 1 more”.
    return ", ".join(names) if rest <= 1 else f"{', '.join(names[:most])} and {rest} more"


def lowered(text: str) -> str:
    """Return a text that goes on after a colon, unless it opens with a name or an acronym."""
    first = text.split()[0]
    return text[0].lower() + text[1:] if first[1:].islower() or len(first) == 1 else text


def equipment(judged: Sequence[Judged], place: PlaceFacts) -> tuple[Equipment, ...]:
    """Return what to wear, and the prohibition of flames with the ventilation where anything burns."""
    known = [(name, facts) for name, facts, _ in judged if facts]
    signs = []
    for sign, title in WEAR:
        texts = grouped([(name, getattr(facts, f"wear_{sign}")) for name, facts in known], len(known), 2)
        if texts:
            signs.append(Equipment(sign, title, texts))
    said = place.ventilation.strip().rstrip(".").lower()
    more = [(name, facts.ventilation) for name, facts in known]
    air = grouped(
        [(name, text) for name, text in more if text.strip().rstrip(".").lower() != said], len(known)
    )
    lines = tuple(dict.fromkeys([place.ventilation, *air] if place.ventilation else air))
    if any(set(parts.elements.pictograms) & set(BURNS) for _, _, parts in judged):
        signs.append(Equipment("flame", "No flame", lines or ("No sparks, no smoking.",)))
    elif lines:
        signs.append(Equipment("", "Air", lines))
    return tuple(signs)


def never_together(judged: Sequence[Judged]) -> tuple[NeverPair, ...]:
    """Return each pair once, the gravest product's first, whichever of the two sheets named it.

    Products that must not meet the same things for the same reason share a line.
    """
    pairs: dict[frozenset[str], tuple[str, str, str]] = {}
    for name, facts, _ in judged:
        for other, why in facts.never_with if facts else ():
            pairs.setdefault(frozenset((name.lower(), other.lower())), (name, other, why))
    others: dict[tuple[str, str], list[str]] = {}
    for name, other, why in pairs.values():
        others.setdefault((name, why), []).append(other)
    names: dict[tuple[tuple[str, ...], str], list[str]] = {}
    for (name, why), met in others.items():
        names.setdefault((tuple(met), why), []).append(name)
    return tuple(NeverPair(some(ones, 3), some(met), why) for (met, why), ones in names.items())


def aid_lines(judged: Sequence[Judged], field: str) -> tuple[Line, ...]:
    """Return the sheets' own words of one route, strong for what maims."""
    known = [(name, facts) for name, facts, _ in judged if facts]
    grave = [(name, getattr(facts, field)) for name, facts in known if is_grave(facts)]
    other = [(name, getattr(facts, field)) for name, facts in known if not is_grave(facts)]
    strong = grouped(grave, -1 if other else len(grave))
    return (
        *(Line(text, strong=True) for text in strong),
        *(Line(text) for text in grouped(other, -1 if grave else len(other))),
    )


def first_aid(judged: Sequence[Judged], place: PlaceFacts) -> tuple[FirstAid, ...]:
    """Return the four routes."""
    found = []
    for title, field, lead, default in ROUTES:
        lines = [Line(default), *aid_lines(judged, field)]
        if title == "Skin" and any(facts and facts.holds_fluoride for _, facts, _ in judged):
            lines.append(Line(FLUORIDE, strong=True))
        if title == "Eyes" and place.eyewash:
            lines.append(Line(f"Eyewash: {place.eyewash}", strong=True))
        found.append(FirstAid(title, lead, tuple(lines)))
    return tuple(found)


def mishaps(judged: Sequence[Judged], place: PlaceFacts) -> tuple[FirstAid, ...]:
    """Return fire and spill."""
    fire = [
        Line("Doors shut. Fight it only if it is small and your way out is free."),
        *aid_lines(judged, "fire"),
    ]
    spill = [Line("Flames off, doors open, glasses and gloves on."), *aid_lines(judged, "spill")]
    if place.extinguisher:
        fire.append(Line(f"Extinguisher: {place.extinguisher}", strong=True))
    if place.spill_kit:
        spill.append(Line(f"Kit: {place.spill_kit}", strong=True))
    return (FirstAid("Fire", "Out, call", tuple(fire)), FirstAid("Spill", "Keep others out", tuple(spill)))


def product(one: Judged, regime: str) -> PosterProduct:
    """Return one product of the list, its texts with their codes, and what to wear."""
    name, facts, parts = one
    texts = label_parts(facts, regime, with_codes=True).statements
    wear = [facts.wear_eyes, facts.wear_hands, facts.wear_breath, facts.wear_body] if facts else []
    return PosterProduct(
        name=name,
        pictograms=parts.elements.pictograms,
        signal_word=parts.elements.signal_word,
        statements=texts,
        wear=tuple(text.strip().rstrip(".") for text in wear if text.strip()),
        notice=parts.notice,
    )
