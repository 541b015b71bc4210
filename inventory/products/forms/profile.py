"""What a product does on a car, as its owner types it; what equals the kind's own word follows the kind."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from django import forms
from django.forms import BoundField

from inventory.models import Profile
from inventory.precheck.queries.profiles import edits_of
from inventory.trade.edits import Edits
from inventory.trade.kinds import families, traits_of
from inventory.trade.profile import Profile as Trade
from inventory.trade.profile import profile as resolve
from inventory.trade.residues import residues
from inventory.trade.surfaces import materials

from .profile_fields import (
    ALWAYS_OPEN,
    NEED,
    NUMBERS,
    PAIRS,
    SECTIONS,
    TICKS,
    WINDOW,
    family,
    numbers,
    ticks,
    topper,
)


@dataclass(frozen=True)
class Section:
    """Fields that belong together; `folded` where they may wait behind their title."""

    title: str
    fields: list[BoundField]
    folded: bool


class ProfileForm(forms.ModelForm):  # type: ignore[type-arg]
    """The owner's words on a product; an empty number follows the kind."""

    class Meta:
        model = Profile
        fields = ["family", *NUMBERS, "topper_ok", *WINDOW, "source"]
        labels = {"source": "Whose word this is"}
        help_texts = {"source": "The technical sheet, the label, or who tried it."}
        widgets = {"source": forms.TextInput(attrs={"list": "words-of"})}

    def __init__(self, *args: object, kind: str, groups: frozenset[str], **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        self.kind, self.groups = kind, groups
        self.before = edits_of(self.instance)
        default = self._default(self.before.family)
        self.by_groups = traits_of(groups)
        now = resolve(kind, groups, self.before)
        self.fields |= dict(ticks(now, self.by_groups)) | dict(numbers(default))
        self.fields["topper_ok"] = topper()
        split = families(kind)
        if len(split) == 1:
            del self.fields["family"]
        else:
            self.fields["family"] = family(split)
            self.initial["family"] = "" if self.before.family == split[0] else self.before.family

    def _default(self, of_family: str, traits: tuple[str, ...] | None = None) -> Trade:
        return resolve(self.kind, self.groups, Edits(family=of_family, traits=traits))

    def sections(self) -> Iterator[Section]:
        """Yield the fields as the page shows them."""
        for title, names in SECTIONS.items():
            fields = [self[name] for name in names if name in self.fields]
            told = any(field.errors for field in fields) or any(self._typed(name) for name in names)
            yield Section(title, fields, folded=title not in ALWAYS_OPEN and not told)

    def _typed(self, name: str) -> bool:
        """Say whether a field, or the list that it belongs to, is this shop's word."""
        word = getattr(self.before, "needs_absent" if name.startswith(NEED) else name, None)
        return word is not None and word != ""

    def clean(self) -> dict[str, Any]:
        """Refuse windows that end before they start, and a surface that is both never and asked about."""
        data: dict[str, Any] = super().clean() or {}
        default = self._default(data.get("family", self.before.family))
        for low, high, says in PAIRS:
            ends = [self._effective(data, default, name) for name in (low, high)]
            if None not in ends and ends[0] >= ends[1] and {low, high} <= set(data):
                self.add_error(high, f"{says} It would be {ends[0]} to {ends[1]}.")
        if both := set(data.get("never", ())) & set(data.get("asks", ())):
            names = ", ".join(one.name for key, one in materials().items() if key in both)
            self.add_error("asks", f"{names[:1].upper()}{names[1:]}: never, or asked about? Tick one.")
        self._keep_lists(data, default)
        return data

    def _effective(self, data: dict[str, Any], default: Trade, name: str) -> Any:
        typed = data.get(name)
        return getattr(default.waits, name, None) if typed is None else typed

    def _keep_lists(self, data: dict[str, Any], default: Trade) -> None:
        """Keep a list only where it was changed, and is not what the kind says anyhow."""
        if "traits" in self.changed_data and "traits" in data:
            self._keep_traits(set(data["traits"]), default.family)
        # What never bears it follows from what it counts as, also where that was changed just now.
        own = self.instance.traits
        default = self._default(default.family, None if own is None else tuple(own))
        for name in (one for one in TICKS if one != "traits"):
            if name in self.changed_data and name in data:
                same = set(data[name]) == getattr(default, name)
                setattr(self.instance, name, None if same else data[name])
        needs = {key: data.get(NEED + key, "") for key in residues()}
        if any(NEED + key in self.changed_data for key in needs):
            graded = {key: grade for key, grade in needs.items() if grade}
            same = graded == dict(default.needs_absent)
            self.instance.needs_absent = None if same else [_entry(*one) for one in graded.items()]

    def _keep_traits(self, ticked: set[str], family: str) -> None:
        """Keep what it counts as by this shop's word; its groups count beside that, ticked or not."""
        of_kind = resolve(self.kind, edits=Edits(family=family)).traits
        before = resolve(self.kind, edits=Edits(family=family, traits=self.before.traits)).traits
        same = ticked == of_kind - self.by_groups
        self.instance.traits = None if same else sorted(ticked | before & self.by_groups)


def _entry(residue: str, grade: str) -> str:
    return residue if grade == "stop" else f"{residue}:{grade}"
