"""A service and its steps, as an owner writes them."""

from typing import Any

from django import forms

from inventory.models import Service, ServiceStep, Shop

from .fields import HoursField, KeyField
from .work import HELP, LABELS, WORK, WorkForm


class ServiceForm(forms.ModelForm):  # type: ignore[type-arg]
    """The name under which a service is sold."""

    class Meta:
        model = Service
        fields = ["name"]
        labels = {"name": "Sold as"}

    def __init__(self, *args: Any, shop: Shop, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.instance.shop = shop

    def clean_name(self) -> str:
        """Refuse a name that another service has."""
        name = str(self.cleaned_data["name"]).strip()
        if Service.objects.filter(shop=self.instance.shop, name=name).exclude(pk=self.instance.pk).exists():
            raise forms.ValidationError(f"“{name}” is there already. Give this one another name.")
        return name


class ServiceStepForm(WorkForm):
    """A step of a service: when after the start, and how long. A new one has a key: it is added once."""

    key = KeyField()
    starts_after = HoursField(
        label="Starts after the job's start", help_text="Hours and minutes: 0:00, 2:30, 24:00."
    )
    minutes = HoursField(label="Takes", help_text="Hours and minutes; a cure of a night is 12:00.")

    class Meta:
        model = ServiceStep
        fields = ["name", "stage", "starts_after", "minutes", *WORK]
        labels = {"name": "Step", "stage": "Stage", **LABELS}
        help_texts = HELP

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        if self.instance.pk:
            del self.fields["key"]
