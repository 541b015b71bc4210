"""Protection of who works: what must be worn by name, and whether what is worn is enough.

Traps: fluorides, sprayed isocyanates, silica, dust, mist and spray stop without the protection named for
them. Volume, air flow or amount unknown: the exposure is treated as immediately dangerous, no cartridge is
advised.
Source: 29 CFR 1910.134(d)(1)(iii), (d)(3)(i)(B) (read); isocyanates: HSE, filtering masks "not acceptable"
(read); which masks cover a face against fluorides: our choice, from memory.
"""

from collections.abc import Iterable

from safety.air.contaminants import Contaminant
from safety.air.exposure import Judged
from safety.air.respirators import Exposed, cartridge_for, factors
from safety.air.substances import family
from safety.air.values import EIGHT_HOURS, IDLH, Emission, Limit, Measured

FACE = ("full", "powered_full", "hood", "air_fed")
PARTICLE_MASKS = ("ffp3", "half", "powered_half", *FACE)


def named_for(one: Emission) -> tuple[str, ...]:
    """Return the respirators of which one must be worn whatever the figures say; () where none is named."""
    kind = family(one.name, one.cas)
    if kind == "isocyanate" and one.form == "mist":
        return ("air_fed",)
    if kind == "fluoride":
        return FACE
    return PARTICLE_MASKS if kind == "silica" or one.form != "vapour" else ()


def may_be_caught(one: Emission) -> bool:
    """Return whether local exhaust that catches dust is named for it as well as a mask.

    Dust and mist alone: fluorides, isocyanates and silica are ended by the mask.
    """
    return one.form != "vapour" and not family(one.name, one.cas)


def unprotected(
    all_of_them: Iterable[Contaminant], respirator: str, regime: str, *, dust_caught: bool = False
) -> tuple[Contaminant, ...]:
    """Return the contaminants that lack the protection named for them."""
    return tuple(
        one
        for one in all_of_them
        if (named := named_for(one.emission))
        and (respirator not in named or respirator not in factors(regime))
        and not (dust_caught and may_be_caught(one.emission))
    )


def exposed(
    all_of_them: Iterable[Contaminant],
    dangerous: dict[str, tuple[Limit, ...]],
    regime: str,
    measured: Iterable[Measured] = (),
) -> tuple[Exposed, ...]:
    """Return what a mask would meet at worst, reckoned or measured; `dangerous` are IDLH values by name."""
    results = tuple(measured)
    return tuple(
        Exposed(
            one.name,
            worst_ppm(one, results),
            at_idlh(one, dangerous[one.name], results),
            cartridge_for(one.of, one.emission.form, regime),
        )
        for one in all_of_them
        if one.nose is not None
    )


def worst_ppm(one: Contaminant, measured: Iterable[Measured] = ()) -> float | None:
    """Return the breathing zone's peak in ppm, or a larger result; None where nobody can say it in ppm."""
    reckoned = None if one.nose is None else one.ppm(one.nose.peak)
    results = [each.most for each in measured if each.cas == one.emission.cas and each.unit == "ppm"]
    return None if reckoned is None else max(reckoned, *results, 0.0)


def at_idlh(one: Contaminant, values: Iterable[Limit], measured: Iterable[Measured] = ()) -> bool:
    """Return whether the peak or a result reaches what is immediately dangerous to life or health."""
    if one.nose is None:
        return False
    limits = [limit for limit in values if limit.kind == IDLH]
    shares = [one.share(one.nose.peak, limit) for limit in limits]
    for each in measured:
        if each.cas == one.emission.cas:
            listed = [limit.ppm if each.unit == "ppm" else limit.mg_m3 for limit in limits]
            shares += [each.most / value for value in listed if value]
    return any(share is not None and share >= 1 for share in shares)


def hazard_ratio(judged: Iterable[Judged], index: float | None) -> float:
    """Return by how much a mask must divide the air: the largest of the 8-hour, 15-minute and ceiling sums.

    The 8-hour sum is that of the concentration itself, not of a shift's average: a mask is worn in it.
    """
    return max([index or 0.0, *(each.index for each in judged if each.kind != EIGHT_HOURS)])
