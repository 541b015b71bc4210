"""Scan stations: a device that an owner enrolled, its conversation, and what it set aside."""

from django.db import models
from django.db.models import Q

from .own_code import station_code
from .person import Person
from .place import Place
from .shop import Shop


class Station(models.Model):
    """A revocable device session; the badge scanned at it says who, never what they may do elsewhere."""

    shop = models.ForeignKey(Shop, models.PROTECT, related_name="stations")
    code = models.CharField(max_length=8, unique=True, default=station_code)
    name = models.CharField(max_length=60)
    place = models.ForeignKey(Place, models.PROTECT, null=True, blank=True, related_name="stations")
    token_hash = models.CharField(max_length=64, blank=True, help_text="SHA-256 of the device's token")
    enrolled_by = models.ForeignKey(Person, models.PROTECT, null=True, blank=True, related_name="+")
    revoked_at = models.DateTimeField(null=True, blank=True)
    state = models.JSONField(default=dict, help_text="where the conversation stands")

    class Meta:
        constraints = [
            models.UniqueConstraint("shop", "name", name="station_name_once_a_shop"),
            models.UniqueConstraint("token_hash", condition=~Q(token_hash=""), name="station_token_once"),
        ]

    def __str__(self) -> str:
        return self.name


class Heard(models.Model):
    """A line that a station heard and what it answered: the list of last answers, and what was set aside."""

    station = models.ForeignKey(Station, models.CASCADE, related_name="heard")
    at = models.DateTimeField()
    line = models.CharField(max_length=300)
    grade = models.CharField(max_length=8)
    says = models.TextField()
    about = models.CharField(max_length=60, blank=True)
    set_aside = models.BooleanField(default=False)

    class Meta:
        indexes = [models.Index(fields=["station", "-at"], name="heard_by_station")]

    def __str__(self) -> str:
        return self.says
