"""Products with what their sheets say of them, the gravest first, and their texts in one language."""

from collections.abc import Iterable, Sequence

from safety.hazards import plain
from safety.hazards.facts import LabelParts, SheetFacts, label_parts
from safety.hazards.statements import wording
from safety.print.values import Danger, PosterProduct
from safety.print.words import ENGLISH, said_or_same, say

Named = tuple[str, SheetFacts | None]
Judged = tuple[str, SheetFacts | None, LabelParts]
WORN = ("wear_eyes", "wear_hands", "wear_breath", "wear_body")


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


def word_of(judged: Sequence[Judged], language: str) -> str | None:
    """Return the gravest signal word."""
    words = {parts.elements.signal_word for _, _, parts in judged}
    found = "Danger" if "Danger" in words else "Warning" if "Warning" in words else None
    return say(found, language) if found else None


def dangers(judged: Sequence[Judged], language: str = ENGLISH) -> tuple[Danger, ...]:
    """Return one entry a pictogram in plain words, the gravest first."""
    found: dict[str, list[tuple[str, str, str, tuple[str, ...]]]] = {}
    for name, _, parts in judged:
        for heading, pictogram, codes in plain.meant(parts.elements.pictograms, parts.elements.statements):
            key = heading if heading in plain.APART else pictogram
            found.setdefault(key, []).append((heading, pictogram, name, codes))
    order = [heading for heading, _, _ in plain.GROUPS]
    hits = [sorted(one, key=lambda hit: order.index(hit[0])) for one in found.values()]
    return tuple(danger(one, language) for one in sorted(hits, key=lambda one: order.index(one[0][0])))


def danger(hits: list[tuple[str, str, str, tuple[str, ...]]], language: str) -> Danger:
    """Return the danger of one group of hits, gravest first."""
    headings = list(dict.fromkeys(heading for heading, _, _, _ in hits))
    first = who_does(hits, headings[0], language)
    others = (f"{say(one, language)}: {who_does(hits, one, language)}" for one in headings[1:])
    return Danger(
        pictogram=hits[0][1],
        heading=say(headings[0], language),
        products=tuple(dict.fromkeys(name for _, _, name, _ in hits)),
        lines=(first, *others),
        codes=tuple(dict.fromkeys(code for _, _, _, codes in hits for code in codes)),
    )


def who_does(hits: list[tuple[str, str, str, tuple[str, ...]]], heading: str, language: str) -> str:
    """Return the products of one danger, each with its own codes: “Hollin wipe. H225; Tidewall. H226”."""
    alike: dict[tuple[str, ...], list[str]] = {}
    for said, _, name, codes in hits:
        if said == heading:
            alike.setdefault(codes, []).append(name)
    return "; ".join(f"{some(names, language)}. {', '.join(codes)}" for codes, names in alike.items())


def some(names: Sequence[str], language: str = ENGLISH, most: int = 5) -> str:
    """Return names in a row; beyond the most, how many more (each product's own line has it in full)."""
    rest = len(names) - most
    # Naming one more takes no more room than saying “and 1 more”.
    if rest <= 1:
        return ", ".join(names)
    return say("{names} and {count} more", language, names=", ".join(names[:most]), count=rest)


def grouped(
    pairs: Iterable[tuple[str, str]], everyone: int, language: str = ENGLISH, most: int = 3
) -> tuple[str, ...]:
    """Return texts with the products they belong to; without names where all say the same."""
    by_text: dict[str, list[str]] = {}
    for name, text in pairs:
        if text.strip():
            by_text.setdefault(text.strip().rstrip("."), []).append(name)
    if len(by_text) == 1 and len(next(iter(by_text.values()))) == everyone:
        return (f"{next(iter(by_text))}.",)
    return tuple(f"{some(names, language, most)}: {lowered(text)}." for text, names in by_text.items())


def lowered(text: str) -> str:
    """Return a text that goes on after a colon, unless it opens with a name or an acronym."""
    first = text.split()[0]
    return text[0].lower() + text[1:] if first[1:].islower() or len(first) == 1 else text


def texts(facts: SheetFacts | None, parts: LabelParts, regime: str, language: str) -> tuple[str, ...]:
    """Return the statements in full with their codes, in the regulation's wording of the language."""
    if language == ENGLISH or not parts.statements or facts is None:
        return label_parts(facts, regime, with_codes=True).statements
    codes = parts.elements.statements + parts.elements.supplemental if facts.hazards else facts.statements
    worded = (code for code in codes if not code.startswith("P"))
    return tuple(f"{code.partition(' ')[0]} {wording(code, regime, language)}" for code in worded)


def product(one: Judged, regime: str, language: str = ENGLISH) -> PosterProduct:
    """Return one product of a list, its texts with their codes, and what to wear."""
    name, facts, parts = one
    worn = [getattr(facts, field).strip().rstrip(".") for field in WORN] if facts else []
    word = parts.elements.signal_word
    return PosterProduct(
        name=name,
        pictograms=parts.elements.pictograms,
        signal_word=say(word, language) if word else None,
        statements=texts(facts, parts, regime, language),
        wear=tuple(text for text in worn if text),
        notice=said_or_same(parts.notice, language),
    )
