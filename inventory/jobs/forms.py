"""The forms of jobs and services: what is typed becomes base units, instants on the shop's clock, choices."""

import re
from datetime import datetime, timedelta
from typing import Any, cast

from django import forms
from django.utils import timezone

from inventory.jobs import queries
from inventory.jobs.actions import Said, Wanted
from inventory.jobs.rules.amounts import usual
from inventory.models import Job, Kind, Person, Service, ServiceStep, Shop, Step, Vehicle
from inventory.units import AmountError, parse_amount, show

EMPTY_ROWS = 2


class DayAndTime(forms.DateTimeField):
    """An instant on the shop's clock, in the browser's own picker."""

    widget = forms.DateTimeInput(attrs={"type": "datetime-local"}, format="%Y-%m-%dT%H:%M")

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(input_formats=["%Y-%m-%dT%H:%M", "%Y-%m-%d %H:%M"], **kwargs)


class BookForm(forms.Form):
    """A service for a car at an hour; the car is known, or new."""

    service = forms.ModelChoiceField(queryset=Service.objects.none(), label="Service", required=False)
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
    title = forms.CharField(
        max_length=120, required=False, label="Called", help_text="Left empty it has the service's name."
    )

    def __init__(self, *args: Any, shop: Shop, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.shop = shop
        _choose(self.fields["service"], queries.services(shop))
        _choose(self.fields["vehicle"], queries.vehicles(shop))

    def clean(self) -> dict[str, Any]:
        """A job has a car and a name."""
        given: dict[str, Any] = super().clean() or {}
        if not given.get("vehicle") and not given.get("name"):
            self.add_error("name", "Choose a car, or give the new one a name.")
        if not given.get("service") and not given.get("title"):
            self.add_error("title", "Choose a service, or say what the job is.")
        return given

    def car(self) -> Vehicle:
        """Return the chosen car, or the new one, saved."""
        given = self.cleaned_data
        if given["vehicle"]:
            return cast(Vehicle, given["vehicle"])
        return Vehicle.objects.create(
            shop=self.shop,
            name=given["name"],
            plate=given["plate"],
            size=given["size"],
            contact=given["contact"],
        )


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

    surfaces_text = forms.CharField(
        label="Surfaces",
        required=False,
        max_length=400,
        help_text="What is special about it: matte film, soft top.",
    )

    class Meta:
        model = Vehicle
        fields = ["name", "plate", "size", "contact"]
        labels = {"name": "Car", "size": "Its size", "contact": "Customer's contact"}

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.initial.setdefault("surfaces_text", ", ".join(map(str, self.instance.surfaces)))

    def clean(self) -> dict[str, Any]:
        """Keep the surfaces as a list."""
        given: dict[str, Any] = super().clean() or {}
        listed = str(given.get("surfaces_text") or "").split(",")
        self.instance.surfaces = [surface.strip() for surface in listed if surface.strip()]
        return given


class StepForm(forms.ModelForm):  # type: ignore[type-arg]
    """A step of a job: where, when, who."""

    starts_at = DayAndTime(label="Starts")
    ends_at = DayAndTime(label="Ends")

    class Meta:
        model = Step
        fields = ["name", "stage", "starts_at", "ends_at", "bay", "person"]
        labels = {"name": "Step", "stage": "Stage", "bay": "Bay", "person": "Who does it"}

    def __init__(self, *args: Any, shop: Shop, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        _choose(self.fields["bay"], queries.bays(shop))
        people = Person.objects.filter(shop=shop, is_active=True).exclude(role=Person.Role.VIEWER)
        _choose(self.fields["person"], people.order_by("name"))

    def clean(self) -> dict[str, Any]:
        """A step ends after it starts."""
        given: dict[str, Any] = super().clean() or {}
        starts, ends = given.get("starts_at"), given.get("ends_at")
        if isinstance(starts, datetime) and isinstance(ends, datetime) and ends < starts:
            self.add_error("ends_at", "It ends before it starts. Give the later hour here.")
        return given


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


class HoursField(forms.CharField):
    """A length of time typed as hours:minutes ("2:30", "24:00"), kept in minutes."""

    def prepare_value(self, value: Any) -> Any:
        """Show minutes as they are typed."""
        return f"{value // 60}:{value % 60:02}" if isinstance(value, int) else value

    def to_python(self, value: Any) -> Any:
        """Return minutes."""
        text = str(value or "").strip()
        if not (match := re.fullmatch(r"(\d{1,3}):([0-5]\d)", text, re.ASCII)):
            raise forms.ValidationError("Write it as hours and minutes, like 2:30 or 0:45.")
        return int(match[1]) * 60 + int(match[2])

    def has_changed(self, initial: Any, data: Any) -> bool:
        """Compare what was shown with what was typed."""
        return bool(self.prepare_value(initial) != data)


class ServiceStepForm(forms.ModelForm):  # type: ignore[type-arg]
    """A step of a service: when after the start, and how long."""

    starts_after = HoursField(
        label="Starts after the job's start", help_text="Hours and minutes: 0:00, 2:30, 24:00."
    )
    minutes = HoursField(label="Takes", help_text="Hours and minutes; a cure of a night is 12:00.")

    class Meta:
        model = ServiceStep
        fields = ["name", "stage", "starts_after", "minutes"]
        labels = {"name": "Step", "stage": "Stage"}


class NeedForm(forms.Form):
    """One thing that a step takes: a product or a kind, how much of it undiluted, and with how much water."""

    what = forms.ChoiceField(label="Takes", required=False)
    amount = forms.CharField(label="Amount", required=False, max_length=60)
    water = forms.IntegerField(label="Parts of water", required=False, min_value=0, max_value=10_000)

    def __init__(self, *args: Any, shop: Shop, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.shop = shop
        made = [(f"p{row.pk}", row.name) for row in queries.products(shop)]
        kinds = [(f"k{value}", f"any {label}") for value, label in Kind.choices]
        what = cast(forms.ChoiceField, self.fields["what"])
        what.choices = [("", "nothing"), ("Products", made), ("Any of a kind", kinds)]

    def clean(self) -> dict[str, Any]:
        """Read the amount in the dimension of what is taken; left empty it is the usual one of its kind."""
        given: dict[str, Any] = super().clean() or {}
        if what := given.get("what"):
            product = queries.products(self.shop).filter(pk=what[1:]).first() if what[0] == "p" else None
            kind = product.kind if product else what[1:]
            dimension = product.dimension if product else queries.taking(self.shop).of_kind(kind)
            given["wanted"] = self._wanted(product.pk if product else None, kind, dimension, given)
        elif given.get("amount"):
            self.add_error("what", "Say what this amount is of, or empty the amount.")
        return given

    def _wanted(self, product: int | None, kind: str, dimension: str, given: dict[str, Any]) -> Wanted | None:
        text, water = str(given.get("amount") or "").strip(), given.get("water") or 0
        if not text:
            if (amount := usual(kind, dimension)) is None:
                self.add_error("amount", "How much does it take? There is no usual amount for this.")
                return None
            return Wanted(product, "" if product else kind, amount, water)
        try:
            base = parse_amount(
                text, dimension=dimension, system=self.shop.system, decimal=self.shop.decimal_mark or None
            ).base
        except AmountError as error:
            self.add_error("amount", str(error))
            return None
        if not base:
            self.add_error("amount", "Nothing is no amount. Empty the row if the step does not take it.")
        return Wanted(product, "" if product else kind, base, water)


class NeedRows(forms.BaseFormSet):  # type: ignore[type-arg]
    """What a step takes, a row each; emptied rows fall away."""

    def wanted(self) -> list[Wanted]:
        """Return the rows that say something."""
        return [row for form in self.forms if (row := form.cleaned_data.get("wanted"))]


def need_rows(shop: Shop, needs: Any, data: Any = None) -> NeedRows:
    """Return the rows for needs of a step or of a service's step, with empty ones behind them."""
    taking = queries.taking(shop)
    made = forms.formset_factory(NeedForm, formset=NeedRows, extra=EMPTY_ROWS, max_num=40)
    initial = [
        {
            "what": f"p{row.product_id}" if row.product_id else f"k{row.kind}",
            "amount": taking.amount(row.amount, row),
            "water": row.parts_water or None,
        }
        for row in needs
    ]
    return cast(NeedRows, made(data, initial=initial, form_kwargs={"shop": shop}, prefix="needs"))


class CloseForm(forms.Form):
    """What became of each need that nobody spoke for: as planned, another amount, or not done."""

    def __init__(self, *args: Any, shop: Shop, unsaid: list[queries.Unsaid], **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.shop, self.unsaid = shop, unsaid
        for one in unsaid:
            plan = show(one.need.amount, one.dimension, shop.system)
            self.fields[f"how_{one.need.pk}"] = forms.ChoiceField(
                label=f"{one.named}, {one.step.name}",
                choices=[
                    ("planned", f"as planned: {plan}"),
                    ("not", "not done"),
                    ("amount", "another amount:"),
                ],
                widget=forms.RadioSelect,
                required=False,
            )
            self.fields[f"amount_{one.need.pk}"] = forms.CharField(
                label=f"Another amount of {one.named}", required=False, max_length=60
            )

    def rows(self) -> list[dict[str, forms.BoundField]]:
        """Return the two fields of each need."""
        return [
            {"how": self[f"how_{one.need.pk}"], "amount": self[f"amount_{one.need.pk}"]}
            for one in self.unsaid
        ]

    def clean(self) -> dict[str, Any]:
        """Read each amount in its product's dimension."""
        given: dict[str, Any] = super().clean() or {}
        self.said = [said for one in self.unsaid if (said := self._said(one, given))]
        return given

    def _said(self, one: queries.Unsaid, given: dict[str, Any]) -> Said | None:
        name = f"amount_{one.need.pk}"
        how = given.get(f"how_{one.need.pk}") or ("amount" if given.get(name) else "")
        if how == "not":
            return Said(one.need, None)
        if how == "planned":
            return Said(one.need, one.need.amount)
        if how != "amount":
            self.add_error(
                f"how_{one.need.pk}", "Say what became of it: as planned, another amount, or not done."
            )
            return None
        try:
            base = parse_amount(
                str(given.get(name) or ""), dimension=one.dimension, system=self.shop.system,
                decimal=self.shop.decimal_mark or None,
            ).base  # fmt: skip
        except AmountError as error:
            self.add_error(name, str(error))
            return None
        return Said(one.need, base, measured=True)


def next_morning() -> datetime:
    """Return tomorrow 08:30 on the shop's clock, where a booking starts."""
    local = timezone.localtime()
    return (local + timedelta(days=1)).replace(hour=8, minute=30, second=0, microsecond=0)


def _choose(field: forms.Field, rows: Any) -> None:
    assert isinstance(field, forms.ModelChoiceField)
    field.queryset = rows
