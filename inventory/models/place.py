"""Places: where things stand, and what the people beside them find there."""

from django.db import models
from django.db.models import F, Q

from .own_code import place_code
from .shop import Shop


class Place(models.Model):
    """A store, cabinet, shelf, tray, bay, cabin, van or waste point; it may stand in another."""

    class Kind(models.TextChoices):
        STORE = "store", "store"
        CABINET = "cabinet", "cabinet"
        SHELF = "shelf", "shelf"
        TRAY = "tray", "tray"
        BAY = "bay", "bay"
        CABIN = "cabin", "car's cabin"
        VAN = "van", "van"
        WASTE = "waste", "waste point"
        CAN = "can", "waste can or bucket"

    shop = models.ForeignKey(Shop, models.PROTECT, related_name="places")
    code = models.CharField(max_length=8, unique=True, default=place_code)
    name = models.CharField(max_length=60)
    kind = models.CharField(max_length=8, choices=Kind)
    within = models.ForeignKey("self", models.PROTECT, null=True, blank=True, related_name="holds")
    fire_area = models.CharField(max_length=40, blank=True)
    task = models.CharField(max_length=120, blank=True, help_text="what is done here, for the poster")
    ventilation = models.CharField(max_length=200, blank=True)
    volume_m3 = models.PositiveIntegerField(null=True, blank=True, help_text="the room, in m³")
    air_m3_h = models.PositiveIntegerField(
        null=True, blank=True, help_text="fresh air that the fan brings, measured or as planned, in m³/h"
    )
    mixing_k = models.DecimalField(
        max_digits=3, decimal_places=1, null=True, blank=True, help_text="1 is perfect; not known counts as 6"
    )
    near_radius_m = models.DecimalField(max_digits=3, decimal_places=2, null=True, blank=True)
    near_speed_m_min = models.DecimalField(max_digits=4, decimal_places=1, null=True, blank=True)
    enclosed = models.BooleanField(default=False, help_text="a pit, a boot, an engine bay, a closed cabin")
    fire_area_limit_l = models.PositiveIntegerField(
        null=True,
        blank=True,
        help_text="flammable litres by local code, where no table knows them",
    )
    eyewash_at = models.CharField(max_length=80, blank=True)
    extinguisher_at = models.CharField(max_length=80, blank=True)
    spill_kit_at = models.CharField(max_length=80, blank=True)
    rag_can_at = models.CharField(max_length=80, blank=True)
    first_aid_at = models.CharField(max_length=80, blank=True)
    read_at_m = models.DecimalField(
        max_digits=3, decimal_places=1, default=2, help_text="metres from which the poster is read"
    )

    class Meta:
        constraints = [
            models.UniqueConstraint("shop", "name", name="place_name_once_a_shop"),
            models.CheckConstraint(condition=~Q(within=F("id")), name="place_not_within_itself"),
            models.CheckConstraint(
                condition=Q(mixing_k__isnull=True) | Q(mixing_k__gte=1, mixing_k__lte=20),
                name="mixing_possible",
            ),
            models.CheckConstraint(
                condition=(Q(near_radius_m__isnull=True) | Q(near_radius_m__gte=0.1, near_radius_m__lte=5))
                & (
                    Q(near_speed_m_min__isnull=True) | Q(near_speed_m_min__gte=0.1, near_speed_m_min__lte=100)
                ),
                name="near_field_possible",
            ),
        ]

    def __str__(self) -> str:
        return self.name


class Admission(models.Model):
    """The owner admits a product to a place: it stands on that place's poster."""

    place = models.ForeignKey(Place, models.CASCADE, related_name="admissions")
    product = models.ForeignKey("inventory.Product", models.PROTECT, related_name="admissions")
    admitted_on = models.DateField()

    class Meta:
        constraints = [models.UniqueConstraint("place", "product", name="admitted_once")]

    def __str__(self) -> str:
        return f"{self.product} in {self.place}"


class PosterIssue(models.Model):
    """A poster that was printed: what stood on it, so that the site can say when it is out of date."""

    place = models.ForeignKey(Place, models.PROTECT, related_name="posters")
    version = models.PositiveIntegerField()
    printed_on = models.DateField()
    snapshot = models.JSONField(default=dict, help_text="the place's facts and each product's sheet then")

    class Meta:
        constraints = [models.UniqueConstraint("place", "version", name="poster_version_once")]

    def __str__(self) -> str:
        return f"{self.place}, version {self.version}"
