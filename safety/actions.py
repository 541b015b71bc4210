"""Writing data sheets: versions are added and confirmed, never changed and never deleted."""

from datetime import date

from django.db import transaction

from safety.models import DataSheet, SheetVersion


class AlreadyConfirmed(ValueError):
    """A version that somebody has stood for already."""


def add_version(sheet: DataSheet, version: SheetVersion, *, by: str, on: date, confirm: bool) -> SheetVersion:
    """Keep a version of a sheet; `by` typed it and, if asked to, stands for it.

    Raises ValidationError where the database's promises would break.
    """
    version.sheet = sheet
    version.typed_by, version.typed_on = by, on
    if confirm:
        version.confirmed_by, version.confirmed_on = by, on
    version.full_clean()
    with transaction.atomic():
        version.save()
    return version


def confirm(version: SheetVersion, *, by: str, on: date) -> SheetVersion:
    """Let a person stand for what was typed; return the version as it stands then.

    Raises AlreadyConfirmed, ValidationError.
    """
    with transaction.atomic():
        kept = SheetVersion.objects.select_for_update().get(pk=version.pk)
        if kept.confirmed:
            raise AlreadyConfirmed(f"{kept.confirmed_by} confirmed this version on {kept.confirmed_on}.")
        kept.confirmed_by, kept.confirmed_on = by, on
        kept.full_clean()
        kept.save(update_fields=["confirmed_by", "confirmed_on"])
    return kept
