"""The fields of a profile: what can be ticked, which numbers there are, and how far they may go."""

from collections.abc import Iterator

from django import forms

from inventory.trade.kinds import traits
from inventory.trade.profile import Profile
from inventory.trade.residues import residues
from inventory.trade.surfaces import AREAS, materials

NEED = "need_"
GRADES = (("", "may be there"), ("tell", "a note"), ("ask", "asked"), ("stop", "a stop"))
TICKS = {
    "leaves": "Leaves on a surface",
    "lifts": "Takes off",
    "touches": "Reaches",
    "never": "Never goes on",
    "asks": "Asked before it goes on",
    "traits": "Counts as",
}
# What a trait means where its name alone does not say.
TRAIT_WORDS = {
    "wet": "wet: it brings water",
    "seals": "seals: it leaves protection",
    "coats": "coats: a layer that cures",
    "topper": "topper: for the time after a coating",
    "pressure": "pressure: a jet, or a machine",
    "heat": "heat: it warms the surface",
}
# The longest that makes sense; beyond it a slip of the hand is likelier.
MOST = {"min": 43_200, "h": 8_760, "d": 3_650}
NUMBERS = {
    "dwell_min": ("Lies for", "min"),
    "flash_min": ("Flashes off in", "min"),
    "recoat_from_min": ("A further layer not before", "min"),
    "recoat_to_min": ("A further layer not after", "min"),
    "keep_dry_h": ("Kept dry for", "h"),
    "wash_hold_d": ("Not washed for", "d"),
    "cure_h": ("Cures in", "h"),
    "refinish_wait_d": ("On refinish not before it is so old", "d"),
    "film_wait_d": ("On film asked before it is so old", "d"),
}
WINDOW = {
    "heat_c": ("Stands", "°C", -50, 1500),
    "air_from_c": ("Air and panel from", "°C", -40, 60),
    "air_to_c": ("Air and panel to", "°C", -40, 60),
    "humidity_from": ("Humidity from", "%", 0, 100),
    "humidity_to": ("Humidity to", "%", 0, 100),
}
PAIRS = (
    ("recoat_from_min", "recoat_to_min", "The further layer would be too late before it is early enough."),
    ("air_from_c", "air_to_c", "The window ends below where it starts."),
    ("humidity_from", "humidity_to", "The window ends below where it starts."),
)
UNITS = {"min": "minutes", "h": "hours", "d": "days"}
WHOLE = "Write whole numbers."
SECTIONS = {
    "What it does": ("family", "leaves", "lifts", "touches"),
    "What must not be there": tuple(NEED + key for key in residues()),
    "What it counts as": ("traits",),
    "Where it never goes, or is asked about first": ("never", "asks"),
    "Waits": (*NUMBERS, "topper_ok"),
    "Air, humidity and heat": tuple(WINDOW),
    "": ("source",),
}
ALWAYS_OPEN = ("What it does", "")


def ticks(now: Profile, by_groups: frozenset[str]) -> Iterator[tuple[str, forms.Field]]:
    """Yield the lists and grades of a profile as fields, ticked as they stand.

    Traits `by_groups` cannot be unticked here: they follow the groups, which an owner confirms.
    """
    words = [(key, one.words) for key, one in residues().items()]
    surfaces = [(key, one.name) for key, one in materials().items()]
    counts = [(one, TRAIT_WORDS.get(one, one)) for one in traits() if one not in by_groups]
    choices = {
        "leaves": words, "lifts": words, "touches": [(one, one) for one in AREAS], "traits": counts,
    }  # fmt: skip
    hints = {"traits": _counts_as(by_groups)}
    for name, label in TICKS.items():
        yield name, forms.MultipleChoiceField(
            required=False, label=label, choices=choices.get(name, surfaces),
            widget=forms.CheckboxSelectMultiple, help_text=hints.get(name, ""),
            initial=sorted(getattr(now, name) - (by_groups if name == "traits" else set())),
        )  # fmt: skip
    for key, said in words:
        grade = now.needs_absent.get(key, "")
        label = said[:1].upper() + said[1:]
        yield (
            NEED + key,
            forms.ChoiceField(required=False, label=label, choices=GRADES, initial=grade),
        )


def _counts_as(by_groups: frozenset[str]) -> str:
    follows = "What a surface does not bear, and what must wait for what, follow from these."
    if not by_groups:
        return follows
    more = ", ".join(sorted(by_groups))
    return f"{follows} By its reactivity groups it counts as {more} besides, until those are changed."


def numbers(default: Profile) -> Iterator[tuple[str, forms.Field]]:
    """Yield the numbers of a profile as fields; what the kind says stands below each."""
    for name, (label, unit) in NUMBERS.items():
        said = getattr(default.waits, name)
        hint = "" if said is None else f"Left empty: {said} {unit}, {default.source(name)}."
        yield name, _number(f"{label}, {UNITS[unit]}", 0, MOST[unit], hint)
    for name, (label, unit, low, high) in WINDOW.items():
        yield name, _number(f"{label}, {unit}", low, high, "")


def _number(label: str, low: int, high: int, hint: str) -> forms.IntegerField:
    return forms.IntegerField(
        required=False, label=label, min_value=low, max_value=high, help_text=hint,
        error_messages={"invalid": WHOLE},
    )  # fmt: skip


def family(choices: tuple[str, ...]) -> forms.ChoiceField:
    """Return the choice of a family; the kind's own comes first."""
    first, *others = choices
    listed = [("", f"{first or 'the usual'} (as its kind)"), *((one, one) for one in others)]
    return forms.ChoiceField(
        required=False, label="Family", choices=listed,
        help_text="What it leaves, reaches and waits for follows its family unless you say otherwise.",
    )  # fmt: skip


def topper() -> forms.NullBooleanField:
    """Return the question whether a topper is right while a coating cures."""
    field = forms.NullBooleanField(required=False, label="Its maker names a topper while it cures")
    field.widget.choices = [("unknown", "not said"), ("true", "yes"), ("false", "no")]
    return field
