"""The forms of the station: enrolling a device, and one line said to it."""

from datetime import datetime, timedelta
from typing import Any

from django import forms
from django.utils import timezone
from django.utils.dateparse import parse_datetime

from inventory.models import Place, Shop, Station

LONGEST_LINE = 2000
OLDEST = timedelta(days=2 * 365)
# A device's clock may go a little fast, and what is later than now happened now; a day ahead it is set wrong.
FASTEST = timedelta(days=1)


class EnrolForm(forms.Form):
    """What this device is called, and where it stands."""

    name = forms.CharField(max_length=60, label="What this device is called", help_text="Bay 1 tablet")
    place = forms.ModelChoiceField(
        Place.objects.none(),
        required=False,
        label="Where it stands",
        empty_label="it is carried about",
        help_text="At a store, what is received goes there unless another place is scanned.",
    )

    def __init__(self, *args: Any, shop: Shop, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.shop = shop
        self.fields["place"].queryset = Place.objects.filter(shop=shop).order_by("name")  # type: ignore[attr-defined]

    def clean_name(self) -> str:
        """Refuse a name that a working device has."""
        name: str = self.cleaned_data["name"].strip()
        if Station.objects.filter(shop=self.shop, name=name, revoked_at=None).exclude(token_hash="").exists():
            raise forms.ValidationError(
                f"{name} is enrolled already. End that device first, or take another name."
            )
        return name


class LineForm(forms.Form):
    """One line, its key, and when it was scanned."""

    line = forms.CharField(max_length=LONGEST_LINE, strip=False)
    key = forms.CharField(max_length=64)
    at = forms.CharField(max_length=40, required=False)

    def clean_at(self) -> datetime | None:
        """Return an aware instant, or None where none was sent."""
        text = self.cleaned_data["at"]
        try:
            at = parse_datetime(text) if text else None
        except ValueError:
            at = None
        if text and (at is None or at.tzinfo is None):
            raise forms.ValidationError(
                "When it was scanned is an instant with its zone, like 2026-11-25T12:00:00Z."
            )
        return _bearable(at) if at else None


def _bearable(at: datetime) -> datetime:
    """Return an instant that a device's clock may honestly give, or say what to do about the clock."""
    now = timezone.now()
    if at < now - OLDEST:
        raise forms.ValidationError(
            "When it was scanned lies more than 2 years back. Set this device's clock, then scan again."
        )
    if at > now + FASTEST:
        raise forms.ValidationError(
            "When it was scanned lies in the future. Set this device's clock, then scan again."
        )
    return at
