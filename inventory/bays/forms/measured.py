"""The forms of local exhaust and of a measurement: who, when, with how much, and each result."""

import re
from collections.abc import Sequence
from decimal import Decimal
from typing import Any, cast

from django import forms
from django.utils import timezone

from inventory.bays.queries import measured as queries
from inventory.models import AirMeasurement, AirSample, LocalExhaust, Place, Product, Shop
from inventory.units import AmountError, parse_amount
from safety.air.measured import NOTHING_FOUND, Sample
from safety.air.substances import substances
from safety.hazards.mixtures.fields import MixtureError, cas_number

ROWS, MOST = 4, 8
RESULT = re.compile(r"\d{1,6}([.,]\d{1,3})?", re.ASCII)


def day_field(label: str, help_text: str = "") -> forms.DateField:
    """Return a field for a day, in the browser's own picker."""
    widget = forms.DateInput(attrs={"type": "date"}, format="%Y-%m-%d")
    return forms.DateField(label=label, help_text=help_text, widget=widget)


def refuse_days(form: forms.BaseForm, done: str, until: str) -> None:
    """Say that what was done lies in the past, and that nothing ends before it began."""
    day, last = form.cleaned_data.get(done), form.cleaned_data.get(until)
    if day and day > timezone.localdate():
        form.add_error(done, "That day is still to come.")
    if day and last and last <= day:
        form.add_error(until, "It would end before it began.")


class ExhaustForm(forms.ModelForm):  # type: ignore[type-arg]
    """What catches vapour or dust where it arises, and until when its examination counts."""

    examined_on = day_field("Examined on")
    until_on = day_field("Counts until", "As the report says.")

    class Meta:
        model = LocalExhaust
        fields = ["name", "catches", "examined_on", "until_on", "proof"]
        labels = {"proof": "Who examined it"}
        help_texts = {
            "name": "Extraction arm, suction of the sander. Examined again: the same name once more.",
            "proof": "And where the paper is.",
        }

    def clean(self) -> dict[str, Any]:
        """Refuse days that cannot be."""
        cleaned = super().clean() or {}
        refuse_days(self, "examined_on", "until_on")
        return cleaned


