"""What goes on a place's poster."""

from collections.abc import Sequence
from datetime import date

from safety.poster_content.dates import year_after
from safety.poster_content.events import first_aid, mishaps
from safety.poster_content.judged import Judged, Named, dangers, gravest_first, grouped, product, word_of
from safety.poster_content.never import never_together
from safety.print.values import Equipment, PlaceFacts, PosterContent
from safety.print.words import ENGLISH, say, written

WEAR = (("eyes", "Eyes"), ("hands", "Hands"), ("breath", "Breath"), ("body", "Body"))
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
    language: str = ENGLISH,
) -> PosterContent:
    """Return everything the poster says. Products without a confirmed sheet stand there with a warning.

    Raises UnknownLanguage.
    """
    judged = gravest_first(products, regime)
    return PosterContent(
        place=place,
        signal_word=word_of(judged, language),
        dangers=dangers(judged, language),
        equipment=equipment(judged, place, language),
        never=never_together(judged, language),
        first_aid=first_aid(judged, language),
        mishaps=mishaps(judged, language),
        products=tuple(product(one, regime, language) for one in judged),
        unknown=tuple(name for name, facts, _ in judged if facts is None),
        regime=regime,
        url=url,
        version=version,
        printed_on=written(printed_on, language),
        replace_after=written(replace_after or year_after(printed_on), language),
        read_at_m=read_at_m,
        language=language,
    )


def equipment(judged: Sequence[Judged], place: PlaceFacts, language: str = ENGLISH) -> tuple[Equipment, ...]:
    """Return what to wear, the prohibition of flames where anything burns, and the ventilation."""
    known = [(name, facts) for name, facts, _ in judged if facts]
    signs = []
    for sign, title in WEAR:
        worn = [(name, getattr(facts, f"wear_{sign}")) for name, facts in known]
        if lines := grouped(worn, len(known), language, 2):
            signs.append(Equipment(sign, say(title, language), lines))
    lines = air(judged, place, language)
    if any(set(parts.elements.pictograms) & set(BURNS) for _, _, parts in judged):
        signs.append(
            Equipment("flame", say("No flame", language), (say("No sparks, no smoking.", language),))
        )
    if lines:
        signs.append(Equipment("", say("Air", language), lines))
    return tuple(signs)


def air(judged: Sequence[Judged], place: PlaceFacts, language: str) -> tuple[str, ...]:
    """Return the ventilation of the place, its figures, and what sheets ask beyond it."""
    known = [(name, facts.ventilation) for name, facts, _ in judged if facts]
    said = place.ventilation.strip().rstrip(".").lower()
    more = [(name, text) for name, text in known if text.strip().rstrip(".").lower() != said]
    lines = [place.ventilation, figures(place, language), *grouped(more, len(known), language)]
    return tuple(dict.fromkeys(line for line in lines if line))


def figures(place: PlaceFacts, language: str) -> str:
    """Return what is known of the air in figures: the room, the fan, how often the air is new an hour."""
    volume, air_ = place.volume_m3, place.air_m3_h
    if volume and air_:
        times = f"{air_ / volume:.1f}".removesuffix(".0")
        both = "Room {volume} m³, fresh air {air} m³ an hour: the air is new {times} times an hour at best."
        return say(both, language, volume=volume, air=air_, times=times)
    if volume:
        return say("Room {volume} m³.", language, volume=volume)
    return say("Fresh air {air} m³ an hour.", language, air=air_) if air_ else ""
