"""ppm and mg/m³.

Trap: there are two molar volumes. US lists convert at 25 °C, 24.45 l/mol; EU and UK lists at 20 °C, 24.055
l/mol.
Trap: a published ppm and a published mg/m³ are both kept as they stand; these functions turn what was
*released* into ppm, never one published limit into the other unit.
Source: NIOSH Pocket Guide, introduction (25 °C); EH40 (20 °C); both from memory, the arithmetic computed.
"""

MOLAR_VOLUME = {"US": 24.45, "EU": 24.055, "UK": 24.055}


def ppm(mg_m3: float, molar_mass: float, molar_volume: float) -> float:
    """Return the ppm of a vapour (ml in m³) from mg/m³, g/mol and l/mol."""
    return mg_m3 * molar_volume / molar_mass


def mg_m3(parts_per_million: float, molar_mass: float, molar_volume: float) -> float:
    """Return the mg/m³ of a vapour from its ppm, g/mol and l/mol."""
    return parts_per_million * molar_mass / molar_volume
