"""Skin corrosion and irritation: the sums, what is not additive, and the pH of the whole.

Sources: SOR/2015-17 s. 8.2.11 (read); Table 3.2.3 of CLP Annex I and UN GHS, A.2.4.3 of 29 CFR 1910.1200 say
the same (from memory, as are sub-categories of a sum and UN category 3). Not additive: CLP 3.2.3.3.4 and
s. 8.2.11(3).
"""

from collections.abc import Iterator
from functools import partial

from safety.hazards.mixtures.acidity import CORROSIVE, PH_RULE, is_extreme, missing_ph
from safety.hazards.mixtures.limits import Of, has, limit_for, own_limit, reaches
from safety.hazards.mixtures.shares import Source, acts_alone, numbers_alone, shares, source_alone
from safety.hazards.mixtures.values import Because, Found, Ingredient, Mixture

IRRITANT, MILD = Of("Skin Irrit.", ("2",)), Of("Skin Irrit.", ("3",))
BOTH = (CORROSIVE, IRRITANT)
CORROSIVE_FROM, CORROSIVE_IRRITATES_FROM, IRRITANT_FROM = 5.0, 1.0, 10.0
ALONE_CORROSIVE_FROM, ALONE_IRRITANT_FROM = 1.0, 3.0
CORR, IRRIT, IRRIT_MILD = "Skin Corr. 1 H314", "Skin Irrit. 2 H315", "Skin Irrit. 3 H316"
SUMS = {
    "EU": ("CLP Annex I Table 3.2.3 and Art 10, as in SOR/2015-17 s. 8.2.11", "M"),
    "US": ("29 CFR 1910.1200 Table A.2.3, as in SOR/2015-17 s. 8.2.11", "M"),
    "CA": ("SOR/2015-17 s. 8.2.11", "S"),
    "UN": ("UN GHS Rev 10 Table 3.2.3, as in SOR/2015-17 s. 8.2.11", "M"),
}
ALONE = {
    "EU": ("CLP Annex I 3.2.3.3.4 and Table 3.2.4", "S"),
    "US": ("29 CFR 1910.1200 Table A.2.4, as in SOR/2015-17 s. 8.2.11(3)", "M"),
    "CA": ("SOR/2015-17 s. 8.2.11(3)", "S"),
    "UN": ("UN GHS Rev 10 Table 3.2.4, as in CLP Annex I 3.2.3.3.4", "M"),
}


def skin(mixture: Mixture, regime: str) -> Found:
    """Return the gravest class for the skin with its reasons, and what could make it graver."""
    because = corrosive(mixture, regime)
    because = because or [*irritant(mixture, regime)]
    if not because and regime == "UN":
        because = [*mildly_irritant(mixture)]
    return Found(
        hazards=tuple(dict.fromkeys(one.hazard for one in because)),
        because=tuple(because),
        needs_review=tuple(open_questions(mixture, regime, because)),
    )


def corrosive(mixture: Mixture, regime: str) -> list[Because]:
    """Return why the mixture is Skin Corr. 1, [] where it is not; all name the same sub-category."""
    summed = shares(mixture, regime, corrosive_limit, *BOTH)
    found, reasons = CORR, []
    if summed.reached:
        found, (source, mark) = sub_category(mixture, regime)
        rule = f"Σ Skin Corr. 1 reaches its limit (Σ Ci/limit = {summed.total:.3g})"
        reasons.append(Because(found, rule, source, mark, summed.numbers()))
    for one in mixture.ingredients:
        grave = has(one, CORROSIVE) or is_extreme(one.ph)
        if grave and reaches(one.percent, ALONE_CORROSIVE_FROM) and acts_alone(one, regime, *BOTH):
            rule = "one ingredient that is not additive, corrosive or of extreme pH, from 1 %"
            numbers = numbers_alone(one, ALONE_CORROSIVE_FROM)
            reasons.append(Because(found, rule, *source_alone(one, ALONE[regime]), numbers))
    if is_extreme(mixture.ph):
        rule = "the whole mixture has a pH of 2 or below, or 11.5 or above"
        reasons.append(Because(found, rule, *PH_RULE[regime], {"ph": mixture.ph}))
    return reasons


def sub_category(mixture: Mixture, regime: str) -> tuple[str, Source]:
    """Return the class of a corrosive sum that reached its limit, with its source and mark.

    A counted corrosive without sub-category makes it plain category 1; CA asks all to share one.
    """
    counted = shares(mixture, regime, corrosive_limit, *BOTH).counted
    ranks = {rank(one, regime) for one, _, _ in counted}
    source, mark = SUMS[regime]
    if "" in ranks or (regime == "CA" and len(ranks) > 1):
        return CORR, (source, mark)
    if regime == "CA":
        return f"Skin Corr. 1{ranks.pop()} H314", (source, mark)
    from_memory = (f"{source}; the sub-category from memory", "M")
    for letter, graver in (("A", ("1A",)), ("B", ("1A", "1B"))):
        if shares(mixture, regime, partial(limit_of_rank, of=Of("Skin Corr.", graver)), *BOTH).reached:
            return f"Skin Corr. 1{letter} H314", from_memory
    return "Skin Corr. 1C H314", from_memory


