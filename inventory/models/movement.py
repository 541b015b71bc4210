"""The ledger's line and its head. `stock.ledger` is the only writer; the database refuses every change."""

from django.db import models
from django.db.models import Q

from .container import Container
from .job import Job, Step
from .lot import Lot
from .person import Person
from .place import Place
from .request import Request
from .shop import Shop


class Movement(models.Model):
    """One act, one line, for ever; on screens it is called an entry."""

    class Kind(models.TextChoices):
        RECEIVE = "receive", "received"
        OPEN = "open", "opened"
        USE = "use", "used"
        FILL = "fill", "filled"
        RINSE = "rinse", "rinsed"
        MOVE = "move", "moved"
        COUNT = "count", "counted"
        DISCARD = "discard", "discarded"
        RETURN = "return", "returned to supplier"
        QUARANTINE = "quarantine", "held"
        RELEASE = "release", "released"
        RETEST = "retest", "retested"
        CORRECT = "correct", "corrected"
        REVERSE = "reverse", "taken back"

    shop = models.ForeignKey(Shop, models.PROTECT, related_name="movements")
    seq = models.PositiveBigIntegerField()
    kind = models.CharField(max_length=10, choices=Kind)
    happened_at = models.DateTimeField()
    recorded_at = models.DateTimeField()
    person = models.ForeignKey(Person, models.PROTECT, null=True, blank=True, related_name="+")
    source = models.ForeignKey(Container, models.PROTECT, null=True, blank=True, related_name="given")
    target = models.ForeignKey(Container, models.PROTECT, null=True, blank=True, related_name="taken")
    lot = models.ForeignKey(Lot, models.PROTECT, null=True, blank=True, related_name="movements")
    place = models.ForeignKey(Place, models.PROTECT, null=True, blank=True, related_name="+")
    job = models.ForeignKey(Job, models.PROTECT, null=True, blank=True, related_name="movements")
    step = models.ForeignKey(Step, models.PROTECT, null=True, blank=True, related_name="movements")
    product = models.ForeignKey("inventory.Product", models.PROTECT, null=True, blank=True, related_name="+")
    amount = models.BigIntegerField(null=True, blank=True, help_text="in the source's base unit")
    concentrate = models.BigIntegerField(
        null=True, blank=True, help_text="what demand counts: of the product itself, at use"
    )
    reverses = models.OneToOneField("self", models.PROTECT, null=True, blank=True, related_name="reversed_by")
    facts = models.JSONField(default=dict, help_text="what else the kind says: codes, integers, ISO dates")
    request = models.ForeignKey(Request, models.PROTECT, null=True, blank=True, related_name="movements")
    format = models.PositiveSmallIntegerField(default=1)
    previous_hash = models.CharField(max_length=64)
    hash = models.CharField(max_length=64)

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["shop", "seq"], name="movement_seq_once_a_shop"),
            models.CheckConstraint(
                condition=Q(amount__isnull=True) | Q(amount__gte=0), name="amount_not_negative"
            ),
            models.CheckConstraint(condition=Q(seq__gt=0), name="seq_from_one"),
        ]
        indexes = [
            models.Index(fields=["shop", "product", "happened_at"], name="movement_by_product"),
        ]

    def __str__(self) -> str:
        return f"{self.seq} {self.kind}"


class Head(models.Model):
    """The chain's head: the one row that every writer locks first."""

    shop = models.OneToOneField(Shop, models.PROTECT, related_name="head")
    seq = models.PositiveBigIntegerField(default=0)
    hash = models.CharField(max_length=64, default="0" * 64)

    def __str__(self) -> str:
        return f"{self.shop} at {self.seq}"
