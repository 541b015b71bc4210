"""What a shop typed about what a product does to a surface; what is empty follows the product's kind."""

from typing import Any

from django.db import models
from django.db.models import F, Q

from .product import Product


def whole(unit: str) -> "models.PositiveIntegerField[Any, Any]":
    """Return a field of whole numbers that may be unknown."""
    return models.PositiveIntegerField(null=True, blank=True, help_text=unit)


class Profile(models.Model):
    """A product's edits to its kind's profile, and the reactivity groups that its owner confirmed.

    Lists are None where the kind's default holds, [] where the shop says "nothing".
    """

    product = models.OneToOneField(Product, models.CASCADE, related_name="profile")
    family = models.CharField(max_length=20, blank=True, help_text="what splits its kind, as the trade table")
    leaves = models.JSONField(null=True, blank=True)
    lifts = models.JSONField(null=True, blank=True)
    needs_absent = models.JSONField(null=True, blank=True, help_text='["wax", "silicone:ask"]')
    never = models.JSONField(null=True, blank=True, help_text="surfaces")
    asks = models.JSONField(null=True, blank=True, help_text="surfaces")
    touches = models.JSONField(null=True, blank=True, help_text="areas of the car")
    traits = models.JSONField(null=True, blank=True)
    dwell_min, flash_min = whole("minutes"), whole("minutes")
    recoat_from_min, recoat_to_min = whole("minutes"), whole("minutes")
    keep_dry_h, wash_hold_d, cure_h = whole("hours"), whole("days"), whole("hours")
    refinish_wait_d, film_wait_d = whole("days"), whole("days")
    topper_ok = models.BooleanField(null=True, blank=True, help_text="a topper inside its cure is named")
    heat_c = models.SmallIntegerField(null=True, blank=True, help_text="stands this many °C")
    air_from_c = models.SmallIntegerField(null=True, blank=True)
    air_to_c = models.SmallIntegerField(null=True, blank=True)
    humidity_from = models.PositiveSmallIntegerField(null=True, blank=True, help_text="%")
    humidity_to = models.PositiveSmallIntegerField(null=True, blank=True, help_text="%")
    source = models.CharField(max_length=120, blank=True, help_text="whose word this is")

    groups = models.JSONField(default=list, blank=True, help_text="reactivity groups and tags, as text")
    water_based = models.BooleanField(null=True, blank=True)
    groups_confirmed_on = models.DateField(null=True, blank=True)
    groups_confirmed_by = models.CharField(max_length=60, blank=True)

    class Meta:
        constraints = [
            models.CheckConstraint(
                condition=Q(recoat_from_min__isnull=True)
                | Q(recoat_to_min__isnull=True)
                | Q(recoat_from_min__lte=F("recoat_to_min")),
                name="recoat_window_in_order",
            ),
            models.CheckConstraint(
                condition=Q(air_from_c__isnull=True)
                | Q(air_to_c__isnull=True)
                | Q(air_from_c__lt=F("air_to_c")),
                name="air_window_in_order",
            ),
            models.CheckConstraint(
                condition=(Q(humidity_to__isnull=True) | Q(humidity_to__lte=100))
                & (
                    Q(humidity_from__isnull=True)
                    | Q(humidity_to__isnull=True)
                    | Q(humidity_from__lt=F("humidity_to"))
                ),
                name="humidity_window_in_order",
            ),
            models.CheckConstraint(
                condition=Q(groups_confirmed_on__isnull=True, groups_confirmed_by="")
                | (Q(groups_confirmed_on__isnull=False) & ~Q(groups_confirmed_by="")),
                name="groups_confirmed_by_and_on_together",
            ),
        ]

    def __str__(self) -> str:
        return f"profile of {self.product}"
