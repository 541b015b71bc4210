"""What protects people: what an item is, how long a glove stands a product, who may wear and do what."""

from django.db import models
from django.db.models import F, Q

from .person import Person
from .place import Place
from .product import Product


class Serves(models.TextChoices):
    """What a protective, first-aid or rescue item is."""

    GLOVES = "gloves", "gloves"
    GOGGLES = "goggles", "goggles"
    FACE_SHIELD = "face_shield", "face shield"
    APRON = "apron", "apron or suit"
    HALF_MASK = "half", "half mask"
    FULL_MASK = "full", "full-face mask"
    POWERED_HALF_MASK = "powered_half", "powered half mask"
    POWERED_FULL_MASK = "powered_full", "powered full-face mask"
    HOOD = "hood", "loose powered hood"
    AIR_FED = "air_fed", "air-fed mask"
    DUST_MASK = "ffp2", "dust mask FFP2"
    CARTRIDGE = "cartridge", "cartridge or filter"
    EYEWASH = "eyewash", "eyewash bottle"
    GLUCONATE = "gluconate", "calcium gluconate gel"
    FIRST_AID_KIT = "first_aid_kit", "first-aid kit"
    ABSORBENT = "absorbent", "spill absorbent"
    NEUTRALISER = "neutraliser", "neutraliser"
    EXTINGUISHER = "extinguisher", "extinguisher"


class Equipment(models.Model):
    """What a product is for when it stands between a person and harm."""

    product = models.OneToOneField(Product, models.CASCADE, related_name="equipment")
    serves = models.CharField(max_length=14, choices=Serves)
    filters = models.CharField(max_length=40, blank=True, help_text="a cartridge's letters or words: A2, P3")
    letters = models.CharField(max_length=20, blank=True, help_text="a glove's letters, EN ISO 374-1")

    def __str__(self) -> str:
        return f"{self.product}: {self.get_serves_display()}"


class GloveMinutes(models.Model):
    """How long a glove stands a product, as the glove's maker gives it; no open table of these exists."""

    glove = models.ForeignKey(Product, models.CASCADE, related_name="stands")
    against = models.ForeignKey(Product, models.CASCADE, related_name="+")
    minutes = models.PositiveSmallIntegerField()
    source = models.CharField(max_length=120, help_text="the maker's table, its date")

    class Meta:
        constraints = [models.UniqueConstraint("glove", "against", name="glove_minutes_once")]

    def __str__(self) -> str:
        return f"{self.glove} against {self.against}: {self.minutes} min"


class Training(models.Model):
    """What somebody was trained for; renewed where a duty says so."""

    class Topic(models.TextChoices):
        HAZARDS = "hazards", "hazards of what is here"
        CORROSIVE = "corrosive", "acids and alkalis"
        FLUORIDE = "fluoride", "fluorides and the gel"
        FLAMMABLE = "flammable", "flammable liquids and aerosols"
        ISOCYANATE = "isocyanate", "diisocyanates"
        RESPIRATOR = "respirator", "wearing a respirator"

    person = models.ForeignKey(Person, models.PROTECT, related_name="trainings")
    topic = models.CharField(max_length=10, choices=Topic)
    trained_on = models.DateField()
    until_on = models.DateField(null=True, blank=True)
    proof = models.CharField(max_length=200, help_text="who trained, where the paper is")
    kept_by = models.ForeignKey(Person, models.PROTECT, related_name="+")

    class Meta:
        constraints = [
            models.CheckConstraint(
                condition=Q(until_on__isnull=True) | Q(until_on__gte=F("trained_on")),
                name="training_ends_after_it_began",
            )
        ]

    def __str__(self) -> str:
        return f"{self.person}: {self.get_topic_display()}"


