"""The forms of a bay: a reading of its instruments, and what its air does."""

from decimal import Decimal

from django import forms

from inventory.models import IgnitionSource, Place
from safety.air.near_field import volume_m3
from safety.air.values import NearField

LONGEST = 40
# As the database holds them: what no room and no work near it has.
BOUNDS = {
    "mixing_k": (1, 20, "K lies between 1, perfect, and 20."),
    "near_radius_m": (Decimal("0.1"), 5, "Work reaches between 0.1 and 5 m."),
    "near_speed_m_min": (Decimal("0.1"), 100, "Air drifts by at 0.1 to 100 m a minute."),
}


class ReadingForm(forms.Form):
    """Air, panel and humidity, as the instruments show them."""

    air_c = forms.DecimalField(label="Air, °C", min_value=-40, max_value=60, max_digits=4, decimal_places=1)
    panel_c = forms.DecimalField(
        label="Panel, °C", min_value=-40, max_value=120, max_digits=4, decimal_places=1, required=False
    )  # fmt: skip
    humidity = forms.DecimalField(
        label="Humidity, %", min_value=1, max_value=100, max_digits=4, decimal_places=1
    )


class SparkForm(forms.Form):
    """How an ignition source stands."""

    state = forms.ChoiceField(
        choices=[(state.value, state.label) for state in IgnitionSource.State if state.value != "unknown"]
    )


class AirForm(forms.ModelForm):  # type: ignore[type-arg]
    """What a place's air does, and what may spark there."""

    sources = forms.CharField(
        required=False, label="What may spark or glow here, one a line",
        widget=forms.Textarea(attrs={"rows": 5}),
        help_text="Heater, infrared lamp, grinder, switched vacuum, charger …",
    )  # fmt: skip

    class Meta:
        model = Place
        fields = ["volume_m3", "air_m3_h", "mixing_k", "near_radius_m", "near_speed_m_min", "enclosed"]
        labels = {
            "volume_m3": "Size of the room, m³",
            "air_m3_h": "Fresh air, m³ an hour",
            "mixing_k": "How well it mixes, K",
            "near_radius_m": "Reach of the work, m",
            "near_speed_m_min": "Air drifting past the work, m a minute",
            "enclosed": "A pit, a boot, an engine bay, a closed cabin: no air flow unless it was measured",
        }
        help_texts = {
            "volume_m3": "Length × width × height.",
            "air_m3_h": "As measured, or from the fan’s plate. No air flow at all is 0.",
            "mixing_k": "1 is perfect, 10 is poor. Empty counts as 6.",
            "near_radius_m": "Empty counts as 0.8.",
            "near_speed_m_min": "Empty counts as 4.",
        }

    def __init__(self, *args: object, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        if self.instance.pk:
            names = self.instance.ignition_sources.order_by("name").values_list("name", flat=True)
            self.initial.setdefault("sources", "\n".join(names))
        for source in self._listed():
            self.fields[f"sort_{source.pk}"] = forms.ChoiceField(
                label=f"{source.name} is", choices=IgnitionSource.Sort.choices, required=False,
                initial=source.sort,
                help_text="" if source.sort else "What burns fuel, glows or shines has rules of its own.",
            )  # fmt: skip

    def _listed(self) -> list[IgnitionSource]:
        return list(self.instance.ignition_sources.order_by("name")) if self.instance.pk else []

    def sorts(self) -> dict[str, str]:
        """Return what each source is said to be, by its name; what was not asked stays as it is."""
        asked = {source.name: f"sort_{source.pk}" for source in self._listed()}
        return {name: str(self.cleaned_data[field]) for name, field in asked.items() if field in self.data}

    def clean_volume_m3(self) -> int | None:
        """Refuse a room of nothing."""
        volume: int | None = self.cleaned_data["volume_m3"]
        if volume == 0:
            raise forms.ValidationError("A room has at least 1 m³. Leave it empty if nobody measured it.")
        return volume

    def clean_sources(self) -> list[str]:
        """Return the names, a line each."""
        names = [line.strip() for line in str(self.cleaned_data["sources"]).splitlines() if line.strip()]
        if long := [name for name in names if len(name) > LONGEST]:
            raise forms.ValidationError(f"“{long[0]}” is longer than {LONGEST} letters. Shorten it.")
        return names

    def clean(self) -> dict[str, object]:
        """Refuse what no room has, and a reach of the work that is larger than the room."""
        given: dict[str, object] = super().clean() or {}
        for field, (least, most, says) in BOUNDS.items():
            value = self.cleaned_data.get(field)
            if value is not None and not least <= value <= most:
                self.add_error(field, says)
        radius, volume = given.get("near_radius_m"), given.get("volume_m3")
        if radius and volume and volume_m3(NearField(float(str(radius)))) > float(str(volume)):
            self.add_error(
                "near_radius_m", f"Half a ball of {radius} m is larger than the room of {volume} m³."
            )
        return given
