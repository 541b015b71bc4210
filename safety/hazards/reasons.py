"""The numbers of a reason in words: what went in, with its unit, to three figures."""

from safety.hazards.mixtures.values import Because

NAMES = {
    "flash_point_c": "flash point",
    "boiling_point_c": "boiling point",
    "viscosity_mm2_s_40c": "viscosity at 40 °C",
    "ate": "ATE",
    "ph": "pH",
}
UNITS = {
    "flash_point_c": " °C",
    "boiling_point_c": " °C",
    "viscosity_mm2_s_40c": " mm²/s",
    "percent": " %",
    "limit": " %",
    "own_limit": " %",
    "flammable_percent": " %",
    "unknown_percent": " %",
    "sum": " %",
}
WHO = ("name", "ingredient")
UNITED = "unit"  # of the number named "limit" or "ate" beside it
FIGURES = 3


def numbers_of(one: Because) -> str:
    """Return all numbers of a reason: “Propan-2-ol 32.8 %, limit 10 %; shares 3.28”."""
    return "; ".join(said for key, value in one.numbers.items() if (said := _said(key, value, one.numbers)))


def _said(key: str, value: object, beside: dict[str, object]) -> str:
    if key == UNITED:
        return ""
    if key in WHO:
        return str(value)
    if isinstance(value, list | tuple) and value and all(isinstance(each, dict) for each in value):
        return ", ".join(_one(each) for each in value)
    if isinstance(value, dict):
        unit = UNITS.get(key, "")
        said = ", ".join(
            f"{name} {number(each)}{unit if each is not None else ''}" for name, each in value.items()
        )
        return f"{_name(key)} {said}"
    unit = f" {beside[UNITED]}" if key in ("ate", "limit") and UNITED in beside else UNITS.get(key, "")
    return f"{_name(key)} {number(value)}{unit if value is not None else ''}"


def _one(each: dict[str, object]) -> str:
    """Return one ingredient of a sum: its name and share first, then the rest."""
    name = next((str(each[key]) for key in WHO if key in each), "")
    percent = f" {number(each['percent'])} %" if "percent" in each else ""
    rest = [
        f"{_name(key)} {number(value)}{UNITS.get(key, '')}"
        for key, value in each.items()
        if key not in (*WHO, "percent")
    ]
    return ", ".join([f"{name}{percent}", *rest])


def _name(key: str) -> str:
    return NAMES.get(key, key.replace("_", " "))


def number(value: object) -> str:
    """Return a number to three figures, never in powers of ten; what is not known says so."""
    if value is None:
        return "not known"
    if isinstance(value, list | tuple):
        return ", ".join(number(each) for each in value) or "none"
    if isinstance(value, float) and value:
        exact = f"{value:.{FIGURES}g}"
        return f"{float(exact):.0f}" if "e+" in exact else exact
    return str(value)
