"""The forms of orders: how many packs before an order is placed, and another day for one that is late."""

import re
import uuid
from collections.abc import Callable, Iterable, Mapping

from django import forms
from django.http import QueryDict

from inventory.models import Pack, Supplier

MOST_PACKS = 9_999


def prefix_of(supplier: Supplier) -> str:
    """Return what the names of a supplier's fields begin with on a page of several."""
    return f"from{supplier.pk}"


def pack_ids(data: QueryDict, supplier: Supplier) -> list[int]:
    """Return the packs that a posted form names."""
    names = (re.fullmatch(rf"{prefix_of(supplier)}-pack_([0-9]{{1,18}})", name, re.ASCII) for name in data)
    return [int(found[1]) for found in names if found]


class PlaceForm(forms.Form):
    """How many packs of each product go on an order; 0 leaves one out. A key makes it count once."""

    key = forms.CharField(widget=forms.HiddenInput, max_length=64)

    def __init__(
        self,
        data: QueryDict | None = None,
        *,
        supplier: Supplier,
        packs: Iterable[Pack],
        wanted: Mapping[int, int] | None = None,
    ) -> None:
        super().__init__(data, prefix=prefix_of(supplier), initial={"key": str(uuid.uuid4())})
        self.supplier, self.typed = supplier, data
        self.packs = {row.pk: row for row in packs}
        for pk, row in self.packs.items():
            name = f"Packs of {row.product}"
            self.fields[f"pack_{pk}"] = forms.IntegerField(
                min_value=0,
                max_value=MOST_PACKS,
                label=name,
                initial=(wanted or {}).get(pk, 0),
                widget=forms.NumberInput(attrs={"inputmode": "numeric", "aria-label": name}),
                error_messages={
                    "required": "Give a number, 0 to leave it out.",
                    "invalid": "Give a whole number.",
                },
                validators=[_in_multiples(row.multiple)],
            )

    def clean(self) -> dict[str, object]:
        """Refuse an order of nothing."""
        cleaned = super().clean() or {}
        if not self.errors and not any(self.counts().values()):
            raise forms.ValidationError("Nothing is ordered: give at least one pack.")
        return cleaned

    def counts(self) -> dict[Pack, int]:
        """Return how many of each pack were asked for."""
        return {row: self.cleaned_data.get(f"pack_{pk}") or 0 for pk, row in self.packs.items()}


def _in_multiples(multiple: int) -> Callable[[int], None]:
    def check(number: int) -> None:
        if number % multiple:
            less = number - number % multiple
            either = f"{less} or {less + multiple}" if less else str(multiple)
            raise forms.ValidationError(f"It is sold by {multiple}: give {either}.")

    return check


class DueForm(forms.Form):
    """The day that the supplier named."""

    due_on = forms.DateField(
        label="Comes on", widget=forms.DateInput(attrs={"type": "date"}, format="%Y-%m-%d")
    )