class ProductForm(forms.Form):
    """Which product was used while somebody measured."""

    product = forms.ModelChoiceField(
        Product.objects.none(), to_field_name="code", label="Product that was used",
        help_text="What was measured counts for this product alone.",
    )  # fmt: skip

    def __init__(self, *args: Any, shop: Shop, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        field = self.fields["product"]
        assert isinstance(field, forms.ModelChoiceField)
        field.queryset = queries.measurable(shop)


class MeasurementForm(forms.ModelForm):  # type: ignore[type-arg]
    """How much was used in how long, under which exhaust, who measured and until when it counts."""

    amount = forms.CharField(
        max_length=60, label="Most that was used each time", help_text="As you would say it: 180 ml, 6 fl oz."
    )
    minutes = forms.IntegerField(label="How long the work took, minutes", min_value=1, max_value=960)
    measured_on = day_field("Measured on")
    until_on = day_field("Counts until", "As the report says; measure again when work or product change.")

    class Meta:
        model = AirMeasurement
        fields = ["amount", "minutes", "exhaust", "measured_on", "until_on", "by_whom"]
        labels = {"exhaust": "Local exhaust that was on", "by_whom": "Who measured"}
        help_texts = {"by_whom": "A competent person: name, method, where the report is."}

    def __init__(self, *args: Any, place: Place, product: Product, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.shop, self.product = place.shop, product
        field = self.fields["exhaust"]
        assert isinstance(field, forms.ModelChoiceField)
        here = [one.row.pk for one in queries.exhausts(place, timezone.localdate()) if one.state != "gone"]
        field.queryset = LocalExhaust.objects.filter(pk__in=here).order_by("name")
        field.empty_label, field.required = "none was on", False

    def clean_amount(self) -> int:
        """Return base units; what cannot be read is said as the grammar says it."""
        shop = self.shop
        try:
            read = parse_amount(
                str(self.cleaned_data["amount"]), dimension=self.product.dimension, system=shop.system,
                decimal=shop.decimal_mark or None,
            )  # fmt: skip
        except AmountError as error:
            raise forms.ValidationError(str(error)) from None
        if read.base == 0:
            raise forms.ValidationError("Something was used while it was measured: give more than nothing.")
        return read.base

    def clean(self) -> dict[str, Any]:
        """Refuse days that cannot be."""
        cleaned = super().clean() or {}
        refuse_days(self, "measured_on", "until_on")
        return cleaned


class ResultsForm(forms.Form):
    """The results of one substance against one kind of limit."""

    results = forms.CharField(
        max_length=120, required=False, label="Results", help_text="1 to 8 with spaces between: 39 38 35"
    )
    unit = forms.ChoiceField(choices=AirSample.Unit.choices, label="Unit")
    against = forms.ChoiceField(choices=AirSample.Against.choices, label="Stands against")

    def __init__(self, *args: Any, choices: Sequence[tuple[str, str]], **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.names = dict(choices)
        field: forms.Field = forms.ChoiceField(
            choices=[(cas, f"{name}, {cas}") for cas, name in choices], label="Substance"
        )
        if not choices:
            text = "By its CAS number, or its name: nobody typed in what the product is made of."
            field = forms.CharField(max_length=80, required=False, label="Substance", help_text=text)
        self.fields = {"substance": field, **self.fields}

    def clean_results(self) -> tuple[Decimal, ...]:
        """Return the results of a row, none where it is empty."""
        words = [word.rstrip(",") for word in str(self.cleaned_data["results"]).replace(";", " ").split()]
        for word in words:
            if word.startswith("<"):
                raise forms.ValidationError(f"“{word}”: write what could just be found, without the sign.")
            if not RESULT.fullmatch(word):
                raise forms.ValidationError(f"“{word}” is no result. Write numbers with spaces between.")
        if len(words) > MOST:
            raise forms.ValidationError(f"At most {MOST} results a row. More want a statistician’s test.")
        found = tuple(Decimal(word.replace(",", ".")) for word in words)
        if 0 in found:
            raise forms.ValidationError(f"“{words[found.index(Decimal(0))]}” shows nothing: {NOTHING_FOUND}.")
        return found

    def clean(self) -> dict[str, Any]:
        """Find the substance of a row that holds results."""
        given: dict[str, Any] = super().clean() or {}
        if given.get("results") and "substance" in given:
            try:
                given["cas"], given["name"] = self._substance(str(given["substance"]))
            except MixtureError as odd:
                digit = "check digit" in str(odd)
                self.add_error("substance", str(odd) if digit else "Give its CAS number, like 67-63-0.")
        return given

    def _substance(self, text: str) -> tuple[str, str]:
        if self.names:
            return text, self.names[text]
        known = substances()
        cas = next((one.cas for one in known.values() if one.name.casefold() == text.strip().casefold()), "")
        cas = cas or cas_number(text, "The substance")
        return cas, known[cas].name if cas in known else cas

    def said(self) -> list[Sample]:
        """Return the results of a row."""
        given = getattr(self, "cleaned_data", {})
        return [
            Sample(given["name"], given["cas"], given["against"], float(value), given["unit"])
            for value in given.get("results") or ()
            if given.keys() >= {"cas", "against", "unit"}
        ]


class ResultRows(forms.BaseFormSet):  # type: ignore[type-arg]
    """The results of a measurement, a substance and a kind of limit a row; the first row is needed."""

    def add_fields(self, form: forms.Form, index: int | None) -> None:
        """Ask for results in the first row."""
        super().add_fields(form, index)
        form.fields["results"].required = index == 0

    def clean(self) -> None:
        """Refuse the same substance and kind of limit in two rows."""
        seen: set[tuple[str, str]] = set()
        for form in self.forms:
            for key in {(one.cas, one.kind) for one in form.said()}:
                if key in seen:
                    form.add_error("against", "This stands above already. Put all its results into one row.")
                seen.add(key)

    def said(self) -> list[Sample]:
        """Return every result."""
        return [one for form in self.forms for one in form.said()]


def result_rows(product: Product, data: Any = None) -> ResultRows:
    """Return the rows of results of a measurement of a product."""
    made = forms.formset_factory(ResultsForm, formset=ResultRows, extra=ROWS, max_num=ROWS)
    return cast(ResultRows, made(data, form_kwargs={"choices": queries.let_go(product)}, prefix="results"))
