"""A data sheet, in versions: what a supplier says about a product, and who in the shop read it over.

A sheet is one supplier's document about one product. Each revision of it is a version of its own, kept for
good: records of use lean on what was known on the day. A version that nobody has confirmed shows nothing.
"""

from __future__ import annotations

import secrets
from datetime import date

from django.core.exceptions import ValidationError
from django.core.validators import FileExtensionValidator
from django.db import models
from django.db.models import Q
from django.db.models.functions import Lower
from django.urls import reverse

from safety.hazards.mixtures.fields import MixtureError
from safety.hazards.mixtures.reading import read_mixture


def stored_pdf(version: SheetVersion, filename: str) -> str:
    """Return a random name: what was uploaded never chooses where it is kept."""
    return f"sheets/{secrets.token_hex(16)}.pdf"


def none_listed() -> list[object]:
    """Return an empty list, a new one each time."""
    return []


def readable(composition: list[dict[str, object]]) -> None:
    """Raise ValidationError unless a composition can be classified: percentages, classes, limits."""
    try:
        read_mixture({"form": Form.LIQUID.value, "ingredients": composition})
    except MixtureError as odd:
        raise ValidationError(str(odd)) from odd


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


class Form(models.TextChoices):
    """What a product is like where it leaves its bottle; which values of breathing count hangs on it."""

    LIQUID = "liquid", "a liquid"
    SPRAY = "spray", "a liquid that is sprayed or foamed"
    SOLID = "solid", "a solid or a paste"
    AEROSOL = "aerosol", "an aerosol can"
    GAS = "gas", "a gas"


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
    composition: the sheet's section 3, [{"name", "cas", "percent": 12 or [5, 15], "hazards": […], …}, …],
    each as an ingredient of a mixture that `classify` reads; [] where nobody typed it in.
    mixes: [{"parts": [1, 10], "ph": 10.9, "flash_point_c": null}, …], what was measured on mixes with water.
    form, ph, temperatures, viscosity: its section 9, of the product as it is sold; null is not known.
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

    composition = models.JSONField(default=none_listed, blank=True, validators=[readable])
    form = models.CharField(max_length=7, choices=Form.choices, default=Form.LIQUID)
    ph = models.FloatField("pH", null=True, blank=True)
    flash_point_c = models.FloatField("flash point, °C", null=True, blank=True)
    boiling_point_c = models.FloatField("boiling starts at, °C", null=True, blank=True)
    viscosity_mm2_s_40c = models.FloatField("viscosity at 40 °C, mm²/s", null=True, blank=True)

    mixes = models.JSONField("measured on its mixes", default=none_listed, blank=True)

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
                condition=Q(form__in=["liquid", "spray", "solid", "aerosol", "gas"]),
                name="safety_version_form_known",
            ),
            models.CheckConstraint(
                condition=Q(ph__isnull=True) | Q(ph__gte=-2, ph__lte=16),
                name="safety_version_ph_possible",
                violation_error_message="A pH lies between -2 and 16: check it.",
            ),
            models.CheckConstraint(
                condition=(Q(flash_point_c__isnull=True) | Q(flash_point_c__gte=-273))
                & (Q(boiling_point_c__isnull=True) | Q(boiling_point_c__gte=-273)),
                name="safety_version_temperatures_possible",
                violation_error_message="Nothing is colder than -273 °C: check flash and boiling point.",
            ),
            models.CheckConstraint(
                condition=Q(viscosity_mm2_s_40c__isnull=True) | Q(viscosity_mm2_s_40c__gt=0),
                name="safety_version_viscosity_positive",
                violation_error_message="A viscosity is more than 0 mm²/s: check it.",
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
