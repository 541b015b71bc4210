"""The shop: its country, its clock, its units, and the numbers it calls in an emergency."""

from zoneinfo import ZoneInfo

from django.db import models
from django.db.models import Q


class Shop(models.Model):
    """One workshop; everything else in this package belongs to one."""

    class System(models.TextChoices):
        METRIC = "metric", "litres and grams"
        US = "us", "US gallons and ounces"
        IMPERIAL = "imperial", "imperial gallons and ounces"

    class Mark(models.TextChoices):
        UNSET = "", "ask when it matters"
        POINT = "point", "1,000.5"
        COMMA = "comma", "1.000,5"

    class DateOrder(models.TextChoices):
        UNSET = "", "ask when it matters"
        DMY = "dmy", "day month year"
        MDY = "mdy", "month day year"
        YMD = "ymd", "year month day"

    class Language(models.TextChoices):
        ENGLISH = "en", "English"
        SPANISH = "es", "español"

    class FilmUnit(models.TextChoices):
        MICROMETRE = "µm", "micrometres"
        MIL = "mil", "mils (thousandths of an inch)"

    slug = models.SlugField(unique=True)
    name = models.CharField(max_length=80)
    address = models.CharField(max_length=200, blank=True)
    country = models.CharField(max_length=2, default="GB", help_text="ISO 3166-1, two letters")
    time_zone = models.CharField(max_length=40, default="Europe/London")
    language = models.CharField(
        max_length=2, choices=Language, default=Language.ENGLISH, help_text="what posters and labels speak"
    )
    system = models.CharField(max_length=8, choices=System, default=System.METRIC)
    decimal_mark = models.CharField(max_length=5, choices=Mark, default=Mark.UNSET, blank=True)
    date_order = models.CharField(max_length=3, choices=DateOrder, default=DateOrder.UNSET, blank=True)
    currency = models.CharField(max_length=3, default="EUR", help_text="ISO 4217, three letters")
    emergency_number = models.CharField(max_length=20, default="112")
    poison_centre = models.CharField(max_length=60, blank=True)
    binder_at = models.CharField(max_length=80, blank=True, help_text="where the printed data sheets stand")
    site_url = models.URLField(blank=True, help_text="how a phone in this shop reaches the site")

    film_unit = models.CharField(max_length=3, choices=FilmUnit, default=FilmUnit.MICROMETRE)
    floor_whole_um = models.PositiveSmallIntegerField(default=80, help_text="whole film: never cut below it")
    floor_clear_um = models.PositiveSmallIntegerField(default=40, help_text="clear coat: never cut below it")

    class Meta:
        constraints = [
            models.CheckConstraint(
                condition=Q(floor_whole_um__gte=1, floor_clear_um__gte=1), name="shop_paint_floors_positive"
            ),
            models.CheckConstraint(condition=Q(country__regex=r"^[A-Z]{2}$"), name="shop_country_iso"),
            models.CheckConstraint(condition=Q(currency__regex=r"^[A-Z]{3}$"), name="shop_currency_iso"),
        ]

    def __str__(self) -> str:
        return self.name

    @property
    def zone(self) -> ZoneInfo:
        """The shop's own clock."""
        return ZoneInfo(self.time_zone)

    @property
    def air_regime(self) -> str:
        """The lists that judge air here: US for the United States and Canada, UK, else EU."""
        return {"US": "US", "CA": "US", "GB": "UK"}.get(self.country, "EU")

    @property
    def regime(self) -> str:
        """The labelling rules that hold here: US, CA, else EU (for GB: "GB CLP may differ")."""
        return self.country if self.country in {"US", "CA"} else "EU"
