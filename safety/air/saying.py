"""Pieces of sentences: numbers as people read them, names in a row, marks in words."""

from collections.abc import Iterable

from safety.air.contaminants import Contaminant
from safety.air.exposure import Part
from safety.air.values import CEILING, EIGHT_HOURS, IN_WORDS, KINDS, Limit
from safety.findings import MARKS

LIST_SOURCE = "safety/tables/exposure_limits.csv"
LEGAL = "OSHA PEL"


def number(value: float) -> str:
    """Return a number to three digits, never with an exponent."""
    if value >= 100:
        return f"{value:.0f}"
    return f"{value:.3g}" if value >= 0.001 or value == 0 else f"{value:.6f}".rstrip("0")


def row(names: Iterable[str]) -> str:
    """Return names as a sentence lists them."""
    listed = list(dict.fromkeys(names))
    return listed[0] if len(listed) == 1 else f"{', '.join(listed[:-1])} and {listed[-1]}"


def capital(text: str) -> str:
    """Return a sentence's beginning with its capital."""
    return text[:1].upper() + text[1:]


def against(part: Part, kind: str) -> str:
    """Return one contaminant with its limit: "isopropanol 239 % of 500 ppm (NIOSH REL, read)"."""
    limit = part.limit
    value = f"{limit.ppm:g} ppm" if limit.ppm is not None else f"{limit.mg_m3:g} mg/m³"
    taken = f"{part.of.name} {number(100 * part.share)} % of {value} ({limit.source}, {MARKS[limit.mark]})"
    return f"{taken}, measured" if part.measured else taken


def measure(kind: str) -> str:
    """Return which figure stands against a kind of limit."""
    figure = {EIGHT_HOURS: "the shift's average", CEILING: "the peak"}.get(kind, "the worst 15 minutes")
    return f"{figure} against the {IN_WORDS[kind]}"


def listed(one: Contaminant) -> str:
    """Return every limit that the regime holds against a contaminant, in each unit its list has."""
    limits = "; ".join(published(limit) for limit in one.limits if limit.kind in KINDS)
    return f"All limits of {one.name}: {limits}."


def published(limit: Limit) -> str:
    """Return one limit as its list has it; the OSHA PEL is named as the legal one."""
    units = ((limit.ppm, "ppm"), (limit.mg_m3, "mg/m³"))
    values = " / ".join(f"{value:g} {unit}" for value, unit in units if value is not None)
    legal = " (the legal one)" if limit.source == LEGAL else ""
    return f"{limit.source}{legal} {IN_WORDS[limit.kind]} {values}"
