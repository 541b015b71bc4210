"""Jobs: a vehicle, its steps with their own bay, hours and people, and what they take."""

from django.db import models
from django.db.models import F, Q

from .own_code import job_code, step_code, vehicle_code
from .person import Person
from .place import Place
from .product import Kind, Product
from .service import Service, Stage, Work
from .shop import Shop


class Vehicle(models.Model):
    """A car as the shop calls it; an optional contact belongs to it."""

    class Size(models.TextChoices):
        SMALL = "small", "small"
        MID = "mid", "mid-size"
        LARGE = "large", "large"
        VAN = "van", "van"

    shop = models.ForeignKey(Shop, models.PROTECT, related_name="vehicles")
    code = models.CharField(max_length=8, unique=True, default=vehicle_code)
    name = models.CharField(max_length=80, help_text="grey estate")
    plate = models.CharField(max_length=20, blank=True)
    size = models.CharField(max_length=5, choices=Size, default=Size.MID)
    surfaces = models.JSONField(default=list, blank=True)
    contact = models.CharField(max_length=120, blank=True)

    def __str__(self) -> str:
        return self.name


class Job(models.Model):
    """A service on a vehicle. What it reserves is computed, never stored."""

    class State(models.TextChoices):
        OPEN = "open", "booked"
        CLOSED = "closed", "closed"
        CANCELLED = "cancelled", "cancelled"

    shop = models.ForeignKey(Shop, models.PROTECT, related_name="jobs")
    code = models.CharField(max_length=8, unique=True, default=job_code)
    vehicle = models.ForeignKey(Vehicle, models.PROTECT, related_name="jobs")
    service = models.ForeignKey(Service, models.PROTECT, null=True, blank=True, related_name="jobs")
    title = models.CharField(max_length=120)
    state = models.CharField(max_length=9, choices=State, default=State.OPEN)
    starts_at = models.DateTimeField()
    ends_at = models.DateTimeField()
    booked_at = models.DateTimeField()
    closed_at = models.DateTimeField(null=True, blank=True)
    notes = models.TextField(blank=True)

    class Meta:
        constraints = [
            models.CheckConstraint(condition=Q(ends_at__gte=F("starts_at")), name="job_ends_after_start")
        ]
        indexes = [models.Index(fields=["shop", "state", "starts_at"], name="job_by_start")]

    def __str__(self) -> str:
        return f"{self.vehicle} · {self.title}"


class Step(Work):
    """One step of a job, with its own bay, start, end and technician."""

    job = models.ForeignKey(Job, models.CASCADE, related_name="steps")
    code = models.CharField(max_length=8, unique=True, default=step_code)
    position = models.PositiveSmallIntegerField()
    stage = models.CharField(max_length=14, choices=Stage)
    name = models.CharField(max_length=80)
    bay = models.ForeignKey(Place, models.PROTECT, null=True, blank=True, related_name="steps")
    person = models.ForeignKey(Person, models.PROTECT, null=True, blank=True, related_name="steps")
    starts_at = models.DateTimeField()
    ends_at = models.DateTimeField()
    signed_at = models.DateTimeField(null=True, blank=True)
    signed_by = models.ForeignKey(Person, models.PROTECT, null=True, blank=True, related_name="+")
    panels = models.ManyToManyField(
        "inventory.Panel", blank=True, related_name="+", help_text="cut; empty: all"
    )

    class Meta:
        ordering = ["starts_at", "position"]
        constraints = [
            *Work.Meta.constraints,
            models.UniqueConstraint("job", "position", name="step_position_once"),
            models.CheckConstraint(condition=Q(ends_at__gte=F("starts_at")), name="step_ends_after_start"),
        ]

    def __str__(self) -> str:
        return self.name


class StepNeed(models.Model):
    """What a step is planned to take: concentrate, in the product's base unit."""

    class Outcome(models.TextChoices):
        OPEN = "", "not said yet"
        DONE = "done", "recorded"
        NOT_DONE = "not_done", "not done"

    step = models.ForeignKey(Step, models.CASCADE, related_name="needs")
    product = models.ForeignKey(Product, models.PROTECT, null=True, blank=True, related_name="+")
    kind = models.CharField(max_length=12, choices=Kind, blank=True)
    amount = models.PositiveBigIntegerField()
    parts_product = models.PositiveIntegerField(default=1)
    parts_water = models.PositiveIntegerField(default=0)
    outcome = models.CharField(max_length=8, choices=Outcome, default=Outcome.OPEN, blank=True)

    class Meta:
        constraints = [
            models.CheckConstraint(
                condition=Q(product__isnull=False, kind="") | Q(product__isnull=True) & ~Q(kind=""),
                name="step_need_product_or_kind",
            )
        ]

    def __str__(self) -> str:
        return f"{self.amount} of {self.product or self.kind}"


class Override(models.Model):
    """An owner's word against a stop that protects the paint, or an answer to an ask; kept for ever."""

    job = models.ForeignKey(Job, models.PROTECT, related_name="overrides")
    code = models.CharField(max_length=60, help_text="the finding's code")
    about = models.CharField(max_length=120, help_text="what it was about: codes, as in the finding")
    grade = models.CharField(max_length=4)
    says = models.TextField(help_text="the sentence that was shown")
    reason = models.TextField()
    by = models.ForeignKey(Person, models.PROTECT, related_name="+")
    given_at = models.DateTimeField()

    def __str__(self) -> str:
        return f"{self.code}: {self.reason}"


class CheckSignature(models.Model):
    """Who read a check, when, and the verdict they read."""

    job = models.ForeignKey(Job, models.PROTECT, related_name="signatures")
    stage = models.CharField(max_length=14, choices=Stage, blank=True)
    by = models.ForeignKey(Person, models.PROTECT, related_name="+")
    signed_at = models.DateTimeField()
    verdict = models.CharField(max_length=5)
    findings = models.JSONField(default=list)

    def __str__(self) -> str:
        return f"{self.job} {self.verdict}"
