"""What a product does to a surface: the default of its kind from a sourced table, and the shop's own words."""

from collections.abc import Mapping
from dataclasses import dataclass, field


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


@dataclass(frozen=True)
class Profile:
    """What a product leaves, lifts, needs absent and must not touch, and its waits, all resolved.

    `needs_absent` maps a residue to its grade; `sources` tells where each field came from.
    """

    kind: str
    family: str = ""
    leaves: frozenset[str] = frozenset()
    lifts: frozenset[str] = frozenset()
    needs_absent: Mapping[str, str] = field(default_factory=dict, hash=False)
    never: frozenset[str] = frozenset()
    asks: frozenset[str] = frozenset()
    touches: frozenset[str] = frozenset()
    traits: frozenset[str] = frozenset()
    waits: Waits = Waits()
    topper_ok: bool = False
    heat_c: int | None = None
    air_from_c: int | None = None
    air_to_c: int | None = None
    humidity_from: int | None = None
    humidity_to: int | None = None
    sources: Mapping[str, str] = field(default_factory=dict, hash=False, compare=False)

    def source(self, name: str) -> str:
        """Return whose word a field is: "this shop", or the table's mark in words; empty where none is."""
        return self.sources.get(name, "")


def profile(kind: str, groups: frozenset[str] = frozenset(), edits: Edits = Edits()) -> Profile:
    """Return the profile of a product of a kind; reactivity groups and tags add traits, edits win.

    An unknown kind or family is a KeyError: the table must speak of every one.
    """
    raise NotImplementedError
