"""The forms of a product and its packs: lives as they are said, amounts in any unit."""

import re

from biip import ParseError
from biip.gtin import Gtin
from django import forms

from inventory.models import Pack, Product, Shop, Supplier
from inventory.money import MoneyError, parse_money, show_money
from inventory.units import AmountError, parse_amount, show
from safety.models import DataSheet

LIFE = re.compile(r"^\s*(\d{1,4})\s*(minutes?|min|days?|d|months?|m|years?|y)\s*$", re.IGNORECASE)
UNITS = {"mi": ("minute", 1), "d": ("day", 1), "m": ("month", 1), "y": ("month", 12)}
NO_GTIN = "That is no GTIN: its last digit does not fit the others. Scan it instead."
LIVES = ("sealed", "open", "mix")


def read_life(text: str) -> tuple[int, str] | None:
    """Return (count, unit) of "90 days", "18 months", "2 years", "45 minutes"; None for an empty text."""
    if not text.strip():
        return None
    if (match := LIFE.match(text)) is None:
        raise forms.ValidationError(
            f"“{text}” is no length of time. Write it as 90 days, 18 months or 45 minutes."
        )
    unit = match[2].lower()
    name, times = UNITS["mi" if unit.startswith("mi") else unit[0]]
    if not int(match[1]):
        raise forms.ValidationError(
            "A life of nothing would end before it starts. Leave it empty if it is not known."
        )
    return int(match[1]) * times, name


class ProductForm(forms.ModelForm):  # type: ignore[type-arg]
    """A product as its owner describes it."""

    sealed = forms.CharField(required=False, label="Good for, sealed, from the day it was made")
    open = forms.CharField(required=False, label="Good for, once opened")
    mix = forms.CharField(required=False, label="Good for, once mixed")
    density = forms.CharField(
        required=False,
        label="Density",
        help_text="In grams per litre, from the data sheet; only if you weigh it.",
    )

    class Meta:
        model = Product
        fields = [
            "name", "maker", "kind", "dimension", "noun", "keeping", "traced", "mixes_lots", "dated",
            "sealed", "sealed_life_by", "open", "open_life_by", "mix", "mix_life_by", "wear_uses",
            "store_from_c", "store_to_c", "density", "density_source", "supplier", "lead_days", "sheet",
            "needs_sheet", "archived",
        ]  # fmt: skip
        labels = {
            "noun": "One of it is called",
            "keeping": "How it is kept",
            "traced": "Scanned every time, never posted as planned",
            "mixes_lots": "One step may take it from several lots",
            "dated": "Carries a date",
            "sealed_life_by": "Who says so (sealed)",
            "open_life_by": "Who says so (opened)",
            "mix_life_by": "Who says so (mixed)",
            "wear_uses": "Cars it lasts (pads, clay, towels)",
            "store_from_c": "Store from, °C",
            "store_to_c": "Store to, °C",
            "density_source": "Where the density comes from",
            "lead_days": "Days until it comes",
            "sheet": "Data sheet",
            "needs_sheet": "Needs a data sheet",
            "archived": "No longer used here",
        }

    def __init__(self, *args: object, shop: Shop, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        self.shop = self.instance.shop = shop
        self.fields["supplier"].queryset = Supplier.objects.filter(shop=shop).order_by("name")  # type: ignore[attr-defined]
        self.fields["sheet"].queryset = DataSheet.objects.order_by("supplier", "title")  # type: ignore[attr-defined]
        for name in LIVES:
            if count := getattr(self.instance, f"{name}_life"):
                self.initial.setdefault(name, f"{count} {getattr(self.instance, f'{name}_life_unit')}s")
        if density := self.instance.density_mg_per_l:
            self.initial.setdefault("density", str(density // 1000))
        if self.instance.pk and self.instance.containers.exists():
            self.fields["dimension"].disabled = True
            self.fields["dimension"].help_text = "Fixed: there is stock of it in this dimension."

    def clean_density(self) -> int | None:
        """Return mg per litre."""
        text = self.cleaned_data["density"].strip()
        if not text:
            return None
        if not re.fullmatch(r"\d{2,5}", text):
            raise forms.ValidationError("Write the density in whole grams per litre: water is 1000.")
        return int(text) * 1000

    def clean(self) -> dict[str, object]:
        """Read the lives; a density carries its source."""
        data = super().clean() or {}
        for name in LIVES:
            try:
                life = read_life(data.get(name) or "")
                data[f"{name}_life"], data[f"{name}_life_unit"] = life or (None, "day")
            except forms.ValidationError as error:
                self.add_error(name, error)
        if data.get("density") and not data.get("density_source"):
            self.add_error(
                "density_source", "Say where the density comes from, the data sheet's section 9 for one."
            )
        return data

    def _post_clean(self) -> None:
        for name in LIVES:
            if f"{name}_life" in self.cleaned_data:
                setattr(self.instance, f"{name}_life", self.cleaned_data[f"{name}_life"])
                setattr(self.instance, f"{name}_life_unit", self.cleaned_data[f"{name}_life_unit"])
        self.instance.density_mg_per_l = self.cleaned_data.get("density")
        super()._post_clean()  # type: ignore[misc]


class PackForm(forms.ModelForm):  # type: ignore[type-arg]
    """A size that is bought."""

    holds = forms.CharField(label="Holds", help_text="500 ml, 5 l, 1 kg, 12 pieces")
    price = forms.CharField(required=False, label="Price of one")

    class Meta:
        model = Pack
        fields = ["name", "holds", "vessel", "gtin", "price", "multiple", "per_case", "usual"]
        labels = {
            "name": "Called",
            "vessel": "Made of",
            "gtin": "GTIN under the bar code",
            "multiple": "Ordered in cases of",
            "per_case": "One scan of this code brings",
            "usual": "The size that is reordered",
        }
        help_texts = {"vessel": "For what burns: in the US and Canada its size is checked against it."}

    def __init__(self, *args: object, product: Product, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        self.instance.product = product
        if self.instance.pk:
            self.initial["holds"] = show(self.instance.amount, product.dimension, product.shop.system)
            if self.instance.price_minor is not None:
                self.initial["price"] = show_money(self.instance.price_minor, product.shop.currency)

    def clean_gtin(self) -> str:
        """Return a GTIN-14 whose check digit is right, or nothing."""
        text = str(self.cleaned_data["gtin"]).strip().replace(" ", "")
        if not text:
            return ""
        try:
            return Gtin.parse(text).as_gtin_14()
        except ParseError:
            raise forms.ValidationError(NO_GTIN) from None

    def clean_holds(self) -> str:
        """Read the content in the product's dimension."""
        product = self.instance.product
        try:
            mark = product.shop.decimal_mark or None
            read = parse_amount(
                self.cleaned_data["holds"],
                dimension=product.dimension,
                system=product.shop.system,
                decimal=mark,
            )
        except AmountError as error:
            raise forms.ValidationError(str(error)) from None
        if not read.base:
            raise forms.ValidationError("A pack holds something. Write what stands on it.")
        self.instance.amount = read.base
        return str(self.cleaned_data["holds"])

    def clean_price(self) -> str:
        """Read the price to the minor unit."""
        text = self.cleaned_data["price"]
        try:
            self.instance.price_minor = (
                parse_money(text, self.instance.product.shop.currency) if text.strip() else None
            )
        except MoneyError as error:
            raise forms.ValidationError(str(error)) from None
        return str(text)
