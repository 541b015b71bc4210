"""Volatile organic compounds: how much a product holds, with and without its water, and the EU's limits.

Trap: the US rule takes water and exempt compounds out of the volume too, which raises the figure; what a
shop gives off is the actual content. Which compounds are exempt is a country's list with dates: the caller
says.
Source: 40 CFR 59.104(a)(1) (read); safety/tables/voc_limits.csv; the record of emissions from memory.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

from safety.findings import MARKS, Finding
from safety.hazards.tables import rows

G_L_IN_LB_GAL = 453.59237 / 3.785411784  # pound and US gallon, exactly
WATER_G_L = 998.2  # at 20 °C
ROUNDING = 1e-9
US_RULE = "40 CFR 59.104(a)(1)"


class VocError(ValueError):
    """Amounts that cannot be those of one product; the sentence names them."""


@dataclass(frozen=True)
class Sample:
    """What so many litres hold. `volatile_g` is all that evaporates, water and exempt ones included."""

    litres: float
    volatile_g: float
    water_g: float = 0.0
    water_l: float = 0.0
    exempt_g: float = 0.0
    exempt_l: float = 0.0

    def __post_init__(self) -> None:
        """Refuse parts that are less than nothing or more than the whole."""
        if not self.litres > 0 or min(self.water_g, self.water_l, self.exempt_g, self.exempt_l) < 0:
            raise VocError("litres: more than 0 was expected, and no amount below 0.")
        if self.volatile_g - self.water_g - self.exempt_g < -ROUNDING:
            raise VocError("volatile_g: at least water and exempt compounds together were expected.")


def litre(density_g_l: float, solids: float, water: float = 0.0, water_g_l: float = WATER_G_L) -> Sample:
    """Return a litre of a product from its density and its percent by mass of solids and water."""
    if not 0 <= solids + water <= 100:
        raise VocError(f"solids and water: at most 100 % together were expected, not {solids + water:g}.")
    water_g = density_g_l * water / 100
    return Sample(1.0, density_g_l * (100 - solids) / 100, water_g, water_g / water_g_l)


def organic_g(of: Sample) -> float:
    """Return the grams that count: neither water nor exempt."""
    return max(0.0, of.volatile_g - of.water_g - of.exempt_g)


def actual_content(of: Sample) -> float:
    """Return g a litre of the product as it is: what is given off."""
    return organic_g(of) / of.litres


def content_less_water(of: Sample) -> float:
    """Return g a litre less water and exempt compounds, (Wv−Ww−Wec)/(V−Vw−Vec); 0 for water alone."""
    left = of.litres - of.water_l - of.exempt_l
    if left <= ROUNDING:
        if organic_g(of) > ROUNDING:
            raise VocError("water_l, exempt_l: less than all of the litres were expected.")
        return 0.0
    return organic_g(of) / left


def lb_gal(g_l: float) -> float:
    """Return pounds a US gallon from g/l."""
    return g_l / G_L_IN_LB_GAL


def g_l(lb_a_gal: float) -> float:
    """Return g/l from pounds a US gallon."""
    return lb_a_gal * G_L_IN_LB_GAL


def emitted_g(used: Iterable[tuple[float, float]], waste_g: float = 0.0) -> float:
    """Return grams given off: Σ litres used × actual g/l less what was shipped as waste (from memory)."""
    return max(0.0, math.fsum(litres * content for litres, content in used) - waste_g)


@cache
def limits(regime: str) -> dict[str, tuple[float, str]]:
    """Return the limit in g/l and its source by kind; {} where the table has none."""
    return {
        row["kind"]: (float(row["limit_g_l"]), f"{row['source']} ({MARKS[row['mark']]})")
        for row in rows("voc_limits")
        if row["regime"] == regime
    }


def over_limit(name: str, kind: str, content_g_l: float, regime: str) -> tuple[Finding, ...]:
    """Return the finding on a product over its limit, by its content ready for use, water counted."""
    known = limits(regime).get(kind)
    if known is None or content_g_l <= known[0]:
        return ()
    holds, most = f"{round(content_g_l, 1):g} g/l", f"{known[0]:g}"
    says = f"{name} holds {holds} of volatile organic compounds; a {kind} may hold {most}."
    because = f"Ready for use it is {round(content_g_l - known[0], 1):g} g/l over the limit."
    do = "Ask its supplier for one within the limit, or use it for what it is sold for."
    return (Finding("voc.limit", "ask", says, because, do, known[1], (name,)),)
