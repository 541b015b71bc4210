"""A car's panels, what they arrive with, and what the gauge read on them."""

from django.db import models
from django.db.models import Q

from .job import Job, Vehicle
from .person import Person
from .product import Product


class Panel(models.Model):
    """A panel of a car: what it is made of, what covers it. Without panels a car counts as clear-coated."""

    class Substrate(models.TextChoices):
        UNKNOWN = "", "not known"
        STEEL = "steel", "steel"
        ALUMINIUM = "aluminium", "aluminium"
        PLASTIC = "plastic", "plastic"
        CARBON = "carbon", "carbon fibre"

    vehicle = models.ForeignKey(Vehicle, models.CASCADE, related_name="panels")
    position = models.PositiveSmallIntegerField()
    name = models.CharField(max_length=40, help_text="bonnet, left front door …")
    surface = models.CharField(max_length=24, default="clear_coat", help_text="a key of the trade's surfaces")
    substrate = models.CharField(max_length=9, choices=Substrate, default=Substrate.UNKNOWN, blank=True)
    since_on = models.DateField(null=True, blank=True, help_text="sprayed, wrapped or filmed on")
    baked = models.BooleanField(null=True, blank=True, help_text="a respray that was baked, not air-dried")

    class Meta:
        ordering = ["position"]
        constraints = [
            models.UniqueConstraint("vehicle", "name", name="panel_name_once_a_car"),
            models.CheckConstraint(condition=~Q(name="") & ~Q(surface=""), name="panel_named"),
        ]

    def __str__(self) -> str:
        return self.name

    @property
    def code(self) -> str:
        """How findings name it."""
        return f"panel{self.pk}"


class Arrival(models.Model):
    """What a car brings to a job: old wax, an old coating. Without a panel it is everywhere."""

    job = models.ForeignKey(Job, models.CASCADE, related_name="arrivals")
    panel = models.ForeignKey(Panel, models.CASCADE, null=True, blank=True, related_name="+")
    residue = models.CharField(max_length=20)
    since_at = models.DateTimeField(null=True, blank=True)
    product = models.ForeignKey(Product, models.PROTECT, null=True, blank=True, related_name="+")

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["job", "panel", "residue"], name="panel_arrives_with_it_once"),
            models.UniqueConstraint(
                fields=["job", "residue"], condition=Q(panel__isnull=True), name="car_arrives_with_it_once"
            ),
        ]

    def __str__(self) -> str:
        return self.residue


class Reading(models.Model):
    """A gauge reading of a panel, before or after a visit's work, in micrometres."""

    class When(models.TextChoices):
        BEFORE = "before", "before"
        AFTER = "after", "after"

    class Film(models.TextChoices):
        WHOLE = "whole", "whole film"
        CLEAR = "clear", "clear coat alone"

    panel = models.ForeignKey(Panel, models.CASCADE, related_name="readings")
    job = models.ForeignKey(Job, models.PROTECT, related_name="readings")
    when = models.CharField(max_length=6, choices=When, default=When.BEFORE)
    film = models.CharField(max_length=5, choices=Film, default=Film.WHOLE)
    um = models.PositiveIntegerField(null=True, blank=True, help_text="µm; empty: not readable")
    taken_at = models.DateTimeField()
    by = models.ForeignKey(Person, models.PROTECT, related_name="+")

    class Meta:
        constraints = [
            models.CheckConstraint(
                condition=Q(um__isnull=True) | Q(um__gte=1, um__lte=5000), name="reading_possible"
            )
        ]

    def __str__(self) -> str:
        return f"{self.panel}: {self.um} µm"

    @property
    def readable(self) -> bool:
        """Whether the gauge could read this panel; it cannot read plastic or carbon."""
        return self.um is not None
