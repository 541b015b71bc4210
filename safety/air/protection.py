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
from safety.air.values import EIGHT_HOURS, IDLH, Emission, Limit

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


def unprotected(all_of_them: Iterable[Contaminant], respirator: str, regime: str) -> tuple[Contaminant, ...]:
    """Return the contaminants that lack the protection named for them."""
    return tuple(
        one
        for one in all_of_them
        if (named := named_for(one.emission))
        and (respirator not in named or respirator not in factors(regime))
    )


def exposed(
    all_of_them: Iterable[Contaminant], dangerous: dict[str, tuple[Limit, ...]], regime: str
) -> tuple[Exposed, ...]:
    """Return what a mask would meet, at the breathing zone's peak; `dangerous` are IDLH values by name."""
    return tuple(
        Exposed(
            one.name,
            one.ppm(one.nose.peak),
            at_idlh(one, dangerous[one.name]),
            cartridge_for(one.of, one.emission.form, regime),
        )
        for one in all_of_them
        if one.nose is not None
    )


def at_idlh(one: Contaminant, values: Iterable[Limit]) -> bool:
    """Return whether the peak reaches the value that is immediately dangerous to life or health."""
    if one.nose is None:
        return False
    shares = [one.share(one.nose.peak, limit) for limit in values if limit.kind == IDLH]
    return any(share is not None and share >= 1 for share in shares)


def hazard_ratio(judged: Iterable[Judged], index: float | None) -> float:
    """Return by how much a mask must divide the air: the largest of the 8-hour, 15-minute and ceiling sums.

    The 8-hour sum is that of the concentration itself, not of a shift's average: a mask is worn in it.
    """
    return max([index or 0.0, *(each.index for each in judged if each.kind != EIGHT_HOURS)])
