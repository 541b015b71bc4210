"""Hazards as a mixture's document writes them, and what makes two of them the same outcome."""

import re
from functools import cache

from safety.hazards.classes import Hazard, UnknownHazard, classes, plain, read_hazard
from safety.hazards.mixtures.fields import MixtureError
from safety.hazards.mixtures.values import Ingredient
from safety.hazards.statements import texts

SUPPLEMENTAL = re.compile(r"EUH\d{3}[A-Z]?")

read = cache(read_hazard)


def is_supplemental(text: str) -> bool:
    """Return whether a text is an EUH statement alone, which is no class."""
    return text.startswith("EUH")


def hazard(text: str, place: str) -> str:
    """Return a class with its code, or an EUH statement alone, as the tables write it."""
    if SUPPLEMENTAL.fullmatch(text):
        if text not in texts() or text in class_codes():
            raise MixtureError(f"{place}: “{text}” is no supplemental statement of the table.")
        return text
    try:
        return str(read(text))
    except UnknownHazard as odd:
        raise MixtureError(f"{place}: {odd}") from odd


@cache
def class_codes() -> frozenset[str]:
    """Return the codes that stand for a class and so never alone, such as EUH380."""
    return frozenset(code for one in classes().values() for code in one.codes)


def outcome(of: Hazard) -> tuple[str, ...]:
    """Return what a hazard says happens: two of one outcome differ in gravity alone.

    Acute toxicity is an outcome a route; STOT SE 3 is one an effect and stands beside STOT SE 1 or 2.
    """
    if of.of.name == "Acute Tox.":
        return (of.of.group, *(plain(code)[:-1] for code in of.codes))
    if of.of.name == "STOT SE" and of.of.category == "3":
        return (of.of.group, *(plain(code) for code in of.codes))
    return (of.of.group,)


def named(one: Ingredient) -> set[str]:
    """Return the names of the classes that an ingredient's list or its own limits carry."""
    own = {read(limit.hazard).of.name for limit in one.limits if not is_supplemental(limit.hazard)}
    return own.union(hazard.of.name for hazard in one.hazards or ())


@cache
def _places() -> dict[tuple[str, str], int]:
    return {key: place for place, key in enumerate(classes())}


def gravity(of: Hazard) -> int:
    """Return the place in the table of classes, where each group runs from the gravest to the mildest."""
    return _places()[(of.of.name.lower(), of.of.category)]
