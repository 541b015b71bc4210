"""Lots: what came out of one batch, and the dates printed on it."""

from django.db import models

from .own_code import lot_code
from .product import Product


class Lot(models.Model):
    """A batch of a product. Dates here are a copy of what the ledger's receive, correct and retest say."""

    product = models.ForeignKey(Product, models.PROTECT, related_name="lots")
    code = models.CharField(max_length=8, unique=True, default=lot_code)
    number = models.CharField(max_length=40, blank=True, help_text="empty: the lot was not given")
    expires_on = models.DateField(null=True, blank=True)
    best_before_on = models.DateField(null=True, blank=True)
    made_on = models.DateField(null=True, blank=True)
    retest_on = models.DateField(null=True, blank=True)
    held = models.CharField(max_length=120, blank=True, help_text="why it must not be used; empty: it may")
    recalled = models.BooleanField(default=False)

    class Meta:
        constraints = [
            models.UniqueConstraint(
                "product", "number", name="lot_number_once_a_product", condition=~models.Q(number="")
            )
        ]

    def __str__(self) -> str:
        return self.number or "lot not given"
