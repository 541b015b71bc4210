"""What a product gives off, as far as its sheet's section 3 and its density say; never more than that.

Trap: a sheet names what is hazardous, and neither all solvents nor its water, so that the figure is a least.
Counted is what is organic and boils at 250 °C or below (Directive 2004/42/CE Art. 2, from memory).
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from safety.findings import MARKS, Finding
from safety.hazards.tables import rows
from safety.voc.content import (
    WATER_G_L,
    Sample,
    VocError,
    actual_content,
    content_less_water,
    limits,
    over_limit,
)

CODE = "voc.content"
BOILS_AT_C = 250.0
WATER = "7732-18-5"
COUNTS = f"what counts: 2004/42/CE Art. 2, boiling points of safety/tables/volatiles.csv ({MARKS['M']})"
COUNTED = (
    "Counted is what is organic and boils at 250 °C or below; what the sheet does not name may add to it."
)
EXEMPT = "Which compounds a country exempts is not known here: none is taken out."
NO_WATER = "Its sheet names no water, so the content without water is not known."
CALLED = {"preparatory": "preparatory product"}
DENSITY = "Type in the density from section 9 of its data sheet."
RECORD = "It is the figure for the record of what the shop gives off, where your authority asks for one."


@dataclass(frozen=True)
class Named:
    """What a sheet names: its volatile organic compounds in words and in the least percent, and its water."""

    compounds: str
    organic: float
    water: float | None


@cache
def compounds() -> frozenset[str]:
    """Return by CAS number what of our table counts."""
    return frozenset(
        row["cas"]
        for row in rows("volatiles")
        if row["organic"] == "yes" and row["boiling_point_c"] and float(row["boiling_point_c"]) <= BOILS_AT_C
    )


def named(composition: Iterable[Mapping[str, Any]]) -> Named:
    """Return what a sheet's section 3 names of what counts, by mass; of a range its low end."""
    shares = [(one, _least(one)) for one in composition]
    counted = [(one, least) for one, least in shares if one.get("cas") in compounds() and least]
    water = [least for one, least in shares if one.get("cas") == WATER]
    return Named(
        ", ".join(_in_words(one, least) for one, least in counted),
        sum(least for _, least in counted),
        sum(water) if water else None,
    )


def _in_words(one: Mapping[str, Any], least: float) -> str:
    return f"{one['name']} {'from ' if isinstance(one['percent'], list) else ''}{least:g} %"


def _least(one: Mapping[str, Any]) -> float:
    percent = one.get("percent", 0)
    return float(percent[0] if isinstance(percent, list) else percent)


def voc_told(
    name: str, composition: Iterable[Mapping[str, Any]], density_g_l: float | None, regime: str, cleans: bool
) -> tuple[Finding, ...]:
    """Return what is told of a product that its sheet says gives off such compounds, where a law limits them.

    `cleans`: it cleans or prepares paint for a coat, so that the limits of such products may hold for it.
    """
    known, held = limits(regime), named(composition)
    if not known or not held.compounds:
        return ()
    if density_g_l is None:
        says = f"{name} gives off volatile organic compounds; how many g/l is not known without its density."
        return (Finding(CODE, "tell", says, f"Its sheet names {held.compounds}.", DENSITY, COUNTS, (name,)),)
    sample = _litre(held, density_g_l)
    content = actual_content(sample)
    says = f"{name} gives off at least {_figure(content)} g/l of volatile organic compounds, as it is sold."
    weighs = f"Its sheet names {held.compounds}, and it weighs {density_g_l:g} g/l."
    because = " ".join([weighs, COUNTED, _dry(held, sample), EXEMPT])
    do = _by_its_label(name, content, regime) if cleans else RECORD
    read = "; ".join([*sorted({source for _, source in known.values()}), COUNTS]) if cleans else COUNTS
    return (Finding(CODE, "tell", says, because, do, read, (name,)),)


def _figure(g_l: float) -> str:
    return f"{round(g_l, 1):g}" if g_l < 100 else f"{g_l:.0f}"


def _litre(held: Named, density_g_l: float) -> Sample:
    water = density_g_l * (held.water or 0) / 100
    return Sample(1.0, density_g_l * held.organic / 100 + water, water, water / WATER_G_L)


def _dry(held: Named, sample: Sample) -> str:
    """Return the content without water, as far as it is known."""
    if held.water is None:
        return NO_WATER
    try:
        return f"Without its water it is at least {_figure(content_less_water(sample))} g/l."
    except VocError:
        return "Its water and its density do not fit each other, so the content without water is not known."


def _by_its_label(name: str, content: float, regime: str) -> str:
    """Return what its label decides: which kind it is, and which limit it is over then."""
    known = limits(regime)
    called = {kind: CALLED.get(kind, kind) for kind in known}
    allowed = " and ".join(f"{limit:g} g/l as a {called[kind]}" for kind, (limit, _) in known.items())
    over = [called[kind] for kind in known if over_limit(name, kind, content, regime)]
    said = f" As a {' and as a '.join(over)} it is over that: ask its supplier." if over else ""
    return f"Read on its label what it is: for vehicle refinishing it may hold at most {allowed}.{said}"
