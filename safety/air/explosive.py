"""Whether the air can burn: the share of the lower explosive limit, and the flash point.

Traps: 10 % of the limit stops in any place, 5 % asks; 25 % is a design figure for fans, never a verdict.
All vapours and propellants count together. The average says nothing near the liquid: a flash point at or
below the warmer of air and panel + 5 K (a mixture: + 15 K) means no ignition source, whatever the average.
Source: 29 CFR 1910.146 "hazardous atmosphere" (a faithful copy was read); Le Chatelier; EN 1127-1 (from
memory); V5 ACGIH *Industrial Ventilation* ch. 2 and V6 29 CFR 1910.94(c)(6)(ii) (from memory).
"""

from collections.abc import Iterable

STOPS_AT, ASKS_AT = 10.0, 5.0
MARGIN_K, MARGIN_MIXTURE_K = 5.0, 15.0
FAN_SAFETY = 4.0
HOT_F, HOT_FACTOR = 250.0, 0.7


def le_chatelier(parts: Iterable[tuple[float, float]]) -> float:
    """Return a vapour mixture's lower limit from (fraction of all vapour, own limit), in the limits' unit."""
    return 1 / sum(fraction / limit for fraction, limit in parts)


def lel_percent(vapours: Iterable[tuple[float, float]]) -> float:
    """Return the share of the lower explosive limit in percent, from (ppm in air, own limit in ppm)."""
    return 100 * sum(sorted(here / limit for here, limit in vapours))


def burning_grade(percent: float) -> str | None:
    """Return "stop" from 10 % of the limit, "ask" from 5 %, None below."""
    return "stop" if percent >= STOPS_AT else "ask" if percent >= ASKS_AT else None


def may_ignite(flash_point_c: float, warmest_c: float, mixture: bool) -> bool:
    """Return whether the vapour over the liquid may catch fire at the warmer of air and panel."""
    return flash_point_c <= warmest_c + (MARGIN_MIXTURE_K if mixture else MARGIN_K)


def fan_air_per_vapour(lel: float) -> float:
    """Return volumes of air for each volume of vapour that keep below a quarter of the limit (V6); % in."""
    return FAN_SAFETY * (100 - lel) / lel


def fan_m3_h(vapour_m3_h: float, lel: float, safety: float, air_f: float = 70.0) -> float:
    """Return the air flow that a fan is designed for (V5): safety 4 continuous, 10 to 12 for a batch."""
    return vapour_m3_h * 100 * safety / (lel * (1.0 if air_f <= HOT_F else HOT_FACTOR))
