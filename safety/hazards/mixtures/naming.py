"""Ingredients that an EU label must name or whose sheet it must offer, although they class nothing.

Sources: CLP Annex II 2.4, 2.8, 2.10 and Table 3.4.6, consolidation of 1 Sep 2025. Which CAS numbers are
isocyanates is from memory; a name that says so counts as well.
"""

from collections.abc import Iterator

from safety.hazards.mixtures.cutoffs import reasons
from safety.hazards.mixtures.limits import Of, own_limit, reaches
from safety.hazards.mixtures.values import Ingredient, Mixture

SENSITISERS = (Of("Skin Sens."), Of("Resp. Sens."))
NAMED_FROM, NAMED_FROM_1A, PART_OF_OWN_LIMIT = 0.1, 0.01, 10.0
# Carc. 2, Repr., lactation from 0.1 %, any other health or environment class from 1 %, in a gas from 0.2 %.
SHEET_FROM_LASTING, SHEET_FROM, SHEET_FROM_GAS = 0.1, 1.0, 0.2
LASTING = (Of("Carc.", ("2",)), Of("Repr."), Of("Lact."))
ISOCYANATES = frozenset(
    (
        "822-06-0", "4098-71-9", "5124-30-1", "101-68-8", "5873-54-1", "2536-05-2", "26447-40-5", "9016-87-9",
        "584-84-9", "91-08-7", "26471-62-5", "28182-81-2", "53880-05-0", "4035-89-6", "3779-63-3",
        "4083-64-1", "3173-72-6", "3634-83-1",
    )
)  # fmt: skip


def isocyanates(mixture: Mixture) -> list[Ingredient]:
    """Return the ingredients that are isocyanates, by CAS number, by name, or as their maker says."""
    return [
        one
        for one in mixture.ingredients
        if one.percent > 0
        and (one.cas in ISOCYANATES or "EUH204" in one.supplemental or "isocyanat" in one.name.lower())
    ]


def epoxies(mixture: Mixture) -> list[Ingredient]:
    """Return the ingredients whose maker says EUH205."""
    return [one for one in mixture.ingredients if one.percent > 0 and "EUH205" in one.supplemental]


def sensitisers(mixture: Mixture) -> list[tuple[Ingredient, float]]:
    """Return sensitisers that did not class the mixture, with the percentage from which each is named."""
    found = []
    for one in mixture.ingredients:
        limit = named_from(one)
        if limit is None or one.percent <= 0 or not reaches(one.percent, limit):
            continue
        if not any(True for of in SENSITISERS for _ in reasons(one, "EU", of, mixture.form == "gas")):
            found.append((one, limit))
    return found


def named_from(one: Ingredient) -> float | None:
    """Return from which percentage a sensitiser is named, None for what is none.

    The lower of the generic amount and a tenth of its own limit: a name too many harms nobody.
    """
    amounts = [
        NAMED_FROM_1A if hazard.of.category == "1A" else NAMED_FROM
        for hazard in one.hazards or ()
        if any(of.covers(hazard) for of in SENSITISERS)
    ]
    own = own_limit(one, "EU", *SENSITISERS)
    return min([*amounts, *([] if own is None else [own / PART_OF_OWN_LIMIT])], default=None)


def data_sheet(mixture: Mixture) -> Iterator[dict[str, object]]:
    """Yield the ingredients for which a mixture without class still owes its sheet."""
    for one in mixture.ingredients:
        limit = sheet_from(one, mixture.form == "gas")
        if limit is not None and one.percent > 0 and reaches(one.percent, limit):
            yield {"name": one.name, "percent": one.percent, "limit": limit}


def sheet_from(one: Ingredient, gas: bool) -> float | None:
    """Return from which percentage an ingredient makes the sheet due, None where it never does."""
    limits = [limit for limit in [named_from(one)] if limit is not None]
    for hazard in one.hazards or ():
        if any(of.covers(hazard) for of in LASTING):
            limits.append(SHEET_FROM_LASTING)
        elif not hazard.codes[0].startswith("H2"):
            limits.append(SHEET_FROM_GAS if gas else SHEET_FROM)
    return min(limits, default=None)
