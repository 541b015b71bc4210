"""Dry ice: the carbon dioxide that it becomes, in a room that nobody airs.

Trap: it is heavier than air and lies in pits and cabins; the average of the room is the least that stands
there. All of it counts at once: a box of it gives off within hours, a blaster within minutes.
Source: molar volume 24.45 l/mol at 25 °C; limits of safety/tables/exposure_limits.csv with their marks.
"""

from datetime import date

from safety.air.limits import idlh, judging
from safety.air.saying import number, published
from safety.air.substances import substances
from safety.air.units import MOLAR_VOLUME, ppm
from safety.air.values import EIGHT_HOURS, IDLH, Emission, Limit
from safety.findings import MARKS, Finding

CAS = "124-38-9"
MG_IN_KG = 1e6
LITRES = MOLAR_VOLUME["US"]  # the larger of the two, so that the ppm err high


class DryIceError(ValueError):
    """A room or an amount that cannot be; the sentence says what was expected."""


def gas_m3(kg: float) -> float:
    """Return the m³ of carbon dioxide that so many kg become at 25 °C."""
    return co2_ppm(kg, 1.0) / 1e6


def co2_ppm(kg: float, volume_m3: float) -> float:
    """Return what so many kg add to a room's air in ppm; raise DryIceError where that cannot be."""
    if not volume_m3 > 0 or not kg >= 0:
        raise DryIceError("volume_m3: more than 0 was expected; kg: 0 or more.")
    mass = substances()[CAS].molar_mass
    assert mass is not None, "the table has its mass"
    return ppm(kg * MG_IN_KG / volume_m3, mass, LITRES)


def dry_ice(kg: float, volume_m3: float, regime: str, on: date) -> tuple[Finding, ...]:
    """Return the finding on dry ice in a room without air: stop at a short or dangerous limit, ask at 8 h."""
    gas = Emission("carbon dioxide", CAS, kg * 1000)
    reached = [
        limit
        for limit in (*idlh(gas, on), *judging(gas, regime, on))
        if limit.ppm is not None and co2_ppm(kg, volume_m3) >= limit.ppm
    ]
    if not reached:
        return ()
    worst = max(reached, key=lambda limit: limit.ppm or 0.0)
    made = co2_ppm(kg, volume_m3)
    says = f"{kg:g} kg of dry ice make {number(made)} ppm of carbon dioxide in {volume_m3:g} m³."
    because = f"{kg:g} kg become {number(gas_m3(kg))} m³ of gas; {_named(worst)} is reached."
    most = kg * min(limit.ppm or 0.0 for limit in reached) / made
    do = (
        f"Open the doors and air the place, also low down, or use less than {number(most)} kg; "
        "nobody in pit or cabin."
    )
    grade = "ask" if worst.kind == EIGHT_HOURS else "stop"
    return (Finding("air.dry_ice", grade, says, because, do, _source(worst), ("carbon dioxide",)),)


def _named(limit: Limit) -> str:
    if limit.kind == IDLH:
        return f"what is immediately dangerous to life or health, {limit.ppm:g} ppm,"
    return published(limit)


def _source(limit: Limit) -> str:
    return f"{limit.source}, safety/tables/exposure_limits.csv ({MARKS[limit.mark]})"
