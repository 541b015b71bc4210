"""What was measured where people work: local exhaust that was examined, and the air beside a task."""

from django.db import models
from django.db.models import F, Q

from .person import Person
from .place import Place
from .product import Product


class LocalExhaust(models.Model):
    """What catches vapour or dust where it arises: an extraction arm, a sander's own suction."""

    class Catches(models.TextChoices):
        VAPOUR = "vapour", "vapour"
        DUST = "dust", "dust and mist"
        BOTH = "both", "vapour, dust and mist"

    place = models.ForeignKey(Place, models.PROTECT, related_name="exhausts")
    name = models.CharField(max_length=60, help_text="extraction arm, suction of the sander")
    catches = models.CharField(max_length=6, choices=Catches)
    examined_on = models.DateField()
    until_on = models.DateField()
    proof = models.CharField(max_length=200, help_text="who examined it, where the paper is")
    kept_by = models.ForeignKey(Person, models.PROTECT, related_name="+")
    ended_on = models.DateField(null=True, blank=True, help_text="no longer here")

    class Meta:
        constraints = [
            models.CheckConstraint(condition=Q(until_on__gt=F("examined_on")), name="exhaust_ends_after_it")
        ]

    def __str__(self) -> str:
        return f"{self.name}, {self.place}"


class AirMeasurement(models.Model):
    """What a competent person measured at the nose while a product was used in a place, up to an amount."""

    place = models.ForeignKey(Place, models.PROTECT, related_name="measurements")
    product = models.ForeignKey(Product, models.PROTECT, related_name="measurements")
    amount = models.PositiveBigIntegerField(help_text="most that was used each time, in the base unit")
    minutes = models.PositiveSmallIntegerField(help_text="how long the work took")
    exhaust = models.ForeignKey(LocalExhaust, models.PROTECT, null=True, blank=True, related_name="+")
    measured_on = models.DateField()
    until_on = models.DateField()
    by_whom = models.CharField(max_length=120, help_text="who measured, how, where the report is")
    kept_by = models.ForeignKey(Person, models.PROTECT, related_name="+")
    withdrawn_on = models.DateField(null=True, blank=True)

    class Meta:
        constraints = [
            models.CheckConstraint(
                condition=Q(until_on__gt=F("measured_on")), name="air_measurement_ends_after_it"
            ),
            models.CheckConstraint(condition=Q(amount__gt=0, minutes__gt=0), name="air_measurement_possible"),
        ]

    def __str__(self) -> str:
        return f"{self.product} in {self.place}: {self.measured_on}"


class AirSample(models.Model):
    """One result of a measurement: a substance against a kind of limit, in the unit of its report."""

    class Against(models.TextChoices):
        EIGHT_HOURS = "TWA", "8-hour limit"
        FIFTEEN_MINUTES = "short term 15 min", "15-minute limit"
        CEILING = "ceiling", "ceiling"

    class Unit(models.TextChoices):
        PPM = "ppm", "ppm"
        MG_M3 = "mg_m3", "mg/m³"

    measurement = models.ForeignKey(AirMeasurement, models.PROTECT, related_name="samples")
    name = models.CharField(max_length=80)
    cas = models.CharField(max_length=12)
    against = models.CharField(max_length=20, choices=Against)
    value = models.DecimalField(max_digits=9, decimal_places=3)
    unit = models.CharField(max_length=5, choices=Unit)

    class Meta:
        constraints = [models.CheckConstraint(condition=Q(value__gte=0), name="air_sample_not_negative")]

    def __str__(self) -> str:
        return f"{self.name}: {self.value} {self.get_unit_display()}"


class Washed(models.Model):
    """That a pad or towel was washed: what it carried before counts no more, but for what washing leaves."""

    container = models.ForeignKey("inventory.Container", models.PROTECT, related_name="washes")
    washed_at = models.DateTimeField()
    by = models.ForeignKey(Person, models.PROTECT, related_name="+")

    class Meta:
        indexes = [models.Index(fields=["container", "-washed_at"], name="washed_newest")]

    def __str__(self) -> str:
        return f"{self.container}: {self.washed_at:%Y-%m-%d}"
