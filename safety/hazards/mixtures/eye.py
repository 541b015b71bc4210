"""Eye damage and irritation: the sums, what is not additive, what burns skin, and the pH of the whole.

Sources: SOR/2015-17 s. 8.3.11 (read); Table 3.3.3 of CLP Annex I and UN GHS, A.3.4.3 of 29 CFR 1910.1200 say
the same (from memory). From memory: an ingredient that is both counts once; a mixture that burns skin damages
eyes; a sum of nothing but category 2B gives 2B. In the EU own eye limits replace the eye rule (CLP Art 10).
"""

from collections.abc import Iterator

from safety.hazards.mixtures import skin
from safety.hazards.mixtures.acidity import CORROSIVE, PH_RULE, is_extreme, missing_ph
from safety.hazards.mixtures.limits import Of, has, own_limit, own_limits, reaches
from safety.hazards.mixtures.shares import acts_alone, numbers_alone, shares, source_alone
from safety.hazards.mixtures.values import Because, Found, Ingredient, Mixture

DAMAGE, IRRITANT = Of("Eye Dam."), Of("Eye Irrit.")
BOTH = (DAMAGE, IRRITANT)
STRONGER_IRRITANT, MILDER_IRRITANT = Of("Eye Irrit.", ("2", "2A")), Of("Eye Irrit.", ("2B",))
DAMAGE_FROM, DAMAGE_IRRITATES_FROM, IRRITANT_FROM = 3.0, 1.0, 10.0
ALONE_DAMAGE_FROM, ALONE_IRRITANT_FROM = 1.0, 3.0
DAM, IRRIT, IRRIT_2B = "Eye Dam. 1 H318", "Eye Irrit. 2 H319", "Eye Irrit. 2B H320"
SUMS = {
    "EU": ("CLP Annex I Table 3.3.3 and Art 10, as in SOR/2015-17 s. 8.3.11", "M"),
    "US": ("29 CFR 1910.1200 Table A.3.3, as in SOR/2015-17 s. 8.3.11", "M"),
    "CA": ("SOR/2015-17 s. 8.3.11", "S"),
    "UN": ("UN GHS Rev 10 Table 3.3.3, as in SOR/2015-17 s. 8.3.11", "M"),
}
ALONE = {
    "EU": ("CLP Annex I Table 3.3.4, as in SOR/2015-17 s. 8.3.11", "M"),
    "US": ("29 CFR 1910.1200 Table A.3.4, as in SOR/2015-17 s. 8.3.11", "M"),
    "CA": ("SOR/2015-17 s. 8.3.11", "S"),
    "UN": ("UN GHS Rev 10 Table 3.3.4, as in SOR/2015-17 s. 8.3.11", "M"),
}


def eye(mixture: Mixture, regime: str) -> Found:
    """Return the gravest class for the eye with its reasons, and what could make it graver."""
    because = [*damaging(mixture, regime)]
    because = because or [*irritant(mixture, regime)]
    return Found(
        hazards=tuple(dict.fromkeys(one.hazard for one in because)),
        because=tuple(because),
        needs_review=tuple(open_questions(mixture, regime, because)),
    )


def damaging(mixture: Mixture, regime: str) -> Iterator[Because]:
    """Yield why the mixture is Eye Dam. 1."""
    summed = shares(mixture, regime, damage_limit, *BOTH)
    if summed.reached:
        rule = f"Σ (Eye Dam. 1 + Skin Corr. 1) reaches its limit (Σ Ci/limit = {summed.total:.3g})"
        yield Because(DAM, rule, *SUMS[regime], summed.numbers())
    for one in mixture.ingredients:
        grave = has(one, DAMAGE, CORROSIVE) or is_extreme(one.ph)
        if grave and reaches(one.percent, ALONE_DAMAGE_FROM) and acts_alone(one, regime, *BOTH):
            rule = "one ingredient that is not additive, damaging or of extreme pH, from 1 %"
            numbers = numbers_alone(one, ALONE_DAMAGE_FROM)
            yield Because(DAM, rule, *source_alone(one, ALONE[regime]), numbers)
    if is_extreme(mixture.ph):
        rule = "the whole mixture has a pH of 2 or below, or 11.5 or above"
        yield Because(DAM, rule, *PH_RULE[regime], {"ph": mixture.ph})
    elif burns := skin.corrosive(mixture, regime):
        source = f"{burns[0].source}; that it damages eyes from memory"
        yield Because(DAM, f"what is {burns[0].hazard} damages eyes", source, "M", burns[0].numbers)


def damage_limit(one: Ingredient, regime: str) -> float | None:
    """Return from which percentage alone an ingredient damages eyes.

    With eye limits of its own but none for damage (phosphoric acid: irritant from 10 to 25 %), damage begins
    where its skin limits make it corrosive, else where its irritant band ends.
    """
    own, bands = own_limit(one, regime, DAMAGE), own_limits(one, regime, IRRITANT)
    if own is not None:
        return own
    if not has(one, DAMAGE, CORROSIVE):
        return None
    burns = own_limit(one, regime, CORROSIVE)
    if bands and burns is not None:
        return burns
    return max((band.to_percent for band in bands if band.to_percent is not None), default=DAMAGE_FROM)


def irritant_limit(one: Ingredient, regime: str) -> float | None:
    """Return from which percentage alone an ingredient irritates eyes."""
    own, damages = own_limit(one, regime, IRRITANT), damage_limit(one, regime)
    if own is not None:
        return own if damages is None else min(own, damages)
    if damages is not None:
        return min(DAMAGE_IRRITATES_FROM, damages)
    return IRRITANT_FROM if has(one, IRRITANT) else None


def irritant(mixture: Mixture, regime: str) -> Iterator[Because]:
    """Yield why the mixture is Eye Irrit. 2: 10·Σ(Dam. + Corr.) + ΣIrrit. ≥ 10, or one not additive."""
    summed = shares(mixture, regime, irritant_limit, *BOTH)
    if summed.reached:
        only_milder = all(is_milder(one, regime) for one, _, _ in summed.counted)
        rule = f"10·Σ (Eye Dam. 1 + Skin Corr. 1) + Σ Eye Irrit. 2 reaches its limit ({summed.total:.3g})"
        yield Because(IRRIT_2B if only_milder else IRRIT, rule, *SUMS[regime], summed.numbers())
    for one in mixture.ingredients:
        irritates = has(one, IRRITANT) and reaches(one.percent, ALONE_IRRITANT_FROM)
        if irritates and acts_alone(one, regime, *BOTH):
            found = IRRIT_2B if is_milder(one, regime) else IRRIT
            rule = "one irritant ingredient that is not additive, from 3 %"
            yield Because(found, rule, *ALONE[regime], numbers_alone(one, ALONE_IRRITANT_FROM))


def is_milder(one: Ingredient, regime: str) -> bool:
    """Return whether an ingredient is category 2B and nothing graver; the EU knows one category 2."""
    return regime != "EU" and has(one, MILDER_IRRITANT) and not has(one, STRONGER_IRRITANT, DAMAGE, CORROSIVE)


def open_questions(mixture: Mixture, regime: str, because: list[Because]) -> Iterator[str]:
    """Yield what could still make the class graver."""
    if any(one.hazard == DAM for one in because):
        return
    if question := missing_ph(mixture):
        yield question
