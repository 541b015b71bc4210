"""What a shop types about a product, and the waits that it may name."""

from dataclasses import dataclass

THIS_SHOP = "this shop"


@dataclass(frozen=True)
class Edits:
    """What a shop typed about a product; None is the default of its kind, an empty tuple is none at all.

    `needs_absent` names residues, "wax" (a stop) or "wax:ask"; `never` and `asks` name surfaces by key,
    `touches` areas.
    """

    family: str = ""
    leaves: tuple[str, ...] | None = None
    lifts: tuple[str, ...] | None = None
    needs_absent: tuple[str, ...] | None = None
    never: tuple[str, ...] | None = None
    asks: tuple[str, ...] | None = None
    touches: tuple[str, ...] | None = None
    traits: tuple[str, ...] | None = None
    dwell_min: int | None = None
    flash_min: int | None = None
    recoat_from_min: int | None = None
    recoat_to_min: int | None = None
    keep_dry_h: int | None = None
    wash_hold_d: int | None = None
    cure_h: int | None = None
    refinish_wait_d: int | None = None
    film_wait_d: int | None = None
    topper_ok: bool | None = None
    heat_c: int | None = None
    air_from_c: int | None = None
    air_to_c: int | None = None
    humidity_from: int | None = None
    humidity_to: int | None = None


@dataclass(frozen=True)
class Waits:
    """Times before and after a product, in the unit that each name ends with; None is no wait known."""

    dwell_min: int | None = None
    flash_min: int | None = None
    recoat_from_min: int | None = None
    recoat_to_min: int | None = None
    keep_dry_h: int | None = None
    wash_hold_d: int | None = None
    cure_h: int | None = None
    refinish_wait_d: int | None = None
    film_wait_d: int | None = None


NO_EDITS = Edits()
NO_WAITS = Waits()
