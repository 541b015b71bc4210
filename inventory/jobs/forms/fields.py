"""Fields that several forms of the jobs share: instants on the shop's clock, hours, choices."""

import re
from datetime import datetime, timedelta
from typing import Any

from django import forms
from django.utils import timezone


class DayAndTime(forms.DateTimeField):
    """An instant on the shop's clock, in the browser's own picker."""

    widget = forms.DateTimeInput(attrs={"type": "datetime-local"}, format="%Y-%m-%dT%H:%M")

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(input_formats=["%Y-%m-%dT%H:%M", "%Y-%m-%d %H:%M"], **kwargs)


class HoursField(forms.CharField):
    """A length of time typed as hours:minutes ("2:30", "24:00"), kept in minutes."""

    def prepare_value(self, value: Any) -> Any:
        """Show minutes as they are typed."""
        return f"{value // 60}:{value % 60:02}" if isinstance(value, int) else value

    def to_python(self, value: Any) -> Any:
        """Return minutes."""
        text = str(value or "").strip()
        if not (match := re.fullmatch(r"(\d{1,3}):([0-5]\d)", text, re.ASCII)):
            raise forms.ValidationError("Write it as hours and minutes, like 2:30 or 0:45.")
        return int(match[1]) * 60 + int(match[2])

    def has_changed(self, initial: Any, data: Any) -> bool:
        """Compare what was shown with what was typed."""
        return bool(self.prepare_value(initial) != data)


def next_morning() -> datetime:
    """Return tomorrow 08:30 on the shop's clock, where a booking starts."""
    local = timezone.localtime()
    return (local + timedelta(days=1)).replace(hour=8, minute=30, second=0, microsecond=0)


def choose(field: forms.Field, rows: Any) -> None:
    """Let a field choose among rows."""
    assert isinstance(field, forms.ModelChoiceField)
    field.queryset = rows
