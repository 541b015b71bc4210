"""From a JSON document to a mixture; what cannot be taken is refused by its place.

Of a range the upper end counts (SOR/2015-17 s. 2.6). A key that is missing, or null, means unknown.
"""

import math
from dataclasses import replace
from typing import Any

from safety.hazards.classes import Hazard
from safety.hazards.mixtures.fields import (
    MixtureError,
    a_list,
    above_zero,
    an_object,
    cas_number,
    known_keys,
    number,
    shown,
    truth,
    words,
)
from safety.hazards.mixtures.limit_rows import read_limits
from safety.hazards.mixtures.values import ATE_KINDS, FORMS, ROUTES, Ingredient, Mixture
from safety.hazards.mixtures.written import hazard, is_supplemental, read

MEASURED = {
    # key: least, most, unit
    "ph": (-2, 16, ""),
    "flash_point_c": (-273, 1000, " °C"),
    "boiling_point_c": (-273, 5000, " °C"),
}
MIXTURE_KEYS = ("form", *MEASURED, "viscosity_mm2_s_40c", "ingredients")
INGREDIENT_KEYS = (
    "name", "cas", "percent", "hazards", "limits", "ate", "unknown",
    "m_acute", "m_chronic", "ph", "additive", "no_acute_toxicity",
)  # fmt: skip
INHALED = ("vapour", "dust_mist", "gas")
WATER = "7732-18-5"
ROUNDING = 1e-9  # 33.3 + 33.3 + 33.4 is 100, whatever binary fractions say


def read_mixture(document: object) -> Mixture:
    """Return the mixture of a JSON document as the user's guide shows it; raise MixtureError."""
    given = an_object(document, "The mixture")
    known_keys(given, MIXTURE_KEYS, "The mixture")
    if given.get("ingredients") is None:
        raise MixtureError("The mixture: “ingredients” is missing; a list was expected.")
    rows = a_list(given["ingredients"], "The mixture, ingredients")
    ingredients = [read_ingredient(row, at) for at, row in enumerate(rows, 1)]
    least = math.fsum(one.least for one in ingredients)
    if least > 100 + ROUNDING:
        raise MixtureError(f"The mixture: the lower ends of its percentages sum to {least:g}, above 100.")
    form, viscosity = given.get("form"), given.get("viscosity_mm2_s_40c")
    if form is not None and form not in FORMS:
        raise MixtureError(f"The mixture, form: one of {', '.join(FORMS)} was expected, not {shown(form)}.")
    return Mixture(
        form=form or "",
        ingredients=tuple(merged(ingredients)),
        viscosity_mm2_s_40c=None
        if viscosity is None
        else above_zero(viscosity, "The mixture, viscosity_mm2_s_40c"),
        **{key: measured(given.get(key), f"The mixture, {key}", key) for key in MEASURED},
    )


def measured(value: object, place: str, key: str) -> float | None:
    """Return a measured value, or None where nobody measured."""
    least, most, unit = MEASURED[key]
    return None if value is None else number(value, place, least, most, unit)


def merged(ingredients: list[Ingredient]) -> list[Ingredient]:
    """Return the ingredients, one substance listed in two lines added up: cut-offs are a substance's own."""
    kept: dict[str, Ingredient] = {}
    for one in ingredients:
        key = one.cas or one.name.casefold()
        if (other := kept.get(key)) is None:
            kept[key] = one
            continue
        if replace(other, name=one.name, percent=one.percent, least=one.least) != one:
            raise MixtureError(
                f"The mixture: “{other.name}” and “{one.name}” are one substance ({key}) with unlike facts. "
                "Cut-offs are a substance's own: write it on one line."
            )
        percent = min(100.0, other.percent + one.percent)
        kept[key] = replace(other, percent=percent, least=other.least + one.least)
    return list(kept.values())


