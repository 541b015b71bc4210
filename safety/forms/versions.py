"""Attaching a data sheet: its file, its date, and what a person reads out of it."""

from __future__ import annotations

import re
from typing import Any

from django import forms
from django.core.exceptions import ValidationError
from django.core.files.uploadedfile import UploadedFile
from django.core.validators import FileExtensionValidator

from safety.forms.composition import IngredientRows
from safety.forms.files import check_pdf
from safety.hazards.classes import UnknownHazard, read_hazard
from safety.hazards.composition import Unreadable as UnreadableText
from safety.hazards.composition import read_mixes
from safety.hazards.elements import elements
from safety.hazards.mixtures.fields import MixtureError
from safety.hazards.mixtures.reading import read_mixture
from safety.hazards.statements import UnknownStatement, wording
from safety.models import DataSheet, SheetVersion

MEASURED = ("ph", "flash_point_c", "boiling_point_c", "viscosity_mm2_s_40c")
LEAST_PH, MOST_PH = -2, 16
PRECAUTION = re.compile(r"P\d{3}(\+P\d{3})*")
CODE = re.compile(r"(?:EUH|H|P)\d{3}[A-Za-z]{0,2}(?:\+[HP]\d{3})*")


class SheetForm(forms.ModelForm):  # type: ignore[type-arg]  # no subscript at run time
    """A sheet that is new to the shop."""

    class Meta:
        model = DataSheet
        fields = ["supplier", "title"]


