"""What the instruments in a bay read."""

from django.db import models
from django.db.models import Q

from .person import Person
from .place import Place


class WeatherReading(models.Model):
    """Air, panel and humidity in a bay at an instant."""

    place = models.ForeignKey(Place, models.PROTECT, related_name="weather")
    taken_at = models.DateTimeField()
    air_c = models.DecimalField(max_digits=4, decimal_places=1)
    panel_c = models.DecimalField(max_digits=4, decimal_places=1, null=True, blank=True)
    humidity = models.DecimalField(max_digits=4, decimal_places=1, help_text="%")
    by = models.ForeignKey(Person, models.PROTECT, related_name="+")

    class Meta:
        constraints = [
            models.CheckConstraint(
                condition=Q(humidity__gt=0, humidity__lte=100, air_c__gte=-40, air_c__lte=60)
                & (Q(panel_c__isnull=True) | Q(panel_c__gte=-40, panel_c__lte=120)),
                name="weather_possible",
            )
        ]
        indexes = [models.Index(fields=["place", "-taken_at"], name="weather_newest")]

    def __str__(self) -> str:
        return f"{self.place}: {self.air_c} °C, {self.humidity} %"
