"""A data sheet, in versions: what a supplier says about a product, and who in the shop read it over.

A sheet is one supplier's document about one product. Each revision of it is a version of its own, kept for
good: records of use lean on what was known on the day. A version that nobody has confirmed shows nothing.
"""

from __future__ import annotations

import secrets
from datetime import date

from django.core.validators import FileExtensionValidator
from django.db import models
from django.db.models import Q
from django.db.models.functions import Lower
from django.urls import reverse


def stored_pdf(version: SheetVersion, filename: str) -> str:
    """Return a random name: what was uploaded never chooses where it is kept."""
    return f"sheets/{secrets.token_hex(16)}.pdf"


def none_listed() -> list[object]:
    """Return an empty list, a new one each time."""
    return []


class Regime(models.TextChoices):
    """The rules a sheet was written by."""

    EU = "EU", "EU or UK (CLP)"
    US = "US", "United States (HazCom)"
    CA = "CA", "Canada (HPR)"
    UN = "UN", "UN (GHS Rev 10)"


class Signal(models.TextChoices):
    """The signal word, kept beside the classes so that lists can order by it."""

    DANGER = "Danger", "Danger"
    WARNING = "Warning", "Warning"
    NONE = "", "no signal word"


class DataSheet(models.Model):
    """One supplier's data sheet of one product, whatever its revision."""

    supplier = models.CharField(max_length=120)
    title = models.CharField("title, as on the sheet", max_length=200)
    note = models.TextField(blank=True)
    made_at = models.DateTimeField(auto_now_add=True)

    class Meta:
        verbose_name = "data sheet"
        ordering = ["supplier", "title"]
        constraints = [
            models.UniqueConstraint(
                Lower("supplier"),
                Lower("title"),
                name="safety_sheet_supplier_title_once",
                violation_error_message="This supplier's sheet is here already: add a version to it.",
            ),
            models.CheckConstraint(
                condition=~Q(supplier="") & ~Q(title=""), name="safety_sheet_supplier_and_title_given"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.supplier}: {self.title}"

    def get_absolute_url(self) -> str:
        """Return the sheet's page."""
        return reverse("safety:sheet", args=[self.pk])


class SheetVersion(models.Model):
    """One revision of a sheet: its file, and what a person read out of it. Never deleted.

    hazards: ["Flam. Liq. 2 H225", …] as in the sheet's section 2, uncombined.
    statements: ["H225", "EUH066", "P210", …] as the sheet's label prints them.
    never_with: [{"with": "Bleach cleaner", "why": "chlorine gas"}, …].
    """

    sheet = models.ForeignKey(DataSheet, on_delete=models.PROTECT, related_name="versions")
    revision_on = models.DateField("revision date, as printed on the sheet")
    language = models.CharField(max_length=8, default="en")
    regime = models.CharField(max_length=2, choices=Regime.choices, default=Regime.EU)

    hazards = models.JSONField("hazard classes", default=none_listed, blank=True)
    statements = models.JSONField("statements on the label", default=none_listed, blank=True)
    signal_word = models.CharField(max_length=7, choices=Signal.choices, blank=True, default="")
    not_classified = models.BooleanField("the sheet says: not classified as hazardous", default=False)
    holds_fluoride = models.BooleanField("holds hydrofluoric acid or a fluoride that frees it", default=False)
    holds_isocyanate = models.BooleanField("holds isocyanates", default=False)

    wear_eyes = models.CharField("eyes", max_length=200, blank=True)
    wear_hands = models.CharField("hands", max_length=200, blank=True)
    wear_breath = models.CharField("breath", max_length=200, blank=True)
    wear_body = models.CharField("body", max_length=200, blank=True)
    ventilation = models.CharField(max_length=200, blank=True)

    aid_eyes = models.TextField("first aid: eyes", blank=True)
    aid_skin = models.TextField("first aid: skin", blank=True)
    aid_breath = models.TextField("first aid: breath", blank=True)
    aid_swallowed = models.TextField("first aid: swallowed", blank=True)

    fire = models.TextField("in a fire", blank=True)
    spill = models.TextField("after a spill", blank=True)
    never_with = models.JSONField("never together with", default=none_listed, blank=True)

    pdf = models.FileField(
        "the sheet itself (PDF)",
        upload_to=stored_pdf,
        blank=True,
        validators=[FileExtensionValidator(["pdf"])],
    )
    typed_on = models.DateField("typed in on")
    typed_by = models.CharField("typed in by", max_length=120, blank=True)
    confirmed_on = models.DateField("confirmed on", null=True, blank=True)
    confirmed_by = models.CharField("confirmed by", max_length=120, blank=True)

    class Meta:
        verbose_name = "version of a data sheet"
        verbose_name_plural = "versions of data sheets"
        ordering = ["sheet", "-revision_on", "-id"]
        constraints = [
            models.UniqueConstraint(
                fields=["sheet", "revision_on", "language", "regime"],
                condition=Q(confirmed_on__isnull=False),
                name="safety_version_confirmed_once",
                violation_error_message="A version of this date is confirmed already.",
            ),
            models.CheckConstraint(
                condition=Q(confirmed_on__isnull=True, confirmed_by="")
                | (Q(confirmed_on__isnull=False) & ~Q(confirmed_by="")),
                name="safety_version_confirmed_by_and_on_together",
                violation_error_message="Say both who confirmed the sheet and on which day.",
            ),
            models.CheckConstraint(
                condition=Q(regime__in=["EU", "US", "CA", "UN"]), name="safety_version_regime_known"
            ),
            models.CheckConstraint(
                condition=Q(signal_word__in=["Danger", "Warning", ""]), name="safety_version_word_known"
            ),
            models.CheckConstraint(
                condition=Q(not_classified=False) | Q(signal_word=""),
                name="safety_version_not_classified_has_no_word",
                violation_error_message="A sheet that is not classified has no signal word.",
            ),
            models.CheckConstraint(
                condition=Q(confirmed_on__isnull=True) | Q(confirmed_on__gte=models.F("revision_on")),
                name="safety_version_confirmed_after_revision",
                violation_error_message="The revision date lies after the day it was confirmed: check it.",
            ),
        ]
        indexes = [models.Index(fields=["sheet", "-revision_on"], name="safety_version_newest")]

    def __str__(self) -> str:
        return f"{self.sheet} ({self.revision_on:%Y-%m-%d})"

    @property
    def confirmed(self) -> bool:
        """Return whether a person has stood for what was read."""
        return self.confirmed_on is not None

    def on_shelf_since(self) -> date:
        """Return the day from which this version counted."""
        return self.confirmed_on or self.typed_on
