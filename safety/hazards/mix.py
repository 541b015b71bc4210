"""What a bottle holds that was filled with product and water, and what its label says. Pure.

The sheet speaks for what was bought; a mix is classified anew from the sheet's composition, as the dilution
that it is. What the composition cannot carry keeps the concentrate's classes and says so: a mix is never
called milder on half the data. Physical hazards are never summed over ingredients, so the concentrate's stay
(water does not lower the flammable category unless a flash point of the dilution was measured).
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from safety.hazards.classes import Hazard, UnknownHazard, read_hazard
from safety.hazards.composed import beyond, gravest, physical
from safety.hazards.facts import NO_NOTE, Measured, Note, SheetFacts
from safety.hazards.mixtures.dilution import diluted
from safety.hazards.mixtures.fields import MixtureError
from safety.hazards.mixtures.reading import read_mixture
from safety.hazards.mixtures.rules import Classified, classify
from safety.hazards.mixtures.values import Because, Mixture
from safety.hazards.precautions import choose

UNDILUTED = (1, 0)
# kg/l where a product's density is not known: above what this trade dilutes, so that no mix is reckoned too
# thin (from memory: 50 % sodium hydroxide has 1.53, wash and wheel concentrates 1.0 to 1.3).
DENSEST = 1.5
FLAMMABLE = "flam liq"
NO_COMPOSITION = (
    "Mixed {product}:{water} with water. Classes of the concentrate: no composition on its sheet."
)
UNREADABLE = "Mixed {product}:{water} with water. Classes of the concentrate: its composition cannot be read."
NOT_SETTLED = "Classes not settled: see its page; treat as the concentrate."
LONGEST = 90  # letters of a reason that a bottle's label has room for
# What the mix's own composition decides anew; the sheet's other supplemental statements stay in every mix.
THICK = Because(
    "", f"the product's density is not known: counted as {DENSEST} kg/l, the safe side", "from memory", "M"
)
DECIDED_ANEW = ("EUH071", "EUH208", "EUH210")


@dataclass(frozen=True)
class Content:
    """What is in a bottle: facts whose classes and note are those of the mix, and how they were found.

    needs_review: what could not be settled, a whole sentence each; then the concentrate's classes stand too.
    """

    facts: SheetFacts
    needs_review: tuple[str, ...] = ()
    because: tuple[Because, ...] = ()


def mixed(facts: SheetFacts, regime: str, parts: tuple[int, int], density: float | None = None) -> Content:
    """Return what a bottle holds that was filled with `parts` (of product, of water by volume).

    density: kg/l of the product; None counts as the densest of the trade.
    """
    if not parts[1]:
        return Content(facts)
    fills = (("product", parts[0]), ("water", parts[1]))
    if not facts.hazards and not facts.not_classified:
        return Content(facts)
    if facts.composition is None:
        return Content(replace(facts, note=Note(NO_COMPOSITION, fills)))
    try:
        concentrate = read_mixture(facts.composition)
        sheet = [read_hazard(one) for one in facts.hazards]
    except (MixtureError, UnknownHazard):
        return Content(replace(facts, note=Note(UNREADABLE, fills)))
    known = known_of(facts.mixes, parts)
    found = classify(thinned(concentrate, parts, density, known), regime)
    whole = [read_hazard(one) for one in classify(concentrate, regime).hazards]
    reasons = (*found.needs_review, *beyond(sheet, whole, regime))
    because = found.because if density else (*found.because, THICK)
    stays = [
        one
        for one in (*sheet, *whole)
        if physical(one) and not (measured(known) and one.of.group == FLAMMABLE)
    ]
    stays += sheet if reasons else []
    return Content(_facts(facts, stays, found, reasons, regime), reasons, because)


def thinned(
    concentrate: Mixture, parts: tuple[int, int], density: float | None, known: Measured | None
) -> Mixture:
    """Return the dilution as health and environment see it, with what was measured on it.

    No physical hazard is asked of it: those of the concentrate stay, which water makes no worse.
    """
    bare = replace(
        concentrate,
        ph=concentrate.ph if known is None or known.ph is None else None,
        flash_point_c=None,
        ingredients=tuple(replace(one, hazards=unphysical(one.hazards)) for one in concentrate.ingredients),
    )
    thin = diluted(bare, *parts, density or DENSEST)
    if known is None:
        return thin
    return replace(thin, ph=thin.ph if known.ph is None else known.ph, flash_point_c=known.flash_point_c)


def unphysical(hazards: tuple[Hazard, ...] | None) -> tuple[Hazard, ...] | None:
    """Return an ingredient's hazards without the physical ones; None stays what nobody looked at."""
    return None if hazards is None else tuple(one for one in hazards if not physical(one))


def measured(known: Measured | None) -> bool:
    """Return whether a flash point was measured on the mix."""
    return known is not None and known.flash_point_c is not None


def known_of(mixes: Iterable[Measured], parts: tuple[int, int]) -> Measured | None:
    """Return what is known of a mix: measured on it, else on the thinnest of the thicker ones.

    More water brings a pH nearer to 7 and a flash point no lower (common practice, no source).
    """
    thicker = [one for one in mixes if one.parts[1] * parts[0] <= parts[1] * one.parts[0]]
    return max(thicker, key=lambda one: one.parts[1] / one.parts[0], default=None)


def _facts(
    facts: SheetFacts, stays: list[Hazard], found: Classified, reasons: tuple[str, ...], regime: str
) -> SheetFacts:
    """Return the mix's facts: what was found, beside it what of the concentrate's stays."""
    hazards = gravest([*stays, *map(read_hazard, found.hazards)])
    # H-codes follow from the classes; what the sheet's label says beside them stays where it still fits.
    kept = [one for one in facts.statements if one.startswith(("EUH", "P") if reasons else "EUH")]
    kept = [one for one in kept if reasons or not one.startswith(DECIDED_ANEW)]
    coded = [one for one in found.supplemental if one.startswith("EUH")]
    if not reasons:
        # What to do follows from the classes: the concentrate's advice is not the mix's.
        coded += map(str, choose(map(str, hazards), regime).printed)
    return replace(
        facts,
        hazards=tuple(str(one) for one in hazards),
        statements=tuple(dict.fromkeys([*kept, *coded])),
        sentences=tuple(one for one in found.supplemental if one not in coded),
        not_classified=not hazards,
        note=unsettled(reasons),
    )


def unsettled(reasons: tuple[str, ...]) -> Note:
    """Return the label's sentence where classes could not be settled: the shortest reason.

    One that would fill the label is left to the bottle's page, where all of them stand.
    """
    if not reasons:
        return NO_NOTE
    short = min(reasons, key=len).rstrip(".")
    told = short[0].lower() + short[1:] if len(short) <= LONGEST else "see its page"
    more = f" ({len(reasons)} questions)" if len(reasons) > 1 else ""
    words = "Classes not settled{more}: {told}; treat as the concentrate."
    return Note(words, (("more", more), ("told", told)), NOT_SETTLED)
