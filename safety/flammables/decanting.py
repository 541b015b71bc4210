"""Pouring what lights from one container into another: static electricity.

Source: 29 CFR 1910.106(e)(6)(ii) (read in a copy): category 1 and 2, and 3 with a flash point below 100 °F.
"""

from safety.findings import MARKS, Finding

BELOW_C = 37.8
SOURCE = f"29 CFR 1910.106(e)(6)(ii) ({MARKS['S2']})"


def must_be_bonded(category: int | None, flash_c: float | None) -> bool:
    """Return whether nozzle and container must be bonded; a category 3 of unknown flash point must."""
    if category == 3:
        return flash_c is None or flash_c < BELOW_C
    return category in (1, 2)


def decanting(name: str, category: int | None, flash_c: float | None) -> tuple[Finding, ...]:
    """Return what to do before pouring; () for what need not be bonded and for what nobody classified."""
    if not must_be_bonded(category, flash_c):
        return ()
    flash = "" if flash_c is None else f", flash point {flash_c:g} °C"
    says = f"{name} can light from a spark of static while it is poured."
    because = f"It is a flammable liquid of category {category}{flash}."
    do = "Join nozzle and container by a bonding wire before you pour; no pouring beside an ignition source."
    return (Finding("flammables.bonding", "tell", says, because, do, SOURCE, (name,)),)
