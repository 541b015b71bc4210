"""Booking a car, moving it, and what is known of a job, its car and its steps."""

from collections.abc import Iterator
from datetime import datetime
from typing import Any, cast

from django import forms
from django.forms.boundfield import BoundWidget

from inventory.jobs import queries
from inventory.jobs.queries.panels import panels_to_cut
from inventory.models import Job, Panel, Person, Service, Shop, Step, Vehicle

from .fields import DayAndTime, KeyField, choose
from .surfaces import SurfacesField, grouped
from .work import HELP, LABELS, WORK, WorkForm


class BookForm(forms.Form):
    """A service for a car at an hour; the car is known, or new. A key makes it count once."""

    key = KeyField()
    service = forms.ModelChoiceField(
        queryset=Service.objects.none(),
        label="Service",
        required=False,
        empty_label="none: name the job below",
    )
    starts_at = DayAndTime(label="Starts")
    vehicle = forms.ModelChoiceField(
        queryset=Vehicle.objects.none(), label="Car", required=False, empty_label="a new car"
    )
    name = forms.CharField(
        max_length=80, required=False, label="New car", help_text="As you call it: grey estate."
    )
    plate = forms.CharField(max_length=20, required=False, label="Plate")
    size = forms.ChoiceField(choices=Vehicle.Size.choices, initial=Vehicle.Size.MID, label="Its size")
    contact = forms.CharField(max_length=120, required=False, label="Customer's contact")
    surfaces = SurfacesField("What is special about the new car")
    title = forms.CharField(
        max_length=120, required=False, label="Called", help_text="Left empty it has the service's name."
    )

    def __init__(self, *args: Any, shop: Shop, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.shop = shop
        choose(self.fields["service"], queries.services(shop))
        choose(self.fields["vehicle"], queries.vehicles(shop))

    def clean(self) -> dict[str, Any]:
        """A job has a car and a name."""
        given: dict[str, Any] = super().clean() or {}
        if not given.get("vehicle") and not given.get("name"):
            self.add_error("name", "Choose a car, or give the new one a name.")
        elif given.get("vehicle") and given.get("surfaces"):
            says = (
                "This car is known. Untick these; what is special about it is said where its job is edited."
            )
            self.add_error("surfaces", says)
        if not given.get("service") and not given.get("title"):
            self.add_error("title", "Choose a service, or say what the job is.")
        return given

    def car(self) -> Vehicle:
        """Return the chosen car, or the new one, which is not saved yet."""
        given = self.cleaned_data
        if given["vehicle"]:
            return cast(Vehicle, given["vehicle"])
        return Vehicle(
            shop=self.shop,
            name=given["name"],
            plate=given["plate"],
            size=given["size"],
            contact=given["contact"],
            surfaces=given["surfaces"],
        )

    def plain_fields(self) -> list[forms.BoundField]:
        """Return what stands open."""
        return [field for field in self.visible_fields() if field.name != "surfaces"]

    def surface_groups(self) -> Iterator[tuple[str, list[BoundWidget]]]:
        """Return the boxes of what is special about the car, in groups."""
        return grouped(self["surfaces"])


class MoveForm(forms.Form):
    """When the job starts instead; its steps move with it."""

    starts_at = DayAndTime(label="Starts instead")


class JobForm(forms.ModelForm):  # type: ignore[type-arg]
    """What a job is called, and what to know about it."""

    class Meta:
        model = Job
        fields = ["title", "notes"]
        labels = {"title": "Called", "notes": "Notes"}
        widgets = {"notes": forms.Textarea(attrs={"rows": 3})}


class VehicleForm(forms.ModelForm):  # type: ignore[type-arg]
    """The car itself; what is changed here holds for all its jobs."""

    surfaces = SurfacesField()

    class Meta:
        model = Vehicle
        fields = ["name", "plate", "size", "contact", "surfaces"]
        labels = {"name": "Car", "size": "Its size", "contact": "Customer's contact"}

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        surfaces = self.fields["surfaces"]
        assert isinstance(surfaces, SurfacesField)
        surfaces.offer(self.instance.surfaces)

    def plain_fields(self) -> list[forms.BoundField]:
        """Return what stands open."""
        return [field for field in self.visible_fields() if field.name != "surfaces"]

    def surface_groups(self) -> Iterator[tuple[str, list[BoundWidget]]]:
        """Return the boxes of what is special about the car, in groups."""
        return grouped(self["surfaces"])


class StepForm(WorkForm):
    """A step of a job: where, when, who. A new one has a key, so that it is added once."""

    key = KeyField()
    starts_at = DayAndTime(label="Starts")
    ends_at = DayAndTime(label="Ends")
    panels = forms.ModelMultipleChoiceField(
        queryset=Panel.objects.none(),
        label="Cuts only these panels",
        required=False,
        widget=forms.CheckboxSelectMultiple,
        help_text="Nothing ticked: every painted panel of the car.",
    )

    class Meta:
        model = Step
        fields = ["name", "stage", "starts_at", "ends_at", "bay", "person", *WORK, "panels"]
        labels = {"name": "Step", "stage": "Stage", "bay": "Bay", "person": "Who does it", **LABELS}
        help_texts = HELP

    def __init__(self, *args: Any, shop: Shop, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        if self.instance.pk:
            del self.fields["key"]
        choose(self.fields["bay"], queries.bays(shop))
        people = Person.objects.filter(shop=shop, is_active=True).exclude(role=Person.Role.VIEWER)
        choose(self.fields["person"], people.order_by("name"))
        to_cut = panels_to_cut(self.instance)
        if to_cut:
            choose(self.fields["panels"], to_cut)
        else:
            del self.fields["panels"]

    def chosen_panels(self) -> list[Panel]:
        """Return the panels that the cut is limited to; none of them is all."""
        return list(self.cleaned_data.get("panels", ()))

    def clean(self) -> dict[str, Any]:
        """A step ends after it starts, and only a cut has panels."""
        given: dict[str, Any] = super().clean() or {}
        starts, ends = given.get("starts_at"), given.get("ends_at")
        if isinstance(starts, datetime) and isinstance(ends, datetime) and ends < starts:
            self.add_error("ends_at", "It ends before it starts. Give the later hour here.")
        if given.get("panels") and not given.get("cut"):
            self.add_error("panels", "This step cuts nothing. Say what it takes off, or untick the panels.")
        return given
