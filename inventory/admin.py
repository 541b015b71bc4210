"""Every table, for the owner, and of the owner's own shop alone; what is counted or signed is read-only here.

The database refuses what the ledger guards, whoever asks. A superuser keeps the installation: every shop.
"""

from typing import TYPE_CHECKING, Any

from django.contrib import admin, messages
from django.contrib.admin.forms import AdminAuthenticationForm
from django.core.exceptions import PermissionDenied
from django.db import transaction
from django.db.models import ForeignKey, Model, QuerySet
from django.forms import ModelChoiceField
from django.http import HttpRequest
from django.utils import timezone

from inventory import models
from inventory.access import person_of
from inventory.people.forms import SignInForm
from inventory.stock import rooms

if TYPE_CHECKING:
    AnyAdmin = admin.ModelAdmin[Any]
else:
    AnyAdmin = admin.ModelAdmin


class OwnerSignIn(SignInForm, AdminAuthenticationForm):
    """The admin's own door: as slow to try as the other one, and for owners alone."""


admin.site.login_form = OwnerSignIn
admin.site.site_header = "Capdate: every table"
admin.site.site_title = "Capdate"

# How a row says whose it is. A table that is not listed here is shown to nobody: it raises KeyError.
SHOP_AT: dict[type[Model], str] = {
    models.Shop: "pk",
    models.Admission: "place__shop",
    models.CheckSignature: "job__shop",
    models.Container: "shop",
    models.Head: "shop",
    models.Heard: "station__shop",
    models.Job: "shop",
    models.Lot: "product__shop",
    models.Movement: "shop",
    models.Order: "shop",
    models.OrderLine: "order__shop",
    models.Override: "job__shop",
    models.Pack: "product__shop",
    models.Person: "shop",
    models.Place: "shop",
    models.PosterIssue: "place__shop",
    models.Product: "shop",
    models.Request: "shop",
    models.Service: "shop",
    models.ServiceNeed: "step__service__shop",
    models.ServiceStep: "service__shop",
    models.Station: "shop",
    models.Step: "job__shop",
    models.Supplier: "shop",
    models.Vehicle: "shop",
    models.AirLimit: "shop",
    models.AirMeasurement: "place__shop",
    models.AirSample: "measurement__place__shop",
    models.Arrival: "job__shop",
    models.Equipment: "product__shop",
    models.FirstDay: "person__shop",
    models.FitTest: "person__shop",
    models.GloveMinutes: "glove__shop",
    models.IgnitionSource: "place__shop",
    models.LocalExhaust: "place__shop",
    models.MedicalEvaluation: "person__shop",
    models.Panel: "vehicle__shop",
    models.PlaceCheck: "place__shop",
    models.Profile: "product__shop",
    models.Reading: "job__shop",
    models.RuleGrade: "shop",
    models.Shown: "job__shop",
    models.Training: "person__shop",
    models.WeatherReading: "place__shop",
}


def _seen_by(request: HttpRequest, rows: "QuerySet[Any]") -> "QuerySet[Any]":
    """Return the rows of this person's shop; every shop's for a superuser, none without a shop."""
    person = person_of(request)
    if person.is_superuser:
        return rows
    return rows.filter(**{SHOP_AT[rows.model]: person.shop_id}) if person.shop_id else rows.none()


class OfOneShop(AnyAdmin):
    """A table of which an owner sees the rows of their own shop, and may name no other shop's."""

    def has_module_permission(self, request: HttpRequest) -> bool:
        """Owners see the table."""
        return bool(request.user.is_staff)

    def has_view_permission(self, request: HttpRequest, obj: Model | None = None) -> bool:
        """Owners look."""
        return bool(request.user.is_staff)

    def get_queryset(self, request: HttpRequest) -> "QuerySet[Any]":
        """Return the rows of the person's shop."""
        return _seen_by(request, super().get_queryset(request))

    def formfield_for_foreignkey(
        self, db_field: "ForeignKey[Any, Any]", request: HttpRequest, **kwargs: Any
    ) -> "ModelChoiceField[Any] | None":
        """Offer only what belongs to the person's shop."""
        kwargs["queryset"] = _seen_by(request, db_field.related_model._default_manager.all())
        return super().formfield_for_foreignkey(db_field, request, **kwargs)

    def save_model(self, request: HttpRequest, obj: Model, form: Any, change: bool) -> None:
        """Save a row, unless something it names belongs to another shop, whatever the form let through."""
        for field in obj._meta.concrete_fields:
            key = getattr(obj, field.attname)
            if not isinstance(field, ForeignKey) or key is None:
                continue
            if not _seen_by(request, field.related_model._default_manager.filter(pk=key)).exists():
                raise PermissionDenied("That belongs to another shop. Sign in there to change it.")
        super().save_model(request, obj, form, change)


class ReadOnly(OfOneShop):
    """A table that is looked at and never written."""

    def has_add_permission(self, request: HttpRequest, *args: Any) -> bool:
        """Nothing is added here."""
        return False

    def has_change_permission(self, request: HttpRequest, obj: Model | None = None) -> bool:
        """Nothing is changed here."""
        return False

    def has_delete_permission(self, request: HttpRequest, obj: Model | None = None) -> bool:
        """Nothing is deleted here."""
        return False


class OfOwners(OfOneShop):
    """A table that owners edit; rows that entries lean on cannot be deleted."""

    def has_add_permission(self, request: HttpRequest, *args: Any) -> bool:
        """Owners add."""
        return bool(request.user.is_staff)

    def has_change_permission(self, request: HttpRequest, obj: Model | None = None) -> bool:
        """Owners change."""
        return bool(request.user.is_staff)


class OfPlaces(OfOwners):
    """Places: what was measured in one ends once it is another room."""

    @transaction.atomic
    def save_model(self, request: HttpRequest, obj: Model, form: Any, change: bool) -> None:
        """Save a place, and end what was measured there where its air changed."""
        assert isinstance(obj, models.Place)
        other = rooms.changed(obj)
        super().save_model(request, obj, form, change)
        if other and (ended := rooms.end_measurements(obj, on=timezone.localdate())):
            self.message_user(request, rooms.after(ended), messages.WARNING)


# Orders are among them: they are placed on their page, and what came is counted as it is scanned.
WRITTEN_BY_THE_PROGRAM = (
    models.Movement, models.Head, models.Container, models.Lot, models.Request, models.Override,
    models.CheckSignature, models.Heard, models.PosterIssue, models.Order, models.OrderLine,
    models.FirstDay, models.FitTest, models.MedicalEvaluation, models.Training, models.PlaceCheck,
    models.RuleGrade, models.Shown, models.Reading, models.WeatherReading, models.Arrival,
    models.LocalExhaust, models.AirMeasurement, models.AirSample,
)  # fmt: skip
EDITED_BY_OWNERS = (
    models.Supplier, models.Admission, models.Vehicle, models.Service, models.ServiceStep,
    models.ServiceNeed, models.Equipment, models.GloveMinutes, models.IgnitionSource, models.Panel,
    models.Profile, models.AirLimit,
)  # fmt: skip
admin.site.register(WRITTEN_BY_THE_PROGRAM, ReadOnly)
admin.site.register(EDITED_BY_OWNERS, OfOwners)
admin.site.register(models.Place, OfPlaces)
