"""The form that links a data sheet to a product, and lets an owner stand for what was typed of it."""

from typing import Any

from django import forms

from inventory.models import Product
from safety.models import DataSheet
from safety.queries import current


class AttachForm(forms.Form):
    """Which sheet it is; a sheet that nobody confirmed is confirmed here, too."""

    sheet = forms.ModelChoiceField(
        DataSheet.objects.filter(versions__isnull=False).distinct(),
        label="Its data sheet",
        empty_label="Choose one of the sheets that are here",
    )
    confirm = forms.BooleanField(
        label="I have compared what was typed with the sheet",
        required=False,
        help_text="Needed once a version. Until somebody has, the check counts it as no sheet.",
    )

    def __init__(self, *args: Any, product: Product, chosen: str = "", **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.initial["sheet"] = chosen or product.sheet_id

    def clean(self) -> dict[str, Any]:
        """Ask for the word of whoever links a sheet that nobody has compared yet."""
        cleaned: dict[str, Any] = super().clean() or {}
        sheet = cleaned.get("sheet")
        if sheet and not cleaned.get("confirm") and current(sheet) is None:
            self.add_error(
                "confirm", "Nobody has compared this sheet yet. Open it, compare it, then tick this."
            )
        return cleaned
