"""Orders: what was placed with a supplier and what has come of it."""

from django.db import models
from django.db.models import Q

from .own_code import order_code
from .person import Person
from .product import Pack
from .shop import Shop
from .supplier import Supplier


class Order(models.Model):
    """One order with one supplier."""

    class State(models.TextChoices):
        DRAFT = "draft", "draft"
        PLACED = "placed", "placed"
        RECEIVED = "received", "received"
        CANCELLED = "cancelled", "cancelled"

    shop = models.ForeignKey(Shop, models.PROTECT, related_name="orders")
    code = models.CharField(max_length=8, unique=True, default=order_code)
    supplier = models.ForeignKey(Supplier, models.PROTECT, related_name="orders")
    state = models.CharField(max_length=9, choices=State, default=State.DRAFT)
    placed_on = models.DateField(null=True, blank=True)
    due_on = models.DateField(null=True, blank=True)
    placed_by = models.ForeignKey(Person, models.PROTECT, null=True, blank=True, related_name="+")

    class Meta:
        constraints = [
            models.CheckConstraint(
                condition=~Q(state="placed") | Q(placed_on__isnull=False), name="placed_order_has_its_day"
            )
        ]

    def __str__(self) -> str:
        return self.code


class OrderLine(models.Model):
    """So many packs; received, damaged and wrong ones are counted as they are scanned."""

    order = models.ForeignKey(Order, models.CASCADE, related_name="lines")
    pack = models.ForeignKey(Pack, models.PROTECT, related_name="order_lines")
    packs = models.PositiveIntegerField()
    price_minor = models.PositiveBigIntegerField(null=True, blank=True)
    received = models.PositiveIntegerField(default=0)
    damaged = models.PositiveIntegerField(default=0)
    wrong = models.PositiveIntegerField(default=0)
    closed_short = models.BooleanField(default=False, help_text="the rest will not come")

    class Meta:
        constraints = [
            models.UniqueConstraint("order", "pack", name="order_pack_once"),
            models.CheckConstraint(condition=Q(packs__gt=0), name="order_line_asks_for_something"),
        ]

    def __str__(self) -> str:
        return f"{self.packs} × {self.pack}"
