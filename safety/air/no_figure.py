"""Where no dilution figure may be given, and why.

Trap: fluorides, isocyanates, silica, any dust, mist or spray; a ceiling limit or H330, H331, H334, H350; a
lowest limit in any listed source under 100 ppm; no limit at all. Local exhaust and a competent person's
assessment instead.
Source: "control vapours with TLV of 100 ppm or higher", summary of the ACGIH manual (read).
"""

from collections.abc import Iterable

from safety.air.substances import Substance, family
from safety.air.units import ppm
from safety.air.values import CEILING, KINDS, Emission, Limit
from safety.hazards.classes import plain

LEAST_PPM = 100.0
AT_25_C = 24.45  # a screening bound, not a comparison with a legal limit
GRAVE = ("H330", "H331", "H334", "H350")


def why_no_figure(one: Emission, of: Substance | None, everywhere: Iterable[Limit]) -> str:
    """Return the first reason against a figure, in words; "" where one may be given.

    `everywhere` are the limits of every list, whatever the regime.
    """
    limits = [limit for limit in everywhere if limit.kind in KINDS]
    grave = [code for code in codes(one) if plain(code) in GRAVE]
    if kind := family(one.name, one.cas):
        return f"it is {'an' if kind[0] in 'aeiou' else 'a'} {kind}" if kind != "silica" else "it is silica"
    if one.form != "vapour":
        return f"it is a {one.form}"
    if grave:
        return f"it carries {grave[0]}"
    if not limits:
        return "no limit was found"
    if any(limit.kind == CEILING for limit in limits):
        return "it has a ceiling limit"
    return under_100(of, limits)


def under_100(of: Substance | None, limits: Iterable[Limit]) -> str:
    """Return the reason where the lowest limit of any list is under 100 ppm, or cannot be told in ppm."""
    parts = [in_ppm(limit, of) for limit in limits]
    known = [part for part in parts if part is not None]
    if not known:
        return "its limits cannot be told in ppm"
    return f"its lowest limit in any list is {min(known):.3g} ppm" if min(known) < LEAST_PPM else ""


def in_ppm(limit: Limit, of: Substance | None) -> float | None:
    """Return a limit in ppm, for this bound alone."""
    if limit.ppm is not None:
        return limit.ppm
    known = of is not None and of.molar_mass is not None and limit.mg_m3 is not None
    return ppm(limit.mg_m3, of.molar_mass, AT_25_C) if known else None  # type: ignore[arg-type, union-attr]


def codes(one: Emission) -> tuple[str, ...]:
    """Return the H-codes that an emission carries."""
    return tuple(code for hazard in one.hazards or () for code in hazard.codes)