def read_ingredient(value: Any, at: int) -> Ingredient:
    """Return one ingredient; `at` counts from 1."""
    given = an_object(value, f"Ingredient {at}")
    known_keys(given, INGREDIENT_KEYS, f"Ingredient {at}")
    name = words(given.get("name"), f"Ingredient {at}, name")
    place = f"Ingredient {at} ({name})"
    least, percent = read_percent(given.get("percent"), f"{place}, percent")
    cas = "" if given.get("cas") is None else cas_number(given["cas"], f"{place}, cas")
    hazards, supplemental = read_hazards(given.get("hazards"), f"{place}, hazards")
    harmless = truth(given.get("no_acute_toxicity") or False, f"{place}, no_acute_toxicity")
    if cas == WATER or name.lower() == "water":
        hazards, harmless = hazards or (), True
    ate = read_ate(given.get("ate"), f"{place}, ate")
    additive = given.get("additive")
    return Ingredient(
        name=name, percent=percent, least=least, cas=cas, hazards=hazards, supplemental=supplemental,
        limits=() if given.get("limits") is None else read_limits(given["limits"], f"{place}, limit"),
        ate=ate, unknown=read_unknown(given.get("unknown"), f"{place}, unknown", hazards, ate, harmless),
        m_acute=m_factor(given.get("m_acute"), f"{place}, m_acute"),
        m_chronic=m_factor(given.get("m_chronic"), f"{place}, m_chronic"),
        ph=measured(given.get("ph"), f"{place}, ph", "ph"),
        additive=None if additive is None else truth(additive, f"{place}, additive"),
        no_acute_toxicity=harmless,
    )  # fmt: skip


def read_percent(value: object, place: str) -> tuple[float, float]:
    """Return the lower and the upper end of a percentage, or of a range [5, 15]."""
    if not isinstance(value, list):
        alone = number(value, place, 0, 100)
        return alone, alone
    if len(value) != 2:
        raise MixtureError(f"{place}: a range like [5, 15] was expected, not {shown(value)}.")
    least, most = (number(end, place, 0, 100) for end in value)
    if least > most:
        raise MixtureError(f"{place}: the range {least:g} to {most:g} runs backwards.")
    return least, most


def read_hazards(value: object, place: str) -> tuple[tuple[Hazard, ...] | None, tuple[str, ...]]:
    """Return the classes, None where nobody looked, and the EUH statements that stand among them."""
    if value is None:
        return None, ()
    written = [hazard(words(text, place), place) for text in a_list(value, place)]
    classed = dict.fromkeys(text for text in written if not is_supplemental(text))
    supplemental = dict.fromkeys(text for text in written if is_supplemental(text))
    return tuple(read(text) for text in classed), tuple(supplemental)


def read_ate(value: object, place: str) -> dict[str, float]:
    """Return the acute toxicity values that are known, by route or inhaled form."""
    if value is None:
        return {}
    given = an_object(value, place)
    known_keys(given, ATE_KINDS, place)
    return {
        kind: above_zero(given[kind], f"{place}, {kind}") for kind in ATE_KINDS if given.get(kind) is not None
    }


def read_unknown(
    value: object, place: str, hazards: tuple[Hazard, ...] | None, ate: dict[str, float], harmless: bool
) -> frozenset[str]:
    """Return the routes without usable data: those named, and those nobody looked at."""
    named = [] if value is None else a_list(value, place)
    for route in named:
        if route not in ROUTES:
            raise MixtureError(f"{place}: one of {', '.join(ROUTES)} was expected, not {shown(route)}.")
        if has_value(route, ate):
            raise MixtureError(f"{place}: {route} is named unknown, yet “ate” gives a value for it.")
    unlooked = (
        [] if hazards is not None or harmless else [route for route in ROUTES if not has_value(route, ate)]
    )
    return frozenset([*named, *unlooked])


def has_value(route: str, ate: dict[str, float]) -> bool:
    """Return whether a value for the route is there, in any inhaled form."""
    return route in ate or (route == "inhalation" and any(form in ate for form in INHALED))


def m_factor(value: object, place: str) -> float | None:
    """Return an M factor, which only ever makes an ingredient count more."""
    return None if value is None else number(value, place, 1, 1e9)
