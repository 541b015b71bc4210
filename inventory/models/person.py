"""People: the user model. A badge says who; it confers nothing beyond the station."""

from django.contrib.auth.hashers import check_password, make_password
from django.contrib.auth.models import AbstractBaseUser, BaseUserManager, PermissionsMixin
from django.db import models

from .own_code import person_code
from .shop import Shop


class People(BaseUserManager["Person"]):
    """Makes people; `createsuperuser` makes an owner."""

    def create_user(self, username: str, password: str | None = None, **facts: object) -> "Person":
        """Return a saved person; without a password they can badge but not log in."""
        person: Person = self.model(username=username, **facts)
        person.set_password(password)
        person.save(using=self._db)
        return person

    def create_superuser(self, username: str, password: str, **facts: object) -> "Person":
        """Return a saved owner who may use the admin pages of every shop."""
        return self.create_user(username, password, role=Person.Role.OWNER, is_superuser=True, **facts)


class Person(AbstractBaseUser, PermissionsMixin):
    """An owner, a technician or a viewer. The name can be removed; the code and the lines stay."""

    class Role(models.TextChoices):
        OWNER = "owner", "owner"
        TECHNICIAN = "technician", "technician"
        VIEWER = "viewer", "viewer"

    class Face(models.TextChoices):
        UNKNOWN = "", "not said"
        SHAVEN = "shaven", "clean-shaven where a mask seals"
        BEARD = "beard", "hair where a mask seals"

    shop = models.ForeignKey(Shop, models.PROTECT, null=True, blank=True, related_name="people")
    code = models.CharField(max_length=8, unique=True, default=person_code)
    username = models.CharField(max_length=60, unique=True)
    name = models.CharField(max_length=60)
    role = models.CharField(max_length=10, choices=Role, default=Role.TECHNICIAN)
    pin_hash = models.CharField(max_length=128, blank=True)
    look = models.CharField(max_length=6, blank=True, help_text="light, dark, bay, or as the system")
    face = models.CharField(max_length=6, choices=Face, default=Face.UNKNOWN, blank=True)
    is_active = models.BooleanField(default=True)

    objects = People()

    USERNAME_FIELD = "username"
    REQUIRED_FIELDS = ["name"]

    class Meta:
        verbose_name_plural = "people"

    def __str__(self) -> str:
        return self.name

    @property
    def is_owner(self) -> bool:
        """May override, release, retest and change the shop."""
        return self.role == self.Role.OWNER

    @property
    def is_staff(self) -> bool:
        """Django's admin pages are the owner's."""
        return self.is_owner and self.is_active

    def set_pin(self, pin: str) -> None:
        """Keep a PIN as a slow hash; save afterwards."""
        self.pin_hash = make_password(pin)

    def check_pin(self, pin: str) -> bool:
        """Say whether this is the person's PIN; nobody without one passes."""
        return bool(self.pin_hash) and check_password(pin, self.pin_hash)
