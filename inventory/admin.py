"""Every table, for the owner; what the ledger writes is read-only here, and the database refuses it too."""

from typing import TYPE_CHECKING, Any

from django.contrib import admin
from django.db.models import Model
from django.http import HttpRequest

from inventory import models

if TYPE_CHECKING:
    AnyAdmin = admin.ModelAdmin[Any]
else:
    AnyAdmin = admin.ModelAdmin

admin.site.site_header = "Capdate: every table"
admin.site.site_title = "Capdate"


class ReadOnly(AnyAdmin):
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

    def has_view_permission(self, request: HttpRequest, obj: Model | None = None) -> bool:
        """Owners look at everything."""
        return bool(request.user.is_staff)


class OfOwners(AnyAdmin):
    """A table that owners edit; rows that entries lean on cannot be deleted."""

    def has_module_permission(self, request: HttpRequest) -> bool:
        """Owners see the table."""
        return bool(request.user.is_staff)

    def has_add_permission(self, request: HttpRequest, *args: Any) -> bool:
        """Owners add."""
        return bool(request.user.is_staff)

    def has_change_permission(self, request: HttpRequest, obj: Model | None = None) -> bool:
        """Owners change."""
        return bool(request.user.is_staff)

    def has_view_permission(self, request: HttpRequest, obj: Model | None = None) -> bool:
        """Owners look."""
        return bool(request.user.is_staff)


WRITTEN_BY_THE_PROGRAM = (
    models.Movement, models.Head, models.Container, models.Lot, models.Request, models.Override,
    models.CheckSignature, models.Heard, models.PosterIssue,
)  # fmt: skip
EDITED_BY_OWNERS = (
    models.Supplier, models.Place, models.Admission, models.Vehicle, models.Service, models.ServiceStep,
    models.ServiceNeed, models.Order, models.OrderLine,
)  # fmt: skip
admin.site.register(WRITTEN_BY_THE_PROGRAM, ReadOnly)
admin.site.register(EDITED_BY_OWNERS, OfOwners)
