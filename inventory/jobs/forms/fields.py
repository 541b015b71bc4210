"""Fields that several forms of the jobs share: instants on the shop's clock, hours, choices."""

import re
import uuid
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


class KeyField(forms.CharField):
    """The key under which a form is written once: a page that is asked for anew has a new one."""

    widget = forms.HiddenInput

    def __init__(self) -> None:
        super().__init__(max_length=64, initial=lambda: str(uuid.uuid4()))


def used_up(form: forms.BaseForm, says: str) -> None:
    """Say what was written from this page before, and give it a new key: pressed again, it writes."""
    form.data = {**form.data, "key": str(uuid.uuid4())}
    form.add_error(None, says)


def next_morning() -> datetime:
    """Return tomorrow 08:30 on the shop's clock, where a booking starts."""
    local = timezone.localtime()
    return (local + timedelta(days=1)).replace(hour=8, minute=30, second=0, microsecond=0)


def choose(field: forms.Field, rows: Any) -> None:
    """Let a field choose among rows."""
    assert isinstance(field, forms.ModelChoiceField)
    field.queryset = rows
