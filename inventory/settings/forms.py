"""The forms of the shop's own facts, its places and its suppliers."""

from zoneinfo import available_timezones

from django import forms
from django.utils import timezone

from inventory.models import Place, Shop, Supplier
from inventory.money import MoneyError, parse_money, show_money
from inventory.stock import rooms

PAINT = ("film_unit", "floor_whole_um", "floor_clear_um")
# Thicker than any paint that is cut: a slip of the keyboard.
THICKEST_FLOOR_UM = 500


class ShopForm(forms.ModelForm):  # type: ignore[type-arg]
    """What the shop is called, where it is, how it counts."""

    # On the shop's own network there is seldom a certificate.
    site_url = forms.URLField(
        required=False, assume_scheme="http", label="Address of this site on the shop's own network"
    )

    class Meta:
        model = Shop
        fields = [
            "name", "address", "country", "language", "time_zone", "system", "decimal_mark", "date_order",
            "currency", "emergency_number", "poison_centre", "binder_at", "site_url",
            "film_unit", "floor_whole_um", "floor_clear_um",
        ]  # fmt: skip
        labels = {
            "country": "Country",
            "time_zone": "Clock",
            "language": "Posters and labels speak",
            "system": "Amounts are shown in",
            "decimal_mark": "How numbers are written",
            "date_order": "How printed dates are read",
            "emergency_number": "Emergency number",
            "poison_centre": "Poison centre's number",
            "binder_at": "Where the printed data sheets stand",
            "film_unit": "Paint thickness is shown in",
            "floor_whole_um": "Whole film is never cut below, µm",
            "floor_clear_um": "Clear coat is never cut below, µm",
        }
        help_texts = {
            "floor_whole_um": "80 µm is common practice, no source.",
            "floor_clear_um": "40 µm is common practice, no source.",
        }

    def __init__(self, *args: object, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        for name in PAINT:
            self.fields[name].required = False

    def clean_floor_whole_um(self) -> int:
        """Return the floor of the whole film; left empty it stays."""
        return self._floor("floor_whole_um")

    def clean_floor_clear_um(self) -> int:
        """Return the floor of the clear coat; left empty it stays."""
        return self._floor("floor_clear_um")

    def _floor(self, name: str) -> int:
        typed = self.cleaned_data[name]
        um = int(getattr(self.instance, name) if typed is None else typed)
        if not 1 <= um <= THICKEST_FLOOR_UM:
            raise forms.ValidationError(f"Give 1 to {THICKEST_FLOOR_UM} µm.")
        return um

    def clean_film_unit(self) -> str:
        """Return the unit of thickness; left empty it stays."""
        return str(self.cleaned_data["film_unit"] or self.instance.film_unit)

    def clean_country(self) -> str:
        """Return the country in capitals."""
        return str(self.cleaned_data["country"]).upper()

    def clean_currency(self) -> str:
        """Return the currency in capitals."""
        return str(self.cleaned_data["currency"]).upper()

    def clean_time_zone(self) -> str:
        """Return a clock that exists in the IANA time zone database."""
        name = str(self.cleaned_data["time_zone"])
        if name not in available_timezones():
            raise forms.ValidationError(
                f"“{name}” is no clock. Write it as Europe/London or America/New_York."
            )
        return name


class PlaceForm(forms.ModelForm):  # type: ignore[type-arg]
    """A place and what people find there."""

    class Meta:
        model = Place
        fields = [
            "name", "kind", "within", "fire_area", "task", "ventilation", "volume_m3", "air_m3_h",
            "eyewash_at", "extinguisher_at", "spill_kit_at", "rag_can_at", "first_aid_at",
            "read_at_m",
        ]  # fmt: skip
        labels = {
            "within": "Stands in",
            "fire_area": "Fire area",
            "task": "What is done here",
            "volume_m3": "Size of the room, m³",
            "air_m3_h": "Fresh air of the fan, m³ an hour",
            "eyewash_at": "Eyewash",
            "extinguisher_at": "Extinguisher",
            "spill_kit_at": "Spill kit",
            "rag_can_at": "Covered metal can for rags",
            "first_aid_at": "First-aid kit",
            "read_at_m": "The poster is read from, metres",
        }

    def __init__(self, *args: object, shop: Shop, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        self.instance.shop = shop
        others = Place.objects.filter(shop=shop).exclude(pk=self.instance.pk).order_by("name")
        self.fields["within"].queryset = others  # type: ignore[attr-defined]
        if self.instance.pk:
            measured = rooms.counting(self.instance, on=timezone.localdate()).count()
            self.fields["volume_m3"].help_text = rooms.before(measured) or self.fields["volume_m3"].help_text

    def clean_within(self) -> Place | None:
        """Refuse a place that would stand in itself, however many steps away."""
        outer: Place | None = self.cleaned_data["within"]
        step = outer
        while step is not None:
            if self.instance.pk and step.pk == self.instance.pk:
                raise forms.ValidationError(f"{outer} stands in this place already. Choose another, or none.")
            step = step.within
        return outer

    def clean_read_at_m(self) -> object:
        """Return a distance that a sheet of paper can serve."""
        metres = self.cleaned_data["read_at_m"]
        if not 1 <= metres <= 10:
            raise forms.ValidationError("A poster is read from 1 to 10 metres.")
        return metres


class SupplierForm(forms.ModelForm):  # type: ignore[type-arg]
    """A firm that the shop orders from."""

    minimum = forms.CharField(required=False, label="Smallest order, in money")

    class Meta:
        model = Supplier
        fields = ["name", "email", "phone", "lead_days", "minimum"]
        labels = {"lead_days": "Days until it comes"}

    def __init__(self, *args: object, shop: Shop, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        self.instance.shop = shop
        if self.instance.minimum_order_minor:
            self.initial["minimum"] = show_money(self.instance.minimum_order_minor, shop.currency)

    def clean_minimum(self) -> str:
        """Read the smallest order to the minor unit."""
        text = str(self.cleaned_data["minimum"])
        try:
            money = parse_money(text, self.instance.shop.currency) if text.strip() else 0
        except MoneyError as error:
            raise forms.ValidationError(str(error)) from None
        self.instance.minimum_order_minor = money
        return text
