"""Containers: the thing on the shelf that carries our code. Its state is a copy that the ledger keeps."""

from django.db import models
from django.db.models import Q

from .lot import Lot
from .place import Place
from .product import Pack, Product
from .shop import Shop


class Container(models.Model):
    """A bottle, drum, box, bag or set. Written only by the ledger, in the transaction of the entry."""

    class State(models.TextChoices):
        EXPECTED = "expected", "not here yet"
        SEALED = "sealed", "sealed"
        OPEN = "open", "open"
        EMPTY = "empty", "empty"
        GONE = "gone", "gone"

    shop = models.ForeignKey(Shop, models.PROTECT, related_name="containers")
    code = models.CharField(max_length=8, unique=True)
    noun = models.CharField(max_length=20, default="bottle")
    pack = models.ForeignKey(Pack, models.PROTECT, null=True, blank=True, related_name="containers")
    full = models.PositiveBigIntegerField(help_text="what it holds when full, in the base unit")
    tare_mg = models.PositiveBigIntegerField(null=True, blank=True, help_text="weighed empty, in mg")
    refillable = models.BooleanField(default=False)
    labelled_at = models.DateTimeField(null=True, blank=True, help_text="our label was last printed")
    label_says = models.CharField(max_length=64, blank=True, help_text="what it said: product, mix, use by")

    # The folded state: a copy of what the ledger says, proven by `verify`.
    state = models.CharField(max_length=8, choices=State, default=State.EXPECTED)
    product = models.ForeignKey(Product, models.PROTECT, null=True, blank=True, related_name="containers")
    parts_product = models.PositiveIntegerField(default=1)
    parts_water = models.PositiveIntegerField(default=0)
    lots = models.ManyToManyField(Lot, blank=True, related_name="containers")
    place = models.ForeignKey(Place, models.PROTECT, null=True, blank=True, related_name="containers")
    content = models.BigIntegerField(default=0)
    opened_at = models.DateTimeField(null=True, blank=True)
    mixed_at = models.DateTimeField(null=True, blank=True)
    received_at = models.DateTimeField(null=True, blank=True)
    estimated = models.BooleanField(default=False, help_text="opened_at was estimated, not known")
    held = models.CharField(max_length=120, blank=True)
    uses = models.PositiveIntegerField(default=0)
    minutes = models.PositiveIntegerField(default=0)
    retest_on = models.DateField(null=True, blank=True)
    rinsed = models.BooleanField(default=True, help_text="nothing of an earlier content is left in it")
    last_at = models.DateTimeField(null=True, blank=True)
    last_seq = models.PositiveBigIntegerField(default=0)

    # An indexed copy of stock.rules.use_by, recomputed in the transaction that changes a date or a life.
    use_by_on = models.DateField(null=True, blank=True, db_index=True)
    use_by_at = models.DateTimeField(null=True, blank=True)
    use_by_term = models.CharField(max_length=12, blank=True)
    use_by_firm = models.BooleanField(default=True)

    class Meta:
        constraints = [
            models.CheckConstraint(condition=Q(content__gte=0), name="content_never_negative"),
            models.CheckConstraint(condition=Q(parts_product__gt=0), name="mix_has_product"),
            models.CheckConstraint(condition=Q(full__gt=0), name="container_holds_something"),
        ]
        indexes = [
            models.Index(fields=["shop", "product", "state"], name="container_by_product"),
            models.Index(fields=["shop", "place", "state"], name="container_by_place"),
        ]

    def __str__(self) -> str:
        return self.code