def rank(one: Ingredient, regime: str) -> str:
    """Return A, B or C, the gravest sub-category an ingredient has; "" for category 1 without one."""
    for letter in "ABC":
        if limit_for(one, regime, CORROSIVE_FROM, Of("Skin Corr.", (f"1{letter}",))) is not None:
            return letter
    return ""


def limit_of_rank(one: Ingredient, regime: str, of: Of) -> float | None:
    """Return the limit towards these sub-categories; corrosive limits of its own count alone."""
    own = own_limit(one, regime, of)
    if own is None and own_limit(one, regime, CORROSIVE) is not None:
        return None
    return limit_for(one, regime, CORROSIVE_FROM, of)


def corrosive_limit(one: Ingredient, regime: str) -> float | None:
    """Return from which percentage alone an ingredient makes the mixture corrosive."""
    return limit_for(one, regime, CORROSIVE_FROM, CORROSIVE)


def irritant_limit(one: Ingredient, regime: str) -> float | None:
    """Return from which percentage alone an ingredient irritates: its own limit, else 1 % for a corrosive."""
    own, burns = own_limit(one, regime, IRRITANT), corrosive_limit(one, regime)
    if own is not None:
        return own if burns is None else min(own, burns)
    if burns is not None:
        return min(CORROSIVE_IRRITATES_FROM, burns)
    return IRRITANT_FROM if has(one, IRRITANT) else None


def mild_limit(one: Ingredient, regime: str) -> float | None:
    """Return the limit of the UN's sum for category 3, into which category 3 enters by itself."""
    stronger = irritant_limit(one, regime)
    return IRRITANT_FROM if stronger is None and has(one, MILD) else stronger


def irritant(mixture: Mixture, regime: str) -> Iterator[Because]:
    """Yield why the mixture is Skin Irrit. 2: 10·ΣCorr. 1 + ΣIrrit. 2 ≥ 10, or one that is not additive."""
    summed = shares(mixture, regime, irritant_limit, *BOTH)
    if summed.reached:
        rule = f"10·Σ Skin Corr. 1 + Σ Skin Irrit. 2 reaches its limit (Σ Ci/limit = {summed.total:.3g})"
        yield Because(IRRIT, rule, *SUMS[regime], summed.numbers())
    for one in mixture.ingredients:
        irritates = has(one, IRRITANT) and reaches(one.percent, ALONE_IRRITANT_FROM)
        if irritates and acts_alone(one, regime, *BOTH):
            rule = "one irritant ingredient that is not additive, from 3 %"
            yield Because(IRRIT, rule, *ALONE[regime], numbers_alone(one, ALONE_IRRITANT_FROM))


def mildly_irritant(mixture: Mixture) -> Iterator[Because]:
    """Yield why the mixture is Skin Irrit. 3, which the UN alone knows; from memory.

    A single category 3 ingredient that is not additive counts from 3 %.
    """
    stronger = shares(mixture, "UN", irritant_limit, *BOTH)
    summed = shares(mixture, "UN", mild_limit, *BOTH)
    source = "UN GHS Rev 10 Tables 3.2.3 and 3.2.4, from memory"
    if reaches(stronger.total * IRRITANT_FROM, 1.0):
        rule = "10·Σ Skin Corr. 1 + Σ Skin Irrit. 2 is from 1 to below 10"
        yield Because(IRRIT_MILD, rule, source, "M", stronger.numbers())
    elif summed.reached:
        rule = "10·Σ Skin Corr. 1 + Σ Skin Irrit. 2 + Σ Skin Irrit. 3 is 10 or above"
        yield Because(IRRIT_MILD, rule, source, "M", summed.numbers())
    for one in mixture.ingredients:
        if has(one, MILD) and reaches(one.percent, ALONE_IRRITANT_FROM) and acts_alone(one, "UN", *BOTH):
            rule = "one mildly irritant ingredient that is not additive, from 3 %"
            yield Because(IRRIT_MILD, rule, source, "M", numbers_alone(one, ALONE_IRRITANT_FROM))


def open_questions(mixture: Mixture, regime: str, because: list[Because]) -> Iterator[str]:
    """Yield what could still make the class graver."""
    if any(one.hazard.startswith("Skin Corr.") for one in because):
        return
    if question := missing_ph(mixture):
        yield question
