"""Services: the named lists of steps that the shop sells, written once."""

from django.db import models
from django.db.models import Q

from .product import Kind, Product
from .shop import Shop


class Stage(models.TextChoices):
    """The order of work on a car."""

    WASH = "wash", "wash"
    DECONTAMINATE = "decontaminate", "decontaminate"
    CORRECT = "correct", "correct"
    COAT = "coat", "coat"
    CURE = "cure", "cure"


class Service(models.Model):
    """What is sold under a name: its steps, their order, their length."""

    shop = models.ForeignKey(Shop, models.PROTECT, related_name="services")
    name = models.CharField(max_length=80)
    archived = models.BooleanField(default=False)

    class Meta:
        constraints = [models.UniqueConstraint("shop", "name", name="service_name_once_a_shop")]

    def __str__(self) -> str:
        return self.name


class Work(models.Model):
    """What a step does beyond what it takes from the shelf; a service writes it, a booked step carries it."""

    class Cut(models.TextChoices):
        NONE = "", "cuts nothing"
        FINISH = "finish", "finishing polish"
        ONE = "one_step", "one step"
        TWO = "two_step", "two steps"
        THREE = "three_step", "three steps"
        SANDING = "sanding", "wet sanding"

    class Respirator(models.TextChoices):
        NONE = "none", "no respirator"
        FFP2 = "ffp2", "dust mask FFP2"
        FFP3 = "ffp3", "dust mask FFP3"
        HALF = "half", "half mask"
        FULL = "full", "full-face mask"
        POWERED_HALF = "powered_half", "powered half mask"
        POWERED_FULL = "powered_full", "powered full-face mask"
        HOOD = "hood", "loose powered hood"
        AIR_FED = "air_fed", "air-fed mask"

    class Tool(models.TextChoices):
        PRESSURE_WASHER = "pressure_washer", "pressure washer"
        COMPRESSED_AIR = "compressed_air", "compressed air"
        STEAM = "steam", "steam cleaner"
        OZONE = "ozone", "ozone machine"
        DRY_ICE = "dry_ice", "dry-ice blaster"
        INFRARED = "infrared", "infrared lamp"
        UV_LAMP = "uv_lamp", "UV lamp"
        HEAT_GUN = "heat_gun", "heat gun"
        GRINDER = "grinder", "grinder or sander with sparks"
        VACUUM = "vacuum", "vacuum cleaner"

    cut = models.CharField(max_length=10, choices=Cut, default=Cut.NONE, blank=True)
    passes = models.PositiveSmallIntegerField(default=1)
    strips_coating = models.BooleanField(default=False, help_text="its polish is meant to take a coating off")
    rinses = models.BooleanField(default=False, help_text="everything is rinsed to a clear drain")
    spot = models.BooleanField(default=False, help_text="spots cleaned with water alone, wiped dry")
    sprayed = models.BooleanField(default=False, help_text="what it takes is sprayed as a mist")
    respirator = models.CharField(max_length=12, choices=Respirator, default=Respirator.NONE)
    local_exhaust = models.BooleanField(default=False, help_text="vapour or dust is caught where it arises")
    tools = models.JSONField(default=list, blank=True, help_text="what is used besides hands and products")
    dry_ice_g = models.PositiveIntegerField(null=True, blank=True, help_text="dry ice that is blasted, in g")
    touches = models.JSONField(null=True, blank=True, help_text="areas of the car; empty: as its products do")

    class Meta:
        abstract = True
        constraints = [
            models.CheckConstraint(
                condition=Q(passes__gte=1, passes__lte=20), name="%(class)s_passes_possible"
            )
        ]


class ServiceStep(Work):
    """A step of a service: starts so many minutes after the first, lasts so many."""

    service = models.ForeignKey(Service, models.CASCADE, related_name="steps")
    position = models.PositiveSmallIntegerField()
    stage = models.CharField(max_length=14, choices=Stage)
    name = models.CharField(max_length=80)
    starts_after = models.PositiveIntegerField(help_text="minutes after the job's start")
    minutes = models.PositiveIntegerField()

    class Meta:
        ordering = ["position"]
        constraints = [
            *Work.Meta.constraints,
            models.UniqueConstraint("service", "position", name="service_step_position_once"),
        ]

    def __str__(self) -> str:
        return self.name


class ServiceNeed(models.Model):
    """What a step takes: a product or a kind, an amount for a mid-size car."""

    step = models.ForeignKey(ServiceStep, models.CASCADE, related_name="needs")
    product = models.ForeignKey(Product, models.PROTECT, null=True, blank=True, related_name="+")
    kind = models.CharField(max_length=12, choices=Kind, blank=True)
    amount = models.PositiveBigIntegerField(help_text="for a mid-size car, concentrate, in the base unit")
    parts_product = models.PositiveIntegerField(default=1)
    parts_water = models.PositiveIntegerField(default=0)

    class Meta:
        constraints = [
            models.CheckConstraint(
                condition=Q(product__isnull=False, kind="") | Q(product__isnull=True) & ~Q(kind=""),
                name="service_need_product_or_kind",
            )
        ]

    def __str__(self) -> str:
        return f"{self.amount} of {self.product or self.kind}"
