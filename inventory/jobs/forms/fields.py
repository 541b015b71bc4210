"""Fields that several forms of the jobs share: instants on the shop's clock, hours, choices."""

import re
import uuid
from datetime import datetime, timedelta
from typing import Any

from django import forms
from django.utils import timezone

from inventory.models import Shop
from inventory.stock.rules.lines import NEAT
from inventory.units import AmountError, Dimension, parse_amount, read_mix, show, show_mix

MG = 1000


class DayAndTime(forms.DateTimeField):
    """An instant on the shop's clock, in the browser's own picker."""

    widget = forms.DateTimeInput(attrs={"type": "datetime-local"}, format="%Y-%m-%dT%H:%M")

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(input_formats=["%Y-%m-%dT%H:%M", "%Y-%m-%d %H:%M"], **kwargs)


class DayField(forms.DateField):
    """A day in the browser's own picker."""

    widget = forms.DateInput(attrs={"type": "date"}, format="%Y-%m-%d")


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


class MixField(forms.CharField):
    """A mix typed as product : water ("1:10", "2:7"), kept as its two parts; empty is neat."""

    def prepare_value(self, value: Any) -> Any:
        """Show parts as they are typed, nothing for neat."""
        return (show_mix(*value) if value[1] else "") if isinstance(value, tuple) else value

    def to_python(self, value: Any) -> Any:
        """Return parts of product and of water."""
        text = str(value or "").strip()
        mix = read_mix(text or "neat")
        if mix is None:
            raise forms.ValidationError(f"“{text[:20]}” is not a mix. Write product : water, like 1:10.")
        return mix if mix[1] else NEAT

    def has_changed(self, initial: Any, data: Any) -> bool:
        """Compare what was shown with what was typed."""
        return bool((self.prepare_value(initial) or "") != (data or ""))


class GramsField(forms.CharField):
    """A weight typed with its unit ("2 kg", "500 g"), kept in grams; empty is not said."""

    system, decimal = "metric", ""

    def reads_for(self, shop: Shop) -> None:
        """Read and show in a shop's own units and decimal mark."""
        self.system, self.decimal = shop.system, shop.decimal_mark

    def prepare_value(self, value: Any) -> Any:
        """Show grams as they are typed."""
        return show(value * MG, Dimension.MASS, self.system) if isinstance(value, int) else value

    def to_python(self, value: Any) -> Any:
        """Return grams, None for nothing."""
        text = str(value or "").strip()
        if not text:
            return None
        try:
            read = parse_amount(
                text, dimension=Dimension.MASS, system=self.system, decimal=self.decimal or None
            )
        except AmountError as refusal:
            raise forms.ValidationError(str(refusal)) from refusal
        if read.base < MG:
            raise forms.ValidationError("Give at least 1 g, or leave it empty.")
        return round(read.base / MG)

    def has_changed(self, initial: Any, data: Any) -> bool:
        """Compare what was shown with what was typed."""
        return bool((self.prepare_value(initial) or "") != (data or ""))


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
