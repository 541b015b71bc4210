"""Suppliers: who sends it, how long that takes, and what they ask for at least."""

from django.db import models
from django.db.models import Q

from .shop import Shop


class Supplier(models.Model):
    """A firm that the shop orders from."""

    shop = models.ForeignKey(Shop, models.PROTECT, related_name="suppliers")
    name = models.CharField(max_length=80)
    email = models.EmailField(blank=True)
    phone = models.CharField(max_length=40, blank=True)
    lead_days = models.PositiveSmallIntegerField(default=7)
    minimum_order_minor = models.PositiveBigIntegerField(default=0)

    class Meta:
        constraints = [
            models.UniqueConstraint("shop", "name", name="supplier_name_once_a_shop"),
            models.CheckConstraint(condition=Q(lead_days__lte=365), name="supplier_lead_within_a_year"),
        ]

    def __str__(self) -> str:
        return self.name
