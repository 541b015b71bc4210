"""What a substance is: molar mass, boiling and flash point, vapour pressure, family. From the sourced tables.

Trap: no concentration stands above saturation. The vapour pressure between 20 °C and the boiling point runs
straight in ln p against 1/T (Clausius and Clapeyron), exact at both ends.
"""

import math
from dataclasses import dataclass
from functools import cache

from safety.air.units import mg_m3
from safety.hazards.mixtures.naming import ISOCYANATES
from safety.hazards.tables import rows

AIR_KPA = 101.325
KELVIN = 273.15
MEASURED_AT_C = 20.0


@dataclass(frozen=True)
class Substance:
    """One row of the table; None is not known. Temperatures in °C, vapour pressure in kPa at 20 °C."""

    cas: str
    name: str
    molar_mass: float | None
    boiling_point_c: float | None
    flash_point_c: float | None
    vapour_pressure_kpa: float | None
    burns: bool
    filters: dict[str, str]
    nco_share: float | None


@cache
def substances() -> dict[str, Substance]:
    """Return the table by CAS number."""
    return {row["cas"]: _substance(row) for row in rows("volatiles")}


def _substance(row: dict[str, str]) -> Substance:
    return Substance(
        cas=row["cas"],
        name=row["name"],
        molar_mass=_number(row["molar_mass"]),
        boiling_point_c=_number(row["boiling_point_c"]),
        flash_point_c=_number(row["flash_point_c"]),
        vapour_pressure_kpa=_number(row["vapour_pressure_kpa_20c"]),
        burns=row["burns"] == "yes",
        filters={"US": row["filter_us"], "UK": row["filter_eu"], "EU": row["filter_eu"]},
        nco_share=_number(row["nco_share"]),
    )


def _number(text: str) -> float | None:
    return float(text) if text else None


def saturation_ppm(of: Substance, air_c: float) -> float | None:
    """Return the most that air of this temperature can hold; None where the table does not say."""
    if of.vapour_pressure_kpa is None or of.boiling_point_c is None:
        return None
    boils, known = of.boiling_point_c + KELVIN, MEASURED_AT_C + KELVIN
    slope = math.log(AIR_KPA / of.vapour_pressure_kpa) / (1 / known - 1 / boils)
    pressure = of.vapour_pressure_kpa * math.exp(slope * (1 / known - 1 / (air_c + KELVIN)))
    return min(pressure / AIR_KPA, 1.0) * 1e6


def saturation_mg_m3(of: Substance, air_c: float, molar_volume: float) -> float | None:
    """Return the same in mg/m³."""
    most = saturation_ppm(of, air_c)
    return None if most is None or of.molar_mass is None else mg_m3(most, of.molar_mass, molar_volume)


@cache
def _families() -> tuple[tuple[str, str, str], ...]:
    return tuple((row["family"], row["cas"], row["word"]) for row in rows("air_families"))


def family(name: str, cas: str) -> str:
    """Return "fluoride", "silica" or "isocyanate", by CAS number or name; "" for all others."""
    if cas in ISOCYANATES or "isocyanat" in name.lower():
        return "isocyanate"
    hits = (kind for kind, number, word in _families() if (cas and cas == number) or word in name.lower())
    return next(hits, "")
