"""Thicknesses for the eye, in micrometres or in mils; what is typed is read by `inventory.units`."""

from inventory.units.spellings import SPELLINGS, factor

MICROMETRES, MILS = "µm", "mil"


def thickness(um: float, unit: str = MICROMETRES) -> str:
    """Return micrometres as "40 µm" or, to two decimals, "1.57 mil"; raise KeyError for another unit."""
    value = float(um / factor(SPELLINGS[unit]))
    return f"{f'{value:.2f}'.rstrip('0').rstrip('.')} {unit}"
