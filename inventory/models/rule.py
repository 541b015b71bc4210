"""What the owner decides about the check's rules, and what the check has shown."""

from django.db import models
from django.db.models import Q

from .job import Job
from .person import Person
from .shop import Shop


class RuleGrade(models.Model):
    """The grade that an owner gives a rule of the check, and why; the newest counts, all are kept."""

    class Grade(models.TextChoices):
        STOP = "stop", "stop"
        ASK = "ask", "ask"
        TELL = "tell", "note"
        OWN = "", "as it comes"

    shop = models.ForeignKey(Shop, models.PROTECT, related_name="rule_grades")
    code = models.CharField(max_length=60)
    grade = models.CharField(max_length=4, choices=Grade, blank=True)
    reason = models.TextField()
    by = models.ForeignKey(Person, models.PROTECT, related_name="+")
    given_at = models.DateTimeField()

    class Meta:
        constraints = [models.CheckConstraint(condition=~Q(reason=""), name="regrade_has_a_reason")]

    def __str__(self) -> str:
        return f"{self.code}: {self.grade or 'as it comes'}"


class Shown(models.Model):
    """That a check showed a finding to somebody who acted on it: signed, scanned or answered."""

    job = models.ForeignKey(Job, models.PROTECT, related_name="shown")
    code = models.CharField(max_length=60)
    about = models.CharField(max_length=120)
    grade = models.CharField(max_length=4)
    first_at = models.DateTimeField()

    class Meta:
        constraints = [models.UniqueConstraint("job", "code", "about", name="shown_once")]

    def __str__(self) -> str:
        return f"{self.code}: {self.grade}"


class AirLimit(models.Model):
    """A limit of the shop's own country, typed in from its list."""

    class Kind(models.TextChoices):
        EIGHT_HOURS = "TWA", "8 hours"
        SHORT = "short term 15 min", "15 minutes"
        CEILING = "ceiling", "never above"

    shop = models.ForeignKey(Shop, models.CASCADE, related_name="air_limits")
    cas = models.CharField(max_length=12)
    name = models.CharField(max_length=80)
    kind = models.CharField(max_length=17, choices=Kind, default=Kind.EIGHT_HOURS)
    ppm = models.FloatField(null=True, blank=True)
    mg_m3 = models.FloatField("mg/m³", null=True, blank=True)
    source = models.CharField(max_length=120, help_text="the list and its year")

    class Meta:
        constraints = [
            models.UniqueConstraint("shop", "cas", "kind", "source", name="air_limit_once"),
            models.CheckConstraint(
                condition=(Q(ppm__gt=0) | Q(mg_m3__gt=0))
                & (Q(ppm__isnull=True) | Q(ppm__gt=0))
                & (Q(mg_m3__isnull=True) | Q(mg_m3__gt=0)),
                name="air_limit_says_a_number",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.name}: {self.source}"
