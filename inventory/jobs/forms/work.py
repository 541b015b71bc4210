"""What a step does to the car: the fields that a service's step and a booked step share."""

from collections.abc import Iterator
from typing import Any

from django import forms

from inventory.models import ServiceStep, Shop, Step, Work
from inventory.trade.surfaces import AREAS

from .fields import GramsField

# What is folded, by the title that it waits behind; panels are a booked step's alone.
FOLDS = {
    "What is worn, and what it is done with": (
        "respirator",
        "local_exhaust",
        "sprayed",
        "tools",
        "dry_ice_g",
    ),
    "What it takes off the paint": ("cut", "passes", "panels", "strips_coating"),
    "Where it works, and how it is rinsed": ("touches", "rinses", "spot"),
}
FOLDED = [name for names in FOLDS.values() for name in names]
WORK = [name for name in FOLDED if name != "panels"]
LABELS = {
    "cut": "Takes paint off",
    "passes": "Passes",
    "strips_coating": "It is meant to take a coating off",
    "rinses": "Car and floor are rinsed to a clear drain",
    "spot": "Spots only, with water, wiped dry",
    "sprayed": "What it takes is sprayed as a mist",
    "local_exhaust": "Local exhaust catches vapour or dust where it arises",
    "respirator": "Respirator",
}
HELP = {
    "cut": (
        "The whole of a correction, on the step that cuts; what only refines it takes nothing more. Compound "
        "counts as one step at least, abrasive paper as wet sanding, polish alone as finishing, whatever is "
        "chosen."
    ),
    "strips_coating": "",
    "spot": "",
    "sprayed": "",
    "local_exhaust": "",
    "rinses": "Acid and iron remover never meet on a car where such a step is signed between them.",
}


class WorkForm(forms.ModelForm):  # type: ignore[type-arg]
    """A step's form: what and when stand open; what it does to the car and to people waits in folds."""

    touches = forms.MultipleChoiceField(
        label="Touches",
        choices=[(area, area) for area in AREAS],
        required=False,
        widget=forms.CheckboxSelectMultiple,
        help_text="Nothing ticked: whatever its products touch.",
    )

    tools = forms.MultipleChoiceField(
        label="Done with",
        choices=Work.Tool.choices,
        required=False,
        widget=forms.CheckboxSelectMultiple,
        help_text="Nothing ticked: by hand, or with what neither sparks, heats nor blows.",
    )
    dry_ice_g = GramsField(
        label="Dry ice that is blasted",
        required=False,
        help_text="The whole of it: 2 kg, 500 g. Needed to say what is breathed.",
    )

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        grams = self.fields["dry_ice_g"]
        assert isinstance(grams, GramsField)
        grams.reads_for(_shop_of(self.instance))
        cut = self.fields["cut"]
        assert isinstance(cut, forms.ChoiceField)
        cut.choices = [("", "as its products do"), *[one for one in Work.Cut.choices if one[0]]]
        self.fields["passes"].required = False
        self.fields["respirator"].required = False

    def clean_touches(self) -> list[str] | None:
        """Return the areas, or None where the products say."""
        return list(self.cleaned_data["touches"]) or None

    def clean_dry_ice_g(self) -> int | None:
        """Return the grams; an amount without its blaster is one tick forgotten."""
        grams: int | None = self.cleaned_data["dry_ice_g"]
        if grams is not None and Work.Tool.DRY_ICE not in self.cleaned_data.get("tools", ()):
            raise forms.ValidationError("Tick the dry-ice blaster too, or empty this amount.")
        return grams

    def clean_passes(self) -> int:
        """Return how often it goes over the paint, 1 to 20; left empty it is once."""
        passes = self.cleaned_data["passes"]
        passes = 1 if passes is None else int(passes)
        if not 1 <= passes <= 20:
            raise forms.ValidationError("Give 1 to 20 passes.")
        return passes

    def clean_respirator(self) -> str:
        """Return the respirator; left empty it is none."""
        return str(self.cleaned_data["respirator"] or "none")

    def plain_fields(self) -> Iterator[forms.BoundField]:
        """Return what stands open."""
        return (field for field in self.visible_fields() if field.name not in FOLDED)

    def folds(self) -> list[tuple[str, list[forms.BoundField], bool]]:
        """Return each fold: title, fields, and whether one is to be put right, so that it stands open."""
        wrong = set(self.errors)
        return [
            (title, [self[name] for name in names if name in self.fields], bool(wrong & set(names)))
            for title, names in FOLDS.items()
        ]


def _shop_of(row: Step | ServiceStep) -> Shop:
    return row.job.shop if isinstance(row, Step) else row.service.shop
