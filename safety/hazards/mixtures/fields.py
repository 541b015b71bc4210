"""Single values of a JSON document: each is read, or refused with its place and what was expected."""

import math
import re
from collections.abc import Iterable
from typing import Any

CAS = re.compile(r"(\d{2,7})-(\d{2})-(\d)")


class MixtureError(ValueError):
    """A mixture that cannot be taken; the sentence names the place and what was expected."""


def shown(value: object) -> str:
    """Return a value as an error quotes it, cut where it is long."""
    literals = {True: "true", False: "false", None: "null"}
    if value is None or isinstance(value, bool):
        return literals[value]
    text = f"“{value}”" if isinstance(value, str) else f"{value!r}"
    return text if len(text) <= 60 else f"{text[:57]}…"


def known_keys(document: dict[str, Any], allowed: Iterable[str], place: str) -> None:
    """Refuse keys that nobody would read: a misspelt key would otherwise mean “unknown”."""
    strange = sorted(set(document) - set(allowed))
    if strange:
        raise MixtureError(f"{place}: there is no key “{strange[0]}”; expected are {', '.join(allowed)}.")


def an_object(value: object, place: str) -> dict[str, Any]:
    """Return a JSON object."""
    if not isinstance(value, dict):
        raise MixtureError(f"{place}: an object was expected, not {shown(value)}.")
    return value


def a_list(value: object, place: str) -> list[Any]:
    """Return a JSON list."""
    if not isinstance(value, list):
        raise MixtureError(f"{place}: a list was expected, not {shown(value)}.")
    return value


def number(value: object, place: str, least: float, most: float, unit: str = "") -> float:
    """Return a number from least to most, both included; true and false are no numbers, nor is NaN."""
    within = isinstance(value, int | float) and not isinstance(value, bool) and least <= value <= most
    if not within:
        wanted = f"a number from {least:g} to {most:g}{unit}"
        raise MixtureError(f"{place}: {wanted} was expected, not {shown(value)}.")
    return float(value)  # type: ignore[arg-type]


def above_zero(value: object, place: str) -> float:
    """Return a number above 0."""
    real = isinstance(value, int | float) and not isinstance(value, bool) and 0 < value < 1e12
    if not real or not math.isfinite(value):  # type: ignore[arg-type]
        raise MixtureError(f"{place}: a number above 0 was expected, not {shown(value)}.")
    return float(value)  # type: ignore[arg-type]


def truth(value: object, place: str) -> bool:
    """Return true or false."""
    if not isinstance(value, bool):
        raise MixtureError(f"{place}: true or false was expected, not {shown(value)}.")
    return value


def words(value: object, place: str) -> str:
    """Return a text that is not empty."""
    if not isinstance(value, str) or not value.strip():
        raise MixtureError(f"{place}: a text was expected, not {shown(value)}.")
    return value.strip()


def cas_number(value: object, place: str) -> str:
    """Return a CAS number whose check digit is right: the digits before it, weighed 1, 2 … from the right."""
    found = CAS.fullmatch(value.strip()) if isinstance(value, str) else None
    if found is None:
        wanted = "a CAS number like 67-63-0 was expected, or null where there is none"
        raise MixtureError(f"{place}: {wanted}, not {shown(value)}.")
    digits = found[1] + found[2]
    check = sum(weight * int(digit) for weight, digit in enumerate(reversed(digits), 1)) % 10
    if check != int(found[3]):
        raise MixtureError(
            f"{place}: the check digit of {found[0]} would be {check}; look for a wrong digit."
        )
    return found[0]
