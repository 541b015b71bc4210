"""Writing data sheets: versions are added and confirmed, never changed and never deleted.

What nobody typed of a version, its section 3, may be added once; who did is noted on the sheet.
"""

from datetime import date
from typing import Any

from django.db import transaction

from safety.models import DataSheet, SheetVersion


class AlreadyConfirmed(ValueError):
    """A version that somebody has stood for already."""


class NothingRead(ValueError):
    """A version of which nobody typed what the product does to people: nobody can stand for that."""


class TypedAlready(ValueError):
    """A version whose section 3 is there."""


def add_composition(version: SheetVersion, composition: list[dict[str, Any]], *, by: str, on: date) -> None:
    """Add section 3 to a version that has none; raises TypedAlready, ValidationError."""
    with transaction.atomic():
        kept = SheetVersion.objects.select_for_update().select_related("sheet").get(pk=version.pk)
        if kept.composition:
            raise TypedAlready("Section 3 of this version is typed in. A change of it is a newer version.")
        kept.composition = composition
        kept.full_clean()
        kept.save(update_fields=["composition"])
        told = f"Section 3 of the version of {kept.revision_on} was typed in by {by} on {on}."
        kept.sheet.note = f"{kept.sheet.note}\n{told}".strip()
        kept.sheet.save(update_fields=["note"])


def add_version(sheet: DataSheet, version: SheetVersion, *, by: str, on: date, confirm: bool) -> SheetVersion:
    """Keep a version of a sheet; `by` typed it and, if asked to, stands for it.

    Raises NothingRead, ValidationError where the database's promises would break.
    """
    version.sheet = sheet
    version.typed_by, version.typed_on = by, on
    if confirm:
        must_be_read(version)
        version.confirmed_by, version.confirmed_on = by, on
    version.full_clean()
    with transaction.atomic():
        version.save()
    return version


def confirm(version: SheetVersion, *, by: str, on: date) -> SheetVersion:
    """Let a person stand for what was typed; return the version as it stands then.

    Raises AlreadyConfirmed, NothingRead, ValidationError.
    """
    with transaction.atomic():
        kept = SheetVersion.objects.select_for_update().get(pk=version.pk)
        if kept.confirmed:
            raise AlreadyConfirmed(f"{kept.confirmed_by} confirmed this version on {kept.confirmed_on}.")
        must_be_read(kept)
        kept.confirmed_by, kept.confirmed_on = by, on
        kept.full_clean()
        kept.save(update_fields=["confirmed_by", "confirmed_on"])
    return kept


def must_be_read(version: SheetVersion) -> None:
    """Raise NothingRead where section 2 was left empty and nobody said that it classifies nothing.

    A file alone ends no stop: an acid with an empty sheet would read as harmless.
    """
    if not (version.hazards or version.statements or version.not_classified):
        raise NothingRead(
            "Nobody can stand for an empty sheet: a version needs the classes or statements of its "
            "section 2, or the tick at “the sheet says: not classified as hazardous”."
        )