class MedicalEvaluation(models.Model):
    """That somebody was found fit to wear a respirator; the findings themselves stay with the physician."""

    person = models.ForeignKey(Person, models.PROTECT, related_name="evaluations")
    evaluated_on = models.DateField()
    until_on = models.DateField(null=True, blank=True)
    proof = models.CharField(max_length=200, blank=True)
    kept_by = models.ForeignKey(Person, models.PROTECT, related_name="+")

    def __str__(self) -> str:
        return f"{self.person}: {self.evaluated_on}"


class FitTest(models.Model):
    """That one model of mask was fitted to one face; never without the evaluation before it."""

    person = models.ForeignKey(Person, models.PROTECT, related_name="fit_tests")
    mask = models.ForeignKey(Product, models.PROTECT, related_name="+")
    evaluation = models.ForeignKey(MedicalEvaluation, models.PROTECT, related_name="fit_tests")
    size = models.CharField(max_length=20, blank=True)
    tested_on = models.DateField()
    until_on = models.DateField()
    proof = models.CharField(max_length=200, blank=True)
    kept_by = models.ForeignKey(Person, models.PROTECT, related_name="+")

    class Meta:
        constraints = [
            models.CheckConstraint(condition=Q(until_on__gt=F("tested_on")), name="fit_test_ends_after_it")
        ]

    def __str__(self) -> str:
        return f"{self.person}: {self.mask}"


class FirstDay(models.Model):
    """That a new person read and signed the sheet of their first day here, and who showed them round."""

    person = models.OneToOneField(Person, models.PROTECT, related_name="first_day")
    signed_at = models.DateTimeField()
    shown_by = models.ForeignKey(Person, models.PROTECT, related_name="+")
    says = models.JSONField(default=dict, help_text="what stood on the sheet")

    def __str__(self) -> str:
        return f"{self.person}: {self.signed_at:%Y-%m-%d}"


class PlaceCheck(models.Model):
    """That something of a place was tried: the eyewash activated, the rag can emptied."""

    class What(models.TextChoices):
        EYEWASH = "eyewash", "eyewash run"
        RAGS = "rags", "rag can emptied"
        EMPTIED = "emptied", "can or bucket emptied and rinsed"

    place = models.ForeignKey(Place, models.PROTECT, related_name="checks")
    what = models.CharField(max_length=8, choices=What)
    done_at = models.DateTimeField()
    by = models.ForeignKey(Person, models.PROTECT, related_name="+")

    class Meta:
        indexes = [models.Index(fields=["place", "what", "-done_at"], name="place_check_newest")]

    def __str__(self) -> str:
        return f"{self.place}: {self.get_what_display()}"


class IgnitionSource(models.Model):
    """What may spark or glow in a place: heater, IR lamp, grinder, switched vacuum, charger."""

    class State(models.TextChoices):
        UNKNOWN = "unknown", "not confirmed off"
        ON = "on", "on"
        OFF = "off", "off"

    class Sort(models.TextChoices):
        OTHER = "", "another"
        FUEL_HEATER = "fuel_heater", "heater that burns fuel"
        HEATER = "heater", "electric heater"
        LAMP = "lamp", "infrared or UV lamp"
        WELDER = "welder", "welder"
        ENGINE = "engine", "running engine"
        GRINDER = "grinder", "grinder"
        VACUUM = "vacuum", "switched vacuum"
        CHARGER = "charger", "charger"

    place = models.ForeignKey(Place, models.CASCADE, related_name="ignition_sources")
    name = models.CharField(max_length=40)
    sort = models.CharField(max_length=11, choices=Sort, default=Sort.OTHER, blank=True)
    state = models.CharField(max_length=7, choices=State, default=State.UNKNOWN)
    said_at = models.DateTimeField(null=True, blank=True)
    said_by = models.ForeignKey(Person, models.PROTECT, null=True, blank=True, related_name="+")

    class Meta:
        constraints = [models.UniqueConstraint("place", "name", name="ignition_source_once")]

    def __str__(self) -> str:
        return self.name
