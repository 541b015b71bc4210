"""Mixtures for tests, short to write: `mix(part("x", 5, "Skin Sens. 1 H317"), form="spray")`."""

from typing import Any

from safety.hazards.classes import read_hazard
from safety.hazards.mixtures.values import Ingredient, Limit, Mixture

Document = dict[str, Any]


def document(*ingredients: object, **measured: object) -> Document:
    return {"form": "liquid", "ingredients": list(ingredients), **measured}


def alcohol(**more: object) -> Document:
    return {"name": "propan-2-ol", "cas": "67-63-0", "percent": 70, "hazards": ["Flam. Liq. 2 H225"], **more}


def limits(*rows: tuple[object, object, object]) -> Document:
    return alcohol(limits=[{"from": start, "to": end, "hazard": hazard} for start, end, hazard in rows])


def part(
    name: str, percent: float, *hazards: str, limits: tuple[Limit, ...] = (), **more: object
) -> Ingredient:
    """One ingredient, looked at: without hazards it is not classified."""
    return Ingredient(name, percent, percent, hazards=tuple(map(read_hazard, hazards)), limits=limits, **more)


def mix(*ingredients: Ingredient, form: str = "liquid", **measured: float) -> Mixture:
    return Mixture(form, ingredients, **measured)
