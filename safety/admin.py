"""Data sheets for the owner: read everything, change nothing that is history, delete nothing."""

from django.contrib import admin
from django.http import HttpRequest

from safety.models import DataSheet, SheetVersion


class Kept(admin.ModelAdmin):  # type: ignore[type-arg]
    """What is never deleted: information is kept ten years after the last use (REACH art 36)."""

    def has_delete_permission(self, request: HttpRequest, obj: object = None) -> bool:
        """Refuse."""
        return False


@admin.register(DataSheet)
class DataSheetAdmin(Kept):
    """Sheets by supplier and title."""

    list_display = ("title", "supplier", "made_at")
    search_fields = ("title", "supplier")


@admin.register(SheetVersion)
class SheetVersionAdmin(Kept):
    """Versions: added on the sheet's page, where file and fields are looked at; here only read."""

    list_display = ("sheet", "revision_on", "language", "regime", "confirmed_by", "confirmed_on")
    list_filter = ("regime", "language")
    list_select_related = ("sheet",)

    def has_add_permission(self, request: HttpRequest) -> bool:
        """Refuse."""
        return False

    def has_change_permission(self, request: HttpRequest, obj: object = None) -> bool:
        """Refuse."""
        return False