class VersionForm(forms.ModelForm):  # type: ignore[type-arg]  # no subscript at run time
    """One revision of a sheet. Lists are typed a line each; the signal word follows from the classes."""

    pdf = forms.FileField(
        label="The sheet itself (PDF)",
        validators=[FileExtensionValidator(["pdf"])],
        widget=forms.FileInput(attrs={"accept": ".pdf,application/pdf"}),
        error_messages={"required": "Attach the sheet itself: it is what people read in the end."},
    )
    hazard_lines = forms.CharField(
        label="Hazard classes, one a line",
        required=False,
        widget=forms.Textarea(attrs={"rows": 4}),
        help_text="From section 2 of the sheet, like “Flam. Liq. 2 H225”.",
    )
    statement_lines = forms.CharField(
        label="Statements on the label, one a line",
        required=False,
        widget=forms.Textarea(attrs={"rows": 4}),
        help_text="Codes, like “H225”, “EUH066” or “EUH208 limonene”.",
    )
    never_lines = forms.CharField(
        label="Never together with, one a line",
        required=False,
        widget=forms.Textarea(attrs={"rows": 3}),
        help_text="What, a colon, and what happens: “Bleach cleaner: chlorine gas”.",
    )
    mix_lines = forms.CharField(
        label="Measured on its mixes with water, one a line",
        required=False,
        widget=forms.Textarea(attrs={"rows": 2}),
        help_text="Product : water and what was measured, from the sheet or by yourself: “1:10 pH 10.9” or "
        "“1:1 flash point 24”. A thinner mix is taken as no worse. Without it the concentrate’s pH counts.",
    )
    confirm = forms.BooleanField(
        label="I have compared these fields with the sheet",
        required=False,
        help_text="Until somebody has, labels and posters treat the product as having no sheet.",
    )

    class Meta:
        model = SheetVersion
        fields = [
            "pdf",
            "revision_on",
            "language",
            "regime",
            "not_classified",
            "holds_fluoride",
            "holds_isocyanate",
            "form",
            *MEASURED,
            "wear_eyes",
            "wear_hands",
            "wear_breath",
            "wear_body",
            "ventilation",
            "aid_eyes",
            "aid_skin",
            "aid_breath",
            "aid_swallowed",
            "fire",
            "spill",
        ]
        labels = {
            "form": "It is",
            "regime": "Rules it was written by",
            "wear_eyes": "Wear for the eyes",
            "wear_hands": "Wear on the hands",
            "wear_breath": "Wear for the breath",
            "wear_body": "Wear on the body",
        }
        help_texts = {
            "ph": "From section 9, of the product as it is sold. Empty if the sheet does not say.",
            "flash_point_c": "Closed cup. Empty if the sheet gives none.",
            "viscosity_mm2_s_40c": "Decides whether swallowing it harms the lungs. Empty if unknown.",
        }
        widgets = {
            "revision_on": forms.DateInput(attrs={"type": "date"}, format="%Y-%m-%d"),
            **{
                name: forms.Textarea(attrs={"rows": 2})
                for name in ("aid_eyes", "aid_skin", "aid_breath", "aid_swallowed", "fire", "spill")
            },
        }

    field_order = [
        "pdf",
        "revision_on",
        "language",
        "regime",
        "not_classified",
        "hazard_lines",
        "statement_lines",
        "holds_fluoride",
        "holds_isocyanate",
        "never_lines",
    ]

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["form"].required = False
        self.ingredients = IngredientRows(
            self.data if self.is_bound else None, self.initial.get("composition", ())
        )

    def clean_pdf(self) -> UploadedFile[Any]:
        """Return the file, looked at."""
        file: UploadedFile[Any] = self.cleaned_data["pdf"]
        check_pdf(file)
        return file

    def clean_hazard_lines(self) -> list[str]:
        """Return the hazards in the table's spelling."""
        try:
            return [str(read_hazard(line)) for line in lines_of(self.cleaned_data["hazard_lines"])]
        except UnknownHazard as odd:
            raise ValidationError(str(odd)) from odd

    def clean_statement_lines(self) -> list[str]:
        """Return the codes, each known."""
        found = []
        for line in lines_of(self.cleaned_data["statement_lines"]):
            parts = [line] if line.startswith("EUH208") else re.split(r"[\s,;]+", line)
            found += [part for part in parts if part]
        for code in found:
            self.check_statement(code)
        return found

    def check_statement(self, code: str) -> None:
        """Raise ValidationError for a code that no table has."""
        if PRECAUTION.fullmatch(code):
            return
        if not CODE.fullmatch(code.partition(" ")[0]):
            raise ValidationError(f"“{code}” is not a code like H225 or EUH066.")
        try:
            wording(code, "EU")
        except UnknownStatement as odd:
            raise ValidationError(str(odd)) from odd

    def clean_never_lines(self) -> list[dict[str, str]]:
        """Return the pairs."""
        pairs = []
        for line in lines_of(self.cleaned_data["never_lines"]):
            other, colon, why = line.partition(":")
            if not colon or not other.strip() or not why.strip():
                raise ValidationError(f"“{line}” lacks a colon and what happens then.")
            pairs.append({"with": other.strip(), "why": why.strip()})
        return pairs

    def clean_mix_lines(self) -> list[dict[str, Any]]:
        """Return what was measured on mixes."""
        try:
            mixes = read_mixes(self.cleaned_data["mix_lines"])
        except UnreadableText as odd:
            raise ValidationError(str(odd)) from odd
        for one in mixes:
            if one["ph"] is not None and not LEAST_PH <= one["ph"] <= MOST_PH:
                raise ValidationError(f"pH {one['ph']} is not between {LEAST_PH} and {MOST_PH}.")
        return mixes

    def clean(self) -> dict[str, object]:
        """Hold classes and “not classified” apart."""
        cleaned: dict[str, object] = super().clean() or self.cleaned_data
        if cleaned.get("not_classified") and cleaned.get("hazard_lines"):
            self.add_error("not_classified", "It has hazard classes: it cannot be “not classified” too.")
        for says in self.ingredients.sentences() or self.of_the_whole():
            self.add_error(None, says)
        return cleaned

    def of_the_whole(self) -> list[str]:
        """Return what is wrong with the ingredients together: more than 100 %."""
        try:
            read_mixture({"form": "liquid", "ingredients": self.ingredients.documents()})
        except MixtureError as odd:
            return [str(odd)]
        return []

    def version(self) -> SheetVersion:
        """Return the version as typed, not yet saved."""
        version: SheetVersion = self.save(commit=False)
        version.hazards = self.cleaned_data["hazard_lines"]
        version.statements = self.cleaned_data["statement_lines"]
        version.never_with = self.cleaned_data["never_lines"]
        version.mixes = self.cleaned_data["mix_lines"]
        version.composition = self.ingredients.documents()
        version.signal_word = elements(version.hazards, version.regime).signal_word or ""
        return version


def lines_of(text: str) -> list[str]:
    """Return the lines that hold something."""
    return [line.strip() for line in text.splitlines() if line.strip()]
