"""The forms of a person's record: training, evaluation, fit test, face, first day."""

from typing import Any, Self

from django import forms
from django.utils import timezone

from inventory.models import MedicalEvaluation, Person, Product, Shop, Training
from inventory.people.actions.record import Fit
from inventory.people.queries.protection import masks
from safety.print.words import say


def day_field(label: str, help_text: str = "", *, required: bool = True) -> forms.DateField:
    """Return a field for a day, in the browser's own picker."""
    widget = forms.DateInput(attrs={"type": "date"}, format="%Y-%m-%d")
    return forms.DateField(label=label, help_text=help_text, required=required, widget=widget)


def refuse_days(form: forms.BaseForm, done: str, until: str) -> None:
    """Say that what was done lies in the past, and that nothing ends before it began."""
    day, last = form.cleaned_data.get(done), form.cleaned_data.get(until)
    if day and day > timezone.localdate():
        form.add_error(done, "That day is still to come.")
    if day and last and last <= day:
        form.add_error(until, "It would end before it began.")


class TrainingForm(forms.ModelForm):  # type: ignore[type-arg]
    """What somebody was trained for, when, and where the proof is."""

    trained_on = day_field("Trained on")
    until_on = day_field(
        "Good until",
        "Empty: no end. Diisocyanates end after five years at the latest.",
        required=False,
    )

    class Meta:
        model = Training
        fields = ["topic", "trained_on", "until_on", "proof"]
        labels = {"topic": "Trained for"}
        help_texts = {"proof": "Who trained, and where the paper is."}

    def clean(self) -> dict[str, Any]:
        """Refuse days that cannot be."""
        cleaned = super().clean() or {}
        refuse_days(self, "trained_on", "until_on")
        return cleaned


class EvaluationForm(forms.ModelForm):  # type: ignore[type-arg]
    """That a physician found somebody fit to wear a respirator; nothing of what was found."""

    evaluated_on = day_field("Evaluated on")
    until_on = day_field("Good until", "As the physician says; empty: no day was given.", required=False)

    class Meta:
        model = MedicalEvaluation
        fields = ["evaluated_on", "until_on", "proof"]
        help_texts = {"proof": "Where the physician's paper is. What was found stays with the physician."}

    def clean(self) -> dict[str, Any]:
        """Refuse days that cannot be."""
        cleaned = super().clean() or {}
        refuse_days(self, "evaluated_on", "until_on")
        return cleaned


class FitTestForm(forms.Form):
    """That one model and size of mask was fitted to this face."""

    mask = forms.ModelChoiceField(
        Product.objects.none(),
        to_field_name="code",
        help_text="A mask that is not listed is named first under “What protects people here”.",
    )
    size = forms.CharField(max_length=20, required=False)
    tested_on = day_field("Fitted on")
    until_on = day_field("Good until", "Empty, or later: a year.", required=False)
    proof = forms.CharField(max_length=200, required=False, help_text="Who tested, and where the paper is.")

    def __init__(self, *args: Any, shop: Shop, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        field = self.fields["mask"]
        assert isinstance(field, forms.ModelChoiceField)
        field.queryset = masks(shop)

    def clean(self) -> dict[str, Any]:
        """Refuse days that cannot be."""
        cleaned = super().clean() or {}
        refuse_days(self, "tested_on", "until_on")
        return cleaned

    def fit(self) -> Fit:
        """Return the fit test that was typed."""
        return Fit(**self.cleaned_data)


class FaceForm(forms.ModelForm):  # type: ignore[type-arg]
    """Whether somebody is clean-shaven where a mask seals."""

    class Meta:
        model = Person
        fields = ["face"]
        labels = {"face": "Where a mask seals"}


class SignForm(forms.Form):
    """Who showed the person round, and in which language the sheet was read."""

    shown_by = forms.ModelChoiceField(Person.objects.none(), to_field_name="code", label="Shown by")
    language = forms.ChoiceField(choices=Shop.Language.choices, label="Read in")

    def __init__(self, *args: Any, person: Person, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        field = self.fields["shown_by"]
        assert isinstance(field, forms.ModelChoiceField)
        others = Person.objects.filter(shop=person.shop, is_active=True).exclude(pk=person.pk)
        field.queryset = others.exclude(role=Person.Role.VIEWER).order_by("name")
        self.fields["language"].initial = person.shop.language if person.shop else None

    @classmethod
    def of_page(cls, person: Person, language: str) -> Self:
        """Return the form at the foot of the sheet: it speaks, and keeps, the language of the page."""
        form = cls(person=person)
        form.fields["shown_by"].label = say("Shown by", language)
        form.fields["language"].widget = forms.HiddenInput()
        form.fields["language"].initial = language
        return form

    def read_in(self) -> str:
        """Return the language of a form that was refused, "" where that is what was wrong."""
        return str(self.cleaned_data.get("language", ""))
