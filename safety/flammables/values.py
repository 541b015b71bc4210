"""What is held, in litres, and how litres are said."""

import math
from dataclasses import dataclass

US_GALLON_L = 3.785411784  # 231 cubic inches, exactly
ROUNDING = 1e-6


@dataclass(frozen=True)
class Held:
    """One container, or equal ones together: litres, of an aerosol propellant and liquid together.

    `category` is the liquid's (0 does not burn, None nobody knows); of an aerosol the aerosol's own, where 3
    is under pressure and hardly burns. `cabinet`: it stands in a flammables cabinet of the fire area.
    """

    name: str
    category: int | None
    litres: float
    aerosol: bool = False
    flash_c: float | None = None
    sealed: bool = True
    cabinet: bool = False


@dataclass(frozen=True)
class Vessel:
    """One container: what is in it, of which category, what it is made of, and its litres when full."""

    name: str
    category: int | None
    material: str
    litres: float


def amount(litres: float, regime: str) -> str:
    """Return litres as people read them, with US gallons where the law counts in gallons."""
    return f"{short(litres)} l" + (f" ({short(litres / US_GALLON_L)} gal)" if regime == "US" else "")


def short(value: float) -> str:
    """Return a number to a tenth, below one to three digits."""
    return f"{round(value, 1):g}" if value >= 1 else f"{value:.3g}"


def at_least(litres: float, regime: str) -> str:
    """Return litres rounded up to a tenth in each unit, so that moving what is said is enough."""
    gallons = f" ({up(litres / US_GALLON_L):g} gal)" if regime == "US" else ""
    return f"{up(litres):g} l{gallons}"


def up(value: float) -> float:
    """Return the next tenth above a value; what is nearly a tenth is that tenth."""
    return round(math.ceil(value * 10 - ROUNDING) / 10, 1)


def listed(names: list[str], most: int = 3) -> str:
    """Return names as a sentence lists them, the first few and how many more."""
    shown = names[:most]
    if len(names) > most:
        shown = [*shown, f"{len(names) - most} more"]
    return shown[0] if len(shown) == 1 else f"{', '.join(shown[:-1])} and {shown[-1]}"
