"""The forms of posters and labels: paper, size, and which products a place admits."""

from django import forms

from inventory.models import Product, Shop
from safety.print.label import SIZES

PAPERS = (("A3", "A3"), ("A4", "A4"), ("Letter", "Letter"), ("Tabloid", "Tabloid"))
LABEL_PAPERS = (("roll", "label printer, one a page"), ("A4", "A4 sheet"), ("Letter", "Letter sheet"))


class PaperForm(forms.Form):
    """The paper that a poster is printed on."""

    paper = forms.ChoiceField(choices=PAPERS, initial="A3")


class LabelForm(forms.Form):
    """The stock that labels are printed on."""

    size = forms.ChoiceField(
        choices=[(size.name, f"{size.name}, {size.width:g} × {size.height:g} mm") for size in SIZES.values()],
        initial="medium",
        label="Label",
    )
    paper = forms.ChoiceField(choices=LABEL_PAPERS, initial="roll", label="Printed on")
    first = forms.IntegerField(min_value=1, max_value=99, initial=1, label="First free label of a begun sheet")


class AdmitForm(forms.Form):
    """Products that the owner admits to a place."""

    def __init__(self, *args: object, shop: Shop, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        self.fields["products"] = forms.ModelMultipleChoiceField(
            Product.objects.filter(shop=shop, archived=False).order_by("name"), to_field_name="code", label="Products"
        )
