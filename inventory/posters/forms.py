"""The forms of posters and labels: paper, size, and which products a place admits."""

from django import forms

from inventory.models import Place, Shop
from inventory.posters.queries import forms_here, products_to_admit
from inventory.posters.rules import Chosen
from safety.print.label import SIZES
from safety.print.label_sheets import ROLL

PAPERS = (("A3", "A3"), ("A4", "A4"), ("Letter", "Letter"), ("Tabloid", "Tabloid"))
LABEL_PAPERS = ((ROLL, "label printer, one a page"), ("A4", "A4 sheet"), ("Letter", "Letter sheet"))
LETTER_COUNTRIES = {"US", "CA"}
STOCK = [(size.name, f"{size.name}, {size.width:g} × {size.height:g} mm") for size in SIZES.values()]


def wall_paper(shop: Shop) -> str:
    """Return the paper that a poster is printed on where nobody chose one."""
    return "Tabloid" if shop.country in LETTER_COUNTRIES else "A3"


def desk_paper(shop: Shop) -> str:
    """Return the paper that lies in the office printer."""
    return "Letter" if shop.country in LETTER_COUNTRIES else "A4"


class PaperForm(forms.Form):
    """The paper that a poster is printed on, in which language, read from how far."""

    paper = forms.ChoiceField(choices=PAPERS)
    language = forms.ChoiceField(choices=Shop.Language.choices, required=False, label="Language")
    read_at = forms.FloatField(min_value=0.5, max_value=10, required=False, label="Read from, metres")

    def chosen(self, paper: str) -> Chosen:
        """Return what was chosen; what was not, or is none, stays the shop's and the place's own."""
        known = self.cleaned_data if self.is_valid() else {}
        return Chosen(known.get("paper") or paper, known.get("language") or "", known.get("read_at"))


class LabelForm(forms.Form):
    """Which form of label, in which language, on which stock."""

    form = forms.ChoiceField(required=False, label="Form")
    language = forms.ChoiceField(choices=Shop.Language.choices, label="Language")
    size = forms.ChoiceField(choices=STOCK, label="Label")
    paper = forms.ChoiceField(choices=LABEL_PAPERS, label="Printed on")
    first = forms.IntegerField(
        min_value=1,
        max_value=99,
        initial=1,
        label="First free label of a begun sheet",
        help_text="Counted from the top left, row by row; a label printer takes no notice of it.",
    )

    def __init__(self, *args: object, shop: Shop, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        own = ("", "each bottle’s own: the maker’s, or the filled one")
        chosen = [own, *forms_here(shop).items()]
        self.fields["form"].choices = chosen  # type: ignore[attr-defined]
        self.fields["language"].required = False
        self.fields["language"].initial = shop.language


class AdmitForm(forms.Form):
    """Products that the owner admits to a place."""

    def __init__(self, *args: object, place: Place, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        self.fields["products"] = forms.ModelMultipleChoiceField(
            products_to_admit(place),
            to_field_name="code",
            label="Products",
            widget=forms.CheckboxSelectMultiple,
            error_messages={"required": "Tick the products to admit."},
        )
