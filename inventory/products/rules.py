"""What a product does on a car in plain words, and whose word each line is."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from inventory.trade.edits import THIS_SHOP
from inventory.trade.profile import Profile
from inventory.trade.residues import residues
from inventory.trade.surfaces import materials
from inventory.trade.visits import COATS

NOTHING = "nothing"
GRADES = {"stop": "a stop", "ask": "asked", "tell": "a note"}
# A line by its name: the fields that it shows, and that go back to the kind together.
FIELDS: Mapping[str, tuple[str, ...]] = {
    "family": ("family",),
    "leaves": ("leaves",),
    "lifts": ("lifts",),
    "needs_absent": ("needs_absent",),
    "touches": ("touches",),
    "never": ("never",),
    "asks": ("asks",),
    "traits": ("traits",),
    "dwell": ("dwell_min",),
    "flash": ("flash_min",),
    "recoat": ("recoat_from_min", "recoat_to_min"),
    "keep_dry": ("keep_dry_h",),
    "wash_hold": ("wash_hold_d",),
    "cure": ("cure_h",),
    "topper": ("topper_ok",),
    "refinish": ("refinish_wait_d",),
    "film": ("film_wait_d",),
    "heat": ("heat_c",),
    "air": ("air_from_c", "air_to_c"),
    "humidity": ("humidity_from", "humidity_to"),
}
LABELS = {
    "family": "Family",
    "leaves": "Leaves on a surface",
    "lifts": "Takes off",
    "needs_absent": "Must not find",
    "touches": "Reaches",
    "never": "Never goes on",
    "asks": "Asked before it goes on",
    "traits": "Counts as",
    "dwell": "Lies for",
    "flash": "Flashes off in",
    "recoat": "A further layer",
    "keep_dry": "Kept dry for",
    "wash_hold": "Not washed for",
    "cure": "Cures in",
    "topper": "Topper while it cures",
    "refinish": "On fresh refinish",
    "film": "On fresh film",
    "heat": "Stands",
    "air": "Air and panel",
    "humidity": "Humidity",
}
# What a line would answer, for those that nobody has said anything about.
ASKED = {
    "dwell": "how long it must lie",
    "flash": "how long it flashes off",
    "recoat": "when a further layer goes on",
    "keep_dry": "how long it must stay dry",
    "wash_hold": "how long it must not be washed",
    "cure": "how long it cures",
    "topper": "whether its maker names a topper",
    "heat": "what heat it stands",
    "air": "at what temperature it goes on",
    "humidity": "at what humidity it goes on",
}
OF_A_COATING = frozenset({"recoat", "keep_dry", "wash_hold", "cure", "topper", "heat", "air", "humidity"})


@dataclass(frozen=True)
class Line:
    """One line of the page; `typed` is this shop's word, which can go back to the kind's."""

    name: str
    label: str
    says: str
    whose: str
    typed: bool


def lines(profile: Profile, by_groups: frozenset[str] = frozenset()) -> list[Line]:
    """Return what is known of a product, in the order of the page; `by_groups` are traits of its groups."""
    lists = {**_lists(profile), "traits": _traits(profile.traits, by_groups)}
    said = {"family": profile.family, **lists, **_waits(profile), **_window(profile)}
    return [_line(name, said[name], profile) for name in FIELDS if said.get(name)]


def unknown(profile: Profile) -> list[str]:
    """Return what nobody has said, in the order of the page; the waits of a coating for coatings only."""
    known = {line.name for line in lines(profile)}
    silent = known if COATS in profile.traits else known | OF_A_COATING
    return [asked for name, asked in ASKED.items() if name not in silent]


def _line(name: str, says: str, profile: Profile) -> Line:
    words = [word for field in FIELDS[name] if (word := profile.source(field))]
    typed = THIS_SHOP in words
    return Line(name, LABELS[name], says, THIS_SHOP if typed else next(iter(words), ""), typed)


def _lists(profile: Profile) -> dict[str, str]:
    surfaces = {key: one.name for key, one in materials().items()}
    words = {key: one.words for key, one in residues().items()}
    needs = [f"{words[key]} ({GRADES[grade]})" for key, grade in profile.needs_absent.items()]
    return {
        "leaves": _row(words[key] for key in words if key in profile.leaves),
        "lifts": _row(words[key] for key in words if key in profile.lifts),
        "needs_absent": _row(needs),
        "touches": _row(sorted(profile.touches)),
        "never": _row(surfaces[key] for key in surfaces if key in profile.never),
        "asks": _row(surfaces[key] for key in surfaces if key in profile.asks),
    }


def _traits(traits: frozenset[str], by_groups: frozenset[str]) -> str:
    own = _row(sorted(traits - by_groups))
    return f"{own}; by its groups: {_row(sorted(by_groups))}" if by_groups else own


def _row(names: Iterable[str]) -> str:
    return "; ".join(names) or NOTHING


def _waits(profile: Profile) -> dict[str, str]:
    waits = profile.waits
    first, last = waits.recoat_from_min, waits.recoat_to_min
    return {
        "dwell": _unit(waits.dwell_min, "{} min"),
        "flash": _unit(waits.flash_min, "{} min"),
        "recoat": " and ".join(
            part for part in (_unit(first, "not before {} min"), _unit(last, "not after {} min")) if part
        ),
        "keep_dry": _unit(waits.keep_dry_h, "{} h"),
        "wash_hold": _unit(waits.wash_hold_d, "{} d"),
        "cure": _unit(waits.cure_h, "{} h"),
        "topper": "named by its maker" if profile.topper_ok else "",
        "refinish": _unit(waits.refinish_wait_d, "not before it is {} d old"),
        "film": _unit(waits.film_wait_d, "asked before it is {} d old"),
    }


def _window(profile: Profile) -> dict[str, str]:
    return {
        "heat": _unit(profile.heat_c, "{} °C"),
        "air": _between(profile.air_from_c, profile.air_to_c, "°C"),
        "humidity": _between(profile.humidity_from, profile.humidity_to, "%"),
    }


def _unit(value: int | None, words: str) -> str:
    return "" if value is None else words.format(value)


def _between(low: int | None, high: int | None, unit: str) -> str:
    ends = (_unit(low, f"from {{}} {unit}"), _unit(high, f"to {{}} {unit}"))
    return " ".join(end for end in ends if end)
