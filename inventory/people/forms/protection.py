"""The forms of what protects people: what a product serves, and a glove's minutes."""

from typing import Any

from django import forms

from inventory.models import Equipment, Product, Serves, Shop
from inventory.people.queries.protection import could_serve


class EquipmentForm(forms.ModelForm):  # type: ignore[type-arg]
    """What a product is for when it stands between a person and harm."""

    wear_minutes = forms.IntegerField(
        min_value=1,
        max_value=60_000,
        required=False,
        label="Minutes it is worn",
        help_text="A cartridge's, from its maker or this shop; empty: by its date alone.",
    )

    class Meta:
        model = Equipment
        fields = ["product", "serves", "filters", "letters"]
        labels = {"serves": "It is", "filters": "Filters", "letters": "Letters"}
        help_texts = {
            "filters": "A cartridge's or mask's letters: A2, P3, FFP3; in the US the words.",
            "letters": "A glove's letters after EN ISO 374-1.",
        }

    def __init__(self, *args: Any, shop: Shop, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        field = self.fields["product"]
        assert isinstance(field, forms.ModelChoiceField)
        if self.instance.pk:
            field.queryset = Product.objects.filter(pk=self.instance.product_id)
            self.initial["wear_minutes"] = self.instance.product.wear_minutes
        else:
            field.queryset = could_serve(shop).filter(equipment__isnull=True)


class MinutesForm(forms.Form):
    """How long a glove stands a product, as its maker gives it."""

    against = forms.ModelChoiceField(Product.objects.none(), to_field_name="code", label="Against")
    minutes = forms.IntegerField(
        min_value=1, max_value=2_000, help_text="Until it passes the glove, by the glove maker's table."
    )
    source = forms.CharField(max_length=120, help_text="The maker's table and its date.")

    def __init__(self, *args: Any, glove: Product, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        field = self.fields["against"]
        assert isinstance(field, forms.ModelChoiceField)
        rows = Product.objects.filter(shop=glove.shop, archived=False, sheet__isnull=False)
        field.queryset = rows.exclude(equipment__serves__in=Serves.values).order_by("name")
