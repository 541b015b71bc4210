"""What a product is made of, a row an ingredient: name, CAS number, percentage, classes; the rest folded."""

import re
from collections.abc import Iterable, Mapping
from typing import Any

from django import forms

from safety.hazards.composition import Document, read_row, typed
from safety.hazards.mixtures.fields import MixtureError
from safety.hazards.mixtures.reading import read_ingredient, read_mixture

FEWEST, SPARE, MOST = 8, 4, 60
ROW = re.compile(r"row-(\d{1,2})-name")
SHOWN = ("name", "cas", "percent", "hazards")
FIELD_OF = {"m_acute": "m_factors", "m_chronic": "m_factors", "no_acute_toxicity": "unknown"}


def a_line(label: str, hint: str = "", **attrs: str) -> forms.CharField:
    """Return a line that may stay empty: what is missing is said by the row, not by the field."""
    return forms.CharField(
        label=label, required=False, max_length=500, help_text=hint, widget=forms.TextInput(attrs=attrs)
    )


class IngredientForm(forms.Form):
    """One row. `document` is the ingredient as it is kept, once the form is valid."""

    name = a_line("Name")
    cas = a_line("CAS number")
    percent = a_line("Percent by weight")
    hazards = a_line(
        "Its classes",
        "Like “Skin Corr. 1A H314; Met. Corr. 1 H290”. “none” if the sheet gives none; empty if unknown.",
    )
    limits = a_line("Specific limits", "Like “5: Skin Corr. 1A H314; 2-5: Skin Corr. 1B H314”.")
    ate = a_line(
        "Acute toxicity values", "Like “oral 1200; vapour 11”: mg/kg, mg/l over 4 hours, ppmV for a gas."
    )
    unknown = a_line(
        "Routes of unknown acute toxicity", "oral, dermal, inhalation; “none” if it is known to have none."
    )
    m_factors = a_line("M factors", "Like “acute 10; chronic 1”.")
    ph = a_line("pH of the ingredient")
    additive = forms.ChoiceField(
        label="Does its effect on skin and eyes add up with the others’?",
        required=False,
        choices=[("", "the sheet does not say"), ("yes", "yes"), ("no", "no, it acts alone")],
    )

    def __init__(self, data: Mapping[str, Any] | None, number: int, document: Document | None = None) -> None:
        self.number = number
        self.document: Document = document or {}
        initial = typed(document) if document else None
        super().__init__(data, prefix=f"row-{number}", initial=initial)

    @property
    def blank(self) -> bool:
        """Whether nothing is typed in this row, or nothing was to begin with."""
        if not self.is_bound:
            return not self.initial
        return not any(str(self.data.get(self.add_prefix(name), "")).strip() for name in self.fields)

    def clean(self) -> dict[str, Any]:
        """Read the row; say by field what cannot be read."""
        cleaned: dict[str, Any] = super().clean() or self.cleaned_data
        if self.blank:
            return cleaned
        self.document, wrong = read_row(cleaned)
        for field, says in wrong.items():
            self.add_error(field, says)
        for key, value in self.document.items():
            self._try({"name": "x", "percent": 1, key: value}, FIELD_OF.get(key, key))
        if not self.errors:
            self._try(self.document, None)
        return cleaned

    def _try(self, document: Document, field: str | None) -> None:
        """Say at a field what cannot be taken: one answer names every fault of a row."""
        try:
            read_ingredient(document, self.number)
        except MixtureError as odd:
            named = str(odd).replace("(x)", f"({self.document.get('name') or 'no name'})")
            self.add_error(field if field in self.fields else None, named)

    def shown(self) -> list[forms.BoundField]:
        """The fields that every row needs."""
        return [self[name] for name in SHOWN]

    def more(self) -> list[forms.BoundField]:
        """The fields that few rows need."""
        return [self[name] for name in self.fields if name not in SHOWN]

    @property
    def open(self) -> bool:
        """Whether the folded fields hold something, or something is wrong among them."""
        return any(field.value() or field.errors for field in self.more())

    def sentences(self) -> list[str]:
        """What is wrong, a sentence each, with the row's number and the field's name."""
        name = str(self.data.get(self.add_prefix("name"), "")).strip()
        who = f"Ingredient {self.number}" + (f" ({name})" if name else "")
        said = [
            f"{who}, {self[field].label.lower() if field != 'cas' else 'CAS number'}: {error}"
            for field, errors in self.errors.items()
            if field != "__all__"
            for error in errors
        ]
        return said + [str(error) for error in self.non_field_errors()]


class IngredientRows:
    """The rows of one version: those that are filled, and some spare ones below."""

    def __init__(self, data: Mapping[str, Any] | None, start: Iterable[Document] = ()) -> None:
        kept = list(start)
        if data is None:
            count = min(MOST, max(FEWEST, len(kept) + SPARE))
        else:
            there = [int(found[1]) for key in data if (found := ROW.fullmatch(key))]
            count = min(MOST, max(FEWEST, *there, 0))
        self.rows = [
            IngredientForm(data, at, kept[at - 1] if data is None and at <= len(kept) else None)
            for at in range(1, count + 1)
        ]

    def sentences(self) -> list[str]:
        """What is wrong in any row."""
        return [says for row in self.rows if not row.is_valid() for says in row.sentences()]

    def documents(self) -> list[Document]:
        """The ingredients as they are kept, in their order; only once nothing is wrong."""
        return [row.document for row in self.rows if not row.blank]

    def filled(self) -> list[IngredientForm]:
        """The rows to show open: those with something in them, and the first ones."""
        return [row for row in self.rows if not row.blank or row.number <= SPARE]

    def spare(self) -> list[IngredientForm]:
        """The rows to fold away."""
        return [row for row in self.rows if row.blank and row.number > SPARE]

    def of_the_whole(self) -> list[str]:
        """What is wrong with the ingredients together: more than 100 %, or none at all."""
        if not self.documents():
            return ["Type at least one ingredient, as section 3 of the sheet lists it."]
        try:
            read_mixture({"form": "liquid", "ingredients": self.documents()})
        except MixtureError as odd:
            return [str(odd)]
        return []
