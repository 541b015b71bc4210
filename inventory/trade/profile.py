"""What a product does to a surface: the default of its kind from a sourced table, and the shop's word."""

from collections.abc import Mapping
from dataclasses import dataclass, field, fields
from functools import lru_cache
from types import MappingProxyType

from .edits import NO_EDITS, NO_WAITS, THIS_SHOP, Edits, Waits
from .kinds import default, families, traits_of
from .reading import in_words, listed
from .surface_rules import always

__all__ = ["THIS_SHOP", "Edits", "Profile", "Waits", "profile"]

NUMBERS = ("heat_c", "air_from_c", "air_to_c", "humidity_from", "humidity_to")


@dataclass(frozen=True)
class Profile:
    """What a product leaves, lifts, needs absent and must not touch, and its waits, all resolved.

    `needs_absent` maps a residue to its grade; `sources` tells where each field came from. `guessed` are
    traits of a family that nobody named.
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
    guessed: frozenset[str] = frozenset()
    waits: Waits = NO_WAITS
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


@lru_cache(maxsize=4096)
def profile(kind: str, groups: frozenset[str] = frozenset(), edits: Edits = NO_EDITS) -> Profile:
    """Return the profile of a product of a kind; reactivity groups and tags add traits, edits win.

    Raise KeyError for a kind or family that the table does not have. What edits list replaces the default
    of the kind; traits by composition stay, for they are facts of what is in the bottle.
    """
    row = default(kind, edits.family)
    own = row["traits"] if edits.traits is None else ";".join(edits.traits)
    known = traits_of(groups)
    traits = frozenset(listed(own)) | known
    named = edits.family or edits.traits is not None or len(families(kind)) < 2
    return Profile(
        kind=kind,
        family=row["family"],
        leaves=_list(row, edits, "leaves"),
        lifts=_list(row, edits, "lifts"),
        touches=_list(row, edits, "touches"),
        needs_absent=_graded(
            listed(row["needs_absent"]) if edits.needs_absent is None else edits.needs_absent
        ),
        never=always(traits, "stop") if edits.never is None else frozenset(edits.never),
        asks=always(traits, "ask") if edits.asks is None else frozenset(edits.asks),
        traits=traits,
        guessed=frozenset() if named else traits - known,
        waits=Waits(**{one.name: _wait(row, edits, one.name) for one in fields(Waits)}),
        topper_ok=bool(edits.topper_ok),
        sources=MappingProxyType(_sources(row, edits)),
        **{name: getattr(edits, name) for name in NUMBERS},
    )


def _list(row: dict[str, str], edits: Edits, name: str) -> frozenset[str]:
    typed = getattr(edits, name)
    return frozenset(listed(row[name]) if typed is None else typed)


def _graded(entries: tuple[str, ...]) -> Mapping[str, str]:
    """Return residues with their grades from "wax" (a stop) or "wax:ask"."""
    parts = (entry.partition(":") for entry in entries)
    return MappingProxyType({residue: grade or "stop" for residue, _, grade in parts})


def _wait(row: dict[str, str], edits: Edits, name: str) -> int | None:
    typed: int | None = getattr(edits, name)
    if typed is not None:
        return typed
    return int(row[name]) if row.get(name) else None


def _sources(row: dict[str, str], edits: Edits) -> dict[str, str]:
    """Return whose word each field is; a number that nobody gave has none."""
    waits = {one.name for one in fields(Waits)}
    found = {}
    for one in fields(Edits):
        if getattr(edits, one.name) not in (None, ""):
            found[one.name] = THIS_SHOP
        elif one.name in waits:
            found[one.name] = in_words(row[_mark_of(one.name)]) if row.get(one.name) else ""
        else:
            found[one.name] = "" if one.name in NUMBERS else in_words(row["mark"])
    return found


def _mark_of(wait: str) -> str:
    return "recoat_mark" if wait.startswith("recoat") else "waits_mark"
