"""What a row of the shelf says of a bottle: its cap, its time left, whether it is low. Pure."""

from dataclasses import dataclass
from datetime import date, datetime

LOW_SHARE = 0.2
SOON_DAYS = 30
MONTHS_FROM = 180  # further off than this, a day more or less is no help


@dataclass(frozen=True)
class Bottle:
    """A container as a row shows it; `left` is the share of the open life that is left, 0 to 1."""

    code: str
    product: str
    product_code: str
    noun: str
    pack: str
    content: int
    full: int
    dimension: str
    mix: str
    place: str
    state: str
    cap: str
    use_by_on: date | None
    left: float
    time_left: str
    held: str
    low: bool = False


def mix(parts_product: int, parts_water: int) -> str:
    """Return the mix ratio as the trade writes it, "1:10", nothing for a neat product."""
    return f"{parts_product}:{parts_water}" if parts_water else ""


def cap_style(state: str, held: str, use_by_at: datetime | None, at: datetime) -> str:
    """Return the form of a bottle's cap: held before out of date before sealed or open."""
    if held:
        return "held"
    if use_by_at is not None and use_by_at <= at:
        return "out"
    return "sealed" if state == "sealed" else "open" if state == "open" else "none"


def life_left(opened_at: datetime | None, use_by_at: datetime | None, at: datetime) -> float:
    """Return the share of the time between opening and use by that is left, 0 to 1; 1 where none is known."""
    if opened_at is None or use_by_at is None or use_by_at <= opened_at:
        return 1.0
    return max(0.0, min(1.0, (use_by_at - at) / (use_by_at - opened_at)))


def time_left(
    state: str, held: str, use_by_on: date | None, use_by_at: datetime | None, at: datetime, on: date
) -> str:
    """Return in words how long a bottle may still be used."""
    if held:
        return f"held: {held}"
    if state == "empty":
        return "empty"
    if use_by_on is None or use_by_at is None:
        return "no date known"
    if use_by_at <= at:
        return "out of date: empty it"
    days = (use_by_on - on).days
    if state == "sealed" and days > SOON_DAYS:
        return "sealed"
    return {0: "today", 1: "tomorrow"}.get(
        days, f"{days // 30} months" if days >= MONTHS_FROM else f"{days} days"
    )


def pack(amount: str, noun: str, dimension: str) -> str:
    """Return a pack as it is said: "30 ml bottle", "box of 50 pieces"."""
    return f"{noun} of {amount}" if dimension == "pieces" else f"{amount} {noun}"


def is_low(content: int, full: int, others: int) -> bool:
    """Say whether a product runs low: this bottle nearly empty, and nothing else of it usable."""
    return others == 0 and content <= full * LOW_SHARE
